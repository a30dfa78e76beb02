import { keepTogether } from './no-break.ts';
import type { Figure, Report, ReportSection, Table } from './report.ts';

/** How a terminal shows weight and colour; the command line brings its own or none. */
export interface TextStyle {
  readonly strong: (text: string) => string;
  readonly quiet: (text: string) => string;
  readonly accent: (text: string) => string;
}

const asIs = (text: string) => text;
export const PLAIN: TextStyle = { strong: asIs, quiet: asIs, accent: asIs };

/** Columns of a line of text. */
const LINE = 100;
/** Characters of a bar that stands for a whole. */
const BAR = 30;
const INDENT = '  ';

/** The report as lines for a terminal: the answer first, the caution last. */
export function reportText(report: Report, style: TextStyle = PLAIN): string[] {
  return [
    ...wrap(report.answer, LINE).map(style.strong),
    // A section that only holds a picture is for the page.
    ...report.sections.filter(({ sentences, figures, table }) => sentences.length + figures.length > 0 || table).flatMap((section) => ['', style.accent(section.heading), ...sectionLines(section, style)]),
    '',
    ...wrap(report.caution.text, LINE).map(style.quiet),
  ];
}

function sectionLines({ sentences, figures, table }: ReportSection, style: TextStyle): string[] {
  const labelWidth = Math.max(0, ...figures.map(({ label }) => label.length));
  const isTable = figures.some(({ share }) => share !== undefined);
  const valueWidth = Math.max(0, ...figures.map(({ value }) => value.length));
  return [
    ...sentences.flatMap((sentence) => hanging('– ', sentence, asIs)),
    ...figures.flatMap((figure) => (isTable ? shareLine(figure, labelWidth, valueWidth, style) : figureLines(figure, labelWidth, style))),
    ...(table ? tableLines(table, style) : []),
  ];
}

/** Columns as wide as what stands in them; a marked row begins with an arrow. */
function tableLines({ head, rows, wordColumns, marked = [] }: Table, style: TextStyle): string[] {
  const widths = head.map((title, column) => Math.max(title.length, ...rows.map((row) => row[column]!.length)));
  const line = (cells: readonly string[]) => cells.map((cell, column) => (column < wordColumns ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!))).join('  ').trimEnd();
  return [style.quiet(INDENT + line(head)), ...rows.map((row, i) => (marked.includes(i) ? `${style.accent('→')} ${style.strong(line(row))}` : INDENT + line(row)))];
}

/** A row of a table of parts: `offcuts between blanks   12.4 %   0.0911 m²  ████`. */
function shareLine({ label, value, share, note = '' }: Figure, labelWidth: number, valueWidth: number, style: TextStyle): string[] {
  const bar = share === undefined ? '' : '█'.repeat(Math.round(share * BAR));
  return [`${INDENT}${label.padEnd(labelWidth)}  ${value.padStart(valueWidth)}  ${note.padStart(10)}  ${style.accent(bar)}`.trimEnd()];
}

function figureLines({ label, value, formula, note }: Figure, labelWidth: number, style: TextStyle): string[] {
  const start = `${label.padEnd(labelWidth)}  `;
  const whole = formula === undefined ? value : `${value} = ${formula}`;
  const lines = hanging(start, whole, asIs);
  return note === undefined ? lines : [...lines, ...hanging(' '.repeat(start.length), note, style.quiet)];
}

/** Text after a start; further lines stand under the text's beginning. */
function hanging(start: string, text: string, look: (text: string) => string): string[] {
  return wrap(text, LINE - INDENT.length - start.length).map((part, i) => INDENT + (i === 0 ? start : ' '.repeat(start.length)) + look(part));
}

/** Breaks between words; a word longer than the line stands alone. */
function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of keepTogether(text).split(' ')) {
    if (current !== '' && current.length + 1 + word.length > width) {
      lines.push(current);
      current = word;
    } else {
      current = current === '' ? word : `${current} ${word}`;
    }
  }
  // On a terminal a plain space is copied and searched for more easily.
  return [...lines, current].map((line) => line.replaceAll('\u00a0', ' '));
}
