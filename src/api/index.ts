/**
 * Blankwright for other programs: read a drawing, lay it out, judge a layout, compare sheets, quote. For Node and browsers:
 * no files, no console, no clock. What cannot be used throws an `InputError` whose `issues` name every reason; `sentences`
 * makes text of them. A page names the place of the solver `highs.wasm` first, by `prepareLinearPrograms`.
 */
import type { Issue } from '../base/issue.ts';
import type { Dieline } from '../dieline/dieline.ts';
import { readDrawing } from '../dieline/read-drawing.ts';
import { judge as judgeLayout, type Judgement } from '../layout/judge.ts';
import { readLayoutFile, writeLayoutFile, type LayoutFile } from '../layout/layout-file.ts';
import type { BoundName, StopReason } from '../layout/problem.ts';
import { compareSheets } from '../pipeline/compare.ts';
import { factsOfComparison } from '../pipeline/compare-showing.ts';
import { nest as nestJob } from '../pipeline/nest.ts';
import { showNest } from '../pipeline/nest-showing.ts';
import { makeQuote } from '../pipeline/quote.ts';
import { readQuoteJob } from '../pipeline/quote-job.ts';
import { squareMetres, type SheetCandidate } from '../press/sheet-candidates.ts';
import { sheetGrainAxis } from '../press/grain.ts';
import type { Size } from '../press/sheet-areas.ts';
import { GERMAN_TABLE } from '../press/waste-table.ts';
import { compareJson } from '../render/compare-json.ts';
import { english } from '../render/messages/english.ts';
import { quoteJson } from '../render/quote-json.ts';
import { blankOf, bytesOf, layingOf, readingOptions, searchOf, sizeOf, type LayingRequest, type Reading } from './request.ts';

export { InputError, type Issue } from '../base/issue.ts';
export type { Blank, Dieline, Role, RulePath } from '../dieline/dieline.ts';
export type { Fault, FaultKind, Judgement } from '../layout/judge.ts';
export type { Design, LayoutFile, PlacedBlank } from '../layout/layout-file.ts';
export type { Effort } from '../nesting/effort.ts';
export { prepareLinearPrograms } from '../nesting/linear-program.ts';
export type { TaskRunner } from '../nesting/tasks.ts';
export type { Size } from '../press/sheet-areas.ts';
export type { LayingRequest, Reading } from './request.ts';

/** What a drawing holds: blanks with outline, openings and rules, in millimetres, y up; `issues` say what is in doubt. */
export function read(drawing: Uint8Array | string, reading: Reading = {}): Promise<Dieline> {
  return readDrawing(bytesOf(drawing), readingOptions(reading));
}

export interface NestRequest extends LayingRequest {
  /** `"1020x720"` or millimetres, the first side along the gripper edge. */
  readonly sheet: string | Size;
  /** How many truly different layouts are wanted; default 1. */
  readonly layouts?: number;
}

export interface NestReply {
  readonly ups: number;
  /** No layout of this design on this sheet has more: the least limit that is proved. */
  readonly upperBound: number;
  /** How the limit is known. */
  readonly boundBy: BoundName;
  /** The limit is met. */
  readonly optimal: boolean;
  readonly stopped: StopReason;
  /** Judged and found sound, best first; at least one. */
  readonly layouts: readonly LayoutFile[];
  /** What was assumed or changed. */
  readonly issues: readonly Issue[];
  /** The layout file's text, as `nest --json` writes it; equal layouts are equal text. */
  layoutText(index?: number): string;
  /** The picture of the sheet as SVG. */
  svg(index?: number): string;
  /** The whole report as a page that loads nothing. */
  html(index?: number): string;
}

/** The best layout of one design on one sheet. Same request, same answer, on every machine. */
export async function nest(request: NestRequest): Promise<NestReply> {
  const { drawing, blank } = await blankOf(request);
  const search = searchOf(request);
  const id = request.name ?? 'design';
  const outcome = await nestJob({ ...layingOf(request), sheet: sizeOf(request.sheet, 'sheet'), id, blank, drawing, layouts: request.layouts ?? 1 }, search);
  const at = (index: number) => {
    const layout = outcome.layouts[index];
    if (!layout) throw new RangeError(`there are ${outcome.layouts.length} layouts, counted from 0`);
    return layout;
  };
  const show = (index: number) => showNest(outcome, at(index), { name: id, seed: search.seed, history: [] });
  const { limit, layouts } = outcome;
  const ups = layouts[0].file.placements.length;
  return {
    ups,
    upperBound: limit.ups,
    boundBy: limit.by,
    optimal: ups === limit.ups,
    stopped: outcome.solution.stopped,
    layouts: layouts.map(({ file }) => file),
    issues: [...drawing.issues, ...outcome.notes],
    layoutText: (index = 0) => writeLayoutFile(at(index).file),
    svg: (index = 0) => show(index).svg,
    html: (index = 0) => show(index).html(),
  };
}

