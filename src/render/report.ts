/** A report as data: text and HTML are both made from it. All strings are ready for people. */
export interface Report {
  /** BCP 47 tag of the language it is written in. */
  readonly language: string;
  readonly title: string;
  /** The answer in one sentence. */
  readonly answer: string;
  readonly sections: readonly ReportSection[];
  /** Said once, at the end. */
  readonly caution: Titled;
}

export interface Titled {
  readonly heading: string;
  readonly text: string;
}

export interface ReportSection {
  /** For links within a page; not translated. */
  readonly id: string;
  readonly heading: string;
  readonly sentences: readonly string[];
  readonly figures: readonly Figure[];
  /** Begins a new page where it is printed. */
  readonly ownPage?: boolean;
  readonly table?: Table;
}

/** Figures side by side. */
export interface Table {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** So many columns from the left hold words; the others hold figures and stand to the right. */
  readonly wordColumns: number;
  /** Rows that stand out, counted from 0. */
  readonly marked?: readonly number[];
}

export interface Figure {
  readonly label: string;
  readonly value: string;
  /** Part of the whole, 0 … 1, drawn as a bar. */
  readonly share?: number;
  /** How the figure comes about, with its numbers put in. */
  readonly formula?: string;
  /** What it means. */
  readonly note?: string;
}
