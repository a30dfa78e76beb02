import type { Issue } from '../../base/issue.ts';
import type { Blank, Dieline } from '../../dieline/dieline.ts';
import type { Values } from '../../dieline/styles/parameter.ts';
import type { Printed } from '../../estimate/gang/deal-stations.ts';
import type { Point } from '../../geometry/point.ts';
import type { Judgement } from '../../layout/judge.ts';
import type { Kinship } from '../../layout/kinship.ts';
import type { Design, LayoutFile, MmArea } from '../../layout/layout-file.ts';
import type { BoundName, StopReason } from '../../layout/problem.ts';
import type { Effort } from '../../nesting/effort.ts';
import type { Comparison } from '../../pipeline/compare.ts';
import type { RunToPrice } from '../../pipeline/gang/price-run.ts';
import type { SettledForms, WeighedForms } from '../../pipeline/gang/weigh-stations.ts';
import type { LayingSettings } from '../../pipeline/laying.ts';
import type { StyledSource } from '../../pipeline/near-miss-changes.ts';
import type { NestJob } from '../../pipeline/nest.ts';
import type { CompareFacts } from '../../render/compare-facts.ts';
import type { LengthUnit } from '../../render/format.ts';
import type { GangFacts } from '../../render/gang-facts.ts';
import type { HandoverDetails } from '../../render/handover-facts.ts';
import type { Improvement, LimitStep } from '../../render/nest-facts.ts';
import type { NearMissFacts } from '../../render/near-miss-facts.ts';
import type { Report } from '../../render/report.ts';
import type { Brought } from '../../press/brought.ts';
import type { RateSource } from '../../press/rates.ts';
import type { Scene } from '../../render/scene.ts';
import type { NamedRecord, RecordKind } from '../job/records.ts';
import type { Control } from './search-control.ts';

/** Between the page and its engine: plain data only. Every question has one answer; a search also sends events. */
export interface Questions {
  read: { ask: ReadAsk; answer: ReadAnswer; event: never };
  frame: { ask: DeskLaying; answer: FrameAnswer; event: never };
  /** What holds because of the machines chosen. */
  brought: { ask: RawMachines; answer: BroughtAnswer; event: never };
  search: { ask: SearchAsk; answer: SearchAnswer; event: SearchEvent };
  judge: { ask: LayoutFile; answer: Judgement; event: never };
  /** A layout file from anyone. */
  layout: { ask: LayoutAsk; answer: FoundLayout; event: never };
  /** What layouts are to the drawing on the desk. */
  kinship: { ask: KinshipAsk; answer: readonly Kinship[]; event: never };
  /** A design of a layout as a drawing of its own. */
  ownDrawing: { ask: Design; answer: string; event: never };
  /** Goes on from a layout made by hand. */
  byHand: { ask: ByHandAsk; answer: ByHandAnswer; event: ByHandEvent };
  picture: { ask: PictureAsk; answer: Scene; event: never };
  explain: { ask: ExplainAsk; answer: ExplainAnswer; event: never };
  /** Each event holds all that was found so far. */
  nearMisses: { ask: NearMissAsk; answer: NearMissFacts; event: NearMissFacts };
  compare: { ask: CompareAsk; answer: CompareAnswer; event: never };
  recost: { ask: RecostAsk; answer: RecostAnswer; event: never };
  /** The comparison as a page of its own. */
  comparePage: { ask: RecostAsk; answer: string; event: never };
  /** Records of machines, boards, sheets and rates from a file. */
  record: { ask: RecordAsk; answer: RecordAnswer; event: never };
  quote: { ask: QuoteAsk; answer: QuoteAnswer; event: never };
  /** Versions or outlines on their forms in money. */
  run: { ask: RunAsk; answer: RunAnswer; event: never };
  /** The same as a page of its own. */
  runPage: { ask: RunAsk; answer: string; event: never };
  /** With versions on their stations, a page of the whole run as well. */
  pages: { ask: QuoteAsk & { readonly run?: RunToPrice }; answer: readonly OutputFile[]; event: never };
  /** Versions shared out over the stations of a layout. */
  versions: { ask: VersionsAsk; answer: VersionsAnswer; event: never };
  /** Drawings of several outlines on common forms. */
  outlines: { ask: OutlinesAsk; answer: OutlinesAnswer; event: never };
  /** Stations shared out by hand. */
  weigh: { ask: SettledForms; answer: WeighedForms; event: never };
  stationSheet: { ask: LayoutFile; answer: StationSheet; event: never };
  handover: { ask: HandoverAsk; answer: HandoverAnswer; event: never };
}
export type Question = keyof Questions;
export type Ask<Kind extends Question> = Questions[Kind]['ask'];
export type Answer<Kind extends Question> = Questions[Kind]['answer'];
export type EventOf<Kind extends Question> = Questions[Kind]['event'];