/** Judges a layout from scratch, whoever made it. `layout` is the parsed content of a layout file, or its text. */
export function judge(layout: unknown): Judgement {
  return judgeLayout(readLayoutFile(typeof layout === 'string' ? JSON.parse(layout) : layout, 'layout'));
}

export interface CompareRequest extends Omit<LayingRequest, 'sheetGrain'> {
  /** The first is the one that is usually bought. */
  readonly sheets: readonly (string | { readonly sheet: string | Size; readonly grain?: 'x' | 'y' | 'long' | 'short'; readonly pricePerTonne?: number })[];
}

/** What `compare --json` writes, version 1. */
export interface CompareReply {
  readonly format: 'blankwright-comparison';
  readonly version: 1;
  readonly candidates: readonly { readonly sheet: Size & { readonly grain: 'x' | 'y' | null }; readonly ups: number; readonly upperBound: number; readonly boardM2PerThousand: number }[];
  /** Where several take turns sheet by sheet, `turns` holds all of them. */
  readonly winners: readonly { readonly fromQuantity: number; readonly candidate: number; readonly turns?: readonly number[] }[];
  /** Index of the candidate that takes the least board. */
  readonly leastBoard: number;
  readonly sentence: string;
}

/** One design on every sheet that could be bought: which takes least board. */
export async function compare(request: CompareRequest): Promise<CompareReply> {
  const { drawing, blank } = await blankOf(request);
  const laying = layingOf(request);
  const candidates = request.sheets.map((one, index): SheetCandidate => {
    const { sheet, grain, pricePerTonne } = typeof one === 'string' || 'width' in one ? { sheet: one as string } : one;
    const size = sizeOf(sheet, `sheets[${index}]`);
    return { sheet: size, grain: grain && sheetGrainAxis(grain, size), origin: { kind: 'stock' }, boughtM2: squareMetres(size), pricePerTonne };
  });
  const { board } = laying.machines;
  const terms = { quantities: [], route: { colours: 0, varnishUnits: 0, stages: [] }, grammage: board?.grammage, caliperMm: board?.caliper, pricePerTonne: board?.pricePerTonne, currency: 'EUR', waste: GERMAN_TABLE, rates: {} };
  const name = request.name ?? 'design';
  const job = { ...laying, id: name, blank, drawing, candidates, ranges: [], toleranceMm: 0, terms };
  return JSON.parse(compareJson(factsOfComparison(name, job, await compareSheets(job, searchOf(request)), [])));
}

/** What `quote --json` writes, version 1; a figure whose rate was not given is null and listed in `missing`. */
export interface QuoteReply {
  readonly format: 'blankwright-quote';
  readonly version: 1;
  readonly quantities: readonly { readonly quantity: number; readonly sheets: number; readonly boardKg: number; readonly boardCostPerThousand: number | null; readonly pressHours: number | null; readonly costPerThousand: number | null; /** By name, such as "cartons per case" and "gross weight" (kg), where the job says how it is packed. */ readonly packing?: Readonly<Record<string, number | null>> }[];
  readonly missing: readonly string[];
  /** Inked share of the sheet by zone, from the left of the printed side, where the job names its inks and its layout. */
  readonly inkZones?: readonly { readonly ink: string; readonly zoneMm: number; readonly fromMm: number; readonly shares: readonly number[]; readonly upright: readonly number[] }[];
}

/**
 * Quantities to sheets, weight, hours and cost. `job` is the content of a quote's job file; `load` gives the content of files
 * that it names, and may be left out where it names none.
 */
export function quote(job: unknown, load: (file: string) => unknown = refuse): QuoteReply {
  return JSON.parse(quoteJson(makeQuote(readQuoteJob(job, 'job', load))));
}

function refuse(file: string): never {
  throw new TypeError(`the job names the file ${file}; give load, or put its content in`);
}

/** Issues as sentences: what is wrong, where, and what to do. */
export function sentences(issues: readonly Issue[]): string[] {
  return issues.map((issue) => english.sentence(issue));
}