/** Who asks. */
export interface Person {
  /** BCP 47 tag of the language. */
  readonly locale: string;
  /** In which lengths are read. */
  readonly unit: LengthUnit;
}

export type ToEngine = ({ readonly id: number; readonly kind: Question; readonly ask: unknown } & Person) | { readonly control: Control } | { readonly warm: Question };
export type FromEngine =
  /** The thread holds its lifeline. */
  | { readonly alive: true }
  /** Its work goes on. */
  | { readonly beat: true }
  /** It cannot go on: a thread of its own has gone. */
  | { readonly lost: string }
  | { readonly id: number; readonly answer: unknown }
  | { readonly id: number; readonly event: unknown }
  /** What the person gave cannot be used. */
  | { readonly id: number; readonly issues: readonly Issue[] }
  /** A fault of ours. */
  | { readonly id: number; readonly failure: string };

/** A drawing as bytes, or a style with its dimensions in mm. */
export type DrawingSource =
  | { readonly kind: 'file'; readonly name: string; readonly bytes: Uint8Array; readonly options: DrawingOptions }
  | { readonly kind: 'style'; readonly style: string; readonly values: Values };

export interface DrawingOptions {
  /** Millimetres of one user unit. */
  readonly scale?: number | undefined;
  readonly widthIs?: number | undefined;
  readonly blank?: number | undefined;
  /** Gaps up to this width in the outline are closed and listed, mm. */
  readonly closeGaps?: number | undefined;
  /** Of a PDF with several pages. */
  readonly page?: number | undefined;
  readonly roles: readonly string[];
}

export interface ReadAsk {
  readonly source: DrawingSource;
  /** Rules for roles kept from earlier drawings, asked last. */
  readonly remembered: readonly string[];
}

export interface ReadAnswer {
  readonly name: string;
  readonly dieline: Dieline;
  /** Absent where nothing can be drawn. */
  readonly scene: Scene | undefined;
  /** Millimetres by role, the longest first. */
  readonly ruleLengths: readonly (readonly [role: string, mm: number])[];
}

/** Records as they were written; the engine reads them. */
export interface RawMachines {
  readonly press?: unknown;
  readonly cutter?: unknown;
  readonly board?: unknown;
}

export interface DeskLaying extends Omit<LayingSettings, 'machines'> {
  readonly machines: RawMachines;
}

export interface FrameAnswer {
  readonly usable: MmArea;
  readonly printable: MmArea;
  readonly gap: number;
  readonly bleed: number;
  readonly notes: readonly Issue[];
  readonly scene: Scene;
}

export interface BroughtAnswer {
  readonly press?: Brought;
  readonly cutter?: Brought;
}

export interface SearchAsk {
  readonly job: Omit<NestJob, 'machines'> & DeskLaying;
  readonly effort: Effort;
  readonly seed: number;
}

/** A layout as the search hands it over, judged. */
export interface FoundLayout {
  readonly file: LayoutFile;
  readonly state: 'sound' | 'faulty';
}

export type SearchEvent =
  | { readonly kind: 'layout'; readonly found: FoundLayout; readonly step: Improvement }
  | { readonly kind: 'limit'; readonly limit: LimitFacts; readonly step: LimitStep };

export interface LimitFacts {
  readonly ups: number;
  readonly by: BoundName;
}

export interface SearchAnswer {
  readonly layouts: readonly FoundLayout[];
  readonly limit: LimitFacts;
  readonly stopped: StopReason;
  readonly notes: readonly Issue[];
}

export interface LayoutAsk {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface KinshipAsk {
  /** Of each layout. */
  readonly designs: readonly (readonly Design[])[];
  /** What they are held against. */
  readonly drawing: DrawnBlank | DrawnSource;
}

/** A blank as seen on the printed side. */
export interface DrawnBlank {
  readonly blank: Blank;
  readonly name: string;
  readonly fingerprint: string;
}

/** A drawing still to be read. */
export interface DrawnSource extends ReadAsk {
  readonly drawnFrom: 'printed' | 'inside';
  readonly name: string;
}

export interface ByHandAsk {
  readonly layout: LayoutFile;
  /** Numbers of the placements that stay. */
  readonly locked: readonly number[];
  readonly wish: 'solve-rest' | 'tidy';
  readonly effort: Effort;
}

/** The best so far, or the least limit known. */
export interface ByHandEvent {
  readonly ups?: number;
  readonly limit?: number;
}

export interface ByHandAnswer {
  readonly layout: LayoutFile;
  readonly locked: readonly number[];
}

export interface PictureAsk {
  readonly file: LayoutFile;
  readonly grain: 'x' | 'y' | undefined;
  /** Places to mark, numbered. */
  readonly faults?: readonly (readonly [number, number])[];
  /** Without title block, steps and words around the sheet. */
  readonly small?: boolean;
}

export interface ExplainAsk {
  readonly file: LayoutFile;
  readonly name: string;
  readonly limit: LimitFacts | undefined;
  readonly stopped: StopReason | undefined;
  readonly seconds: number | undefined;
  readonly notes: readonly Issue[];
  readonly history: readonly Improvement[];
  readonly limits: readonly LimitStep[];
}

export interface ExplainAnswer {
  readonly report: Report;
  /** The sheet with every part of it marked by what becomes of it. */
  readonly waste: Scene;
  /** The whole report as one page. */
  readonly html: string;
}

export interface NearMissAsk {
  readonly job: SearchAsk['job'];
  /** The layout that stands. */
  readonly file: LayoutFile;
  readonly style: StyledSource | undefined;
  readonly quote: QuoteAsk;
  /** Cartons a year. */
  readonly yearly: number | undefined;
}

/** One design on every sheet of a list. */
export interface CompareAsk {
  readonly job: SearchAsk['job'];
  /** All lists as one, as it is written. */
  readonly sheets: unknown;
  /** The lists that it was joined from. */
  readonly lists: readonly NamedRecord[];
  readonly effort: Effort;
  readonly quote: QuoteAsk;
}

/** The same sheets and layouts with other quantities or prices: no search. */
export interface RecostAsk {
  readonly name: string;
  readonly comparison: Comparison;
  /** What was said of the comparison when it was made. */
  readonly notes: readonly Issue[];
  readonly quote: QuoteAsk;
}

export interface CompareAnswer {
  readonly comparison: Comparison;
  /** Each list with the numbers of the sheets that it offers. */
  readonly lists: readonly { readonly id: string; readonly name: string; readonly sheets: readonly number[] }[];
  readonly facts: CompareFacts;
}

export interface RecostAnswer {
  readonly facts: CompareFacts;
  /** The same in few words, for the phone. */
  readonly brief: string;
  /** Which sheet wins, and by how much. */
  readonly verdict: string;
}

export interface RecordAsk {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface RecordAnswer {
  readonly kind: RecordKind;
  readonly records: readonly NamedRecord[];
}

/** A quote job as `quote` reads it from a file. */
export interface QuoteAsk {
  readonly job: Readonly<Record<string, unknown>>;
  /** Where each rate comes from, by what the quote calls it. */
  readonly sources?: Readonly<Record<string, RateSource>>;
}

export interface QuoteRow {
  readonly quantity: number;
  readonly sheets: number;
  readonly boardKg: number | null;
  readonly boardCostPerThousand: number | null;
  readonly pressHours: number | null;
  readonly costPerThousand: number | null;
  readonly pricePerThousand: number | null;
}

export interface QuoteAnswer {
  readonly rows: readonly QuoteRow[];
  readonly currency: string;
  /** Rates that nobody gave, by what the quote calls them and in words. */
  readonly missing: readonly { readonly figure: string; readonly text: string }[];
  /** Which rates are invented, by a record or typed, in words. */
  readonly rates: string;
  readonly report: Report;
}

/** Versions or outlines whose forms are settled, and the terms they are quoted on; the quantities are theirs. */
export interface RunAsk {
  readonly run: RunToPrice;
  readonly quote: QuoteAsk;
}

export interface RunAnswer extends Pick<QuoteAnswer, 'missing' | 'rates' | 'report'> {}

/** A gang job for equal stations, as `gang` reads it from a file. */
export interface VersionsAsk {
  readonly stations: number;
  readonly versions: readonly { readonly id: string; readonly quantity: number; readonly overs?: Overs }[];
  /** Most forms allowed. */
  readonly forms: number;
  readonly costs?: { readonly form: number; readonly pressing: number };
}

export interface VersionsAnswer {
  /** `[form][station]`: number of the version. */
  readonly forms: readonly (readonly Printed[])[];
  /** Pressings, or money where costs were given. */
  readonly lowerBound: number;
}

export interface OutlinesAsk {
  readonly laying: DeskLaying;
  readonly designs: readonly ({ readonly id: string; readonly source: DrawingSource; readonly drawnFrom: 'printed' | 'inside'; readonly quantity: number; readonly overs?: Overs } & SharedBy)[];
  /** Rules for roles kept from earlier drawings. */
  readonly remembered: readonly string[];
  /** Most forms allowed. */
  readonly forms: number;
  readonly costs?: { readonly form: number; readonly pressing: number };
  readonly effort: Effort;
}

/** What must agree on a form. */
export interface SharedBy {
  readonly inks?: readonly string[];
  readonly board?: string;
  readonly coating?: string;
  readonly delivery?: string;
  readonly foodClass?: string;
}

export interface OutlinesAnswer {
  /** `counts[design]`. Every layout is judged sound. */
  readonly forms: readonly { readonly counts: readonly number[]; readonly pressings: number; readonly file: LayoutFile }[];
  readonly overs: readonly number[];
  readonly cost: number | undefined;
  /** Pressings, or money where costs were given. */
  readonly lowerBound: number;
  readonly separate: { readonly forms: number; readonly pressings: number } | undefined;
  /** Designs that could not share a form, and why; absent in plans kept before it was said. */
  readonly apart?: GangFacts['apart'];
  /** Designs whose drawings ask for a decision. */
  readonly doubtful: readonly string[];
}

/** Copies beyond the quantity. */
export interface Overs {
  readonly least: number;
  readonly greatest?: number;
}

export interface StationSheet {
  readonly scene: Scene;
  /** In station order: path data and place of the mark with its height, sheet millimetres. */
  readonly stations: readonly { readonly outline: string; readonly at: Point; readonly size: number }[];
}

export interface HandoverAsk {
  readonly file: LayoutFile;
  readonly details: HandoverDetails;
  readonly versions?: VersionsOnForms | undefined;
  /** Files of the page that go into the same folder. */
  readonly besides: readonly OutputFile[];
}

/** Versions as they stand on the forms, every one of them on some station. */
export interface VersionsOnForms {
  readonly ask: VersionsAsk;
  /** How each version is marked. */
  readonly letters: readonly string[];
  readonly forms: readonly (readonly Printed[])[];
  /** What is proved for this very ask. */
  readonly lowerBound: number | undefined;
  /** What is written for a station that prints nothing. */
  readonly empty: string;
  /** Of the costs. */
  readonly currency: string;
}

export interface HandoverAnswer {
  readonly files: readonly OutputFile[];
  /** Files that every handover holds and this one lacks; an error in `waiting` says why. */
  readonly missing: readonly string[];
  /** What is to be looked at; an error says why the die maker's files are not among them. */
  readonly waiting: readonly Issue[];
}

export interface OutputFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}
