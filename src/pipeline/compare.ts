import { InputError, inputError } from '../base/issue.ts';
import { toMicrons, toMillimetres } from '../base/units.ts';
import type { Part, Problem } from '../layout/problem.ts';
import type { RankedLayout } from '../nesting/incumbents.ts';
import { standardMethods } from '../nesting/methods.ts';
import { solveWith } from '../nesting/solve.ts';
import { machinesTake, squareMetres, type SheetCandidate } from '../press/sheet-candidates.ts';
import type { Size } from '../press/sheet-areas.ts';
import { nest, prepareNest, type NestedLayout, type NestJob, type SearchSettings } from './nest.ts';

/** One design on every sheet that could be bought. */
export interface CompareJob extends Omit<NestJob, 'sheet' | 'sheetGrain' | 'grid' | 'locked' | 'layouts'> {
  /** The first is the one that is usually bought: savings are told against it. */
  readonly candidates: readonly SheetCandidate[];
  readonly madeToOrder?: { readonly least: Size; readonly greatest: Size; readonly step: number; readonly grain?: 'x' | 'y' | undefined; readonly pricePerTonne?: number | undefined } | undefined;
}

export interface ComparedSheet {
  readonly candidate: SheetCandidate;
  readonly ups: number;
  readonly upperBound: number;
  /** `patterns`: a quick look with regular patterns; `full`: what `nest` gives at the effort asked for. */
  readonly searched: 'patterns' | 'full';
  /** Board bought for a thousand blanks, m². */
  readonly boardM2PerThousand: number;
  /** The least sheet that holds these ups, mm, without tolerance. */
  readonly leastSheet: Size;
  readonly layout?: NestedLayout | undefined;
}

export interface Comparison {
  /** In the order of the candidates, made-to-order sizes last; sheets that hold no blank are left out. */
  readonly sheets: readonly ComparedSheet[];
  /** Index of the sheet that takes the least board. */
  readonly leastBoard: number;
  readonly skipped: readonly SheetCandidate[];
}

/** Work of a quick look, in parts of what `nest` spends on patterns at normal effort: forty looks cost about two runs. */
const LOOK_SHARE = 1 / 20;
/** Sheets that are searched in full: the best by board after the quick look. */
const FINALISTS = 2;
/** Steps of each side in the coarse look at sizes made to order. */
const ORDER_STEPS = 5;
/** Sizes made to order that are kept. */
const KEPT_ORDERS = 3;

/** Looks at every sheet with patterns, then searches the most promising in full, exactly as `nest` would. */
export async function compareSheets(job: CompareJob, search: SearchSettings): Promise<Comparison> {
  const look = createLook(job, search);
  const ordered = job.madeToOrder ? await orderedSizes(job, job.madeToOrder, look) : [];
  const looked: ComparedSheet[] = [];
  const skipped: SheetCandidate[] = [];
  for (const candidate of [...job.candidates, ...ordered]) {
    const seen = await look(candidate);
    if (seen) looked.push(seen);
    else skipped.push(candidate);
  }
  if (looked.length === 0) throw inputError('no-sheet-holds-blank', { where: job.id, facts: { count: skipped.length } });
  const finalists = [...looked.keys()].sort((a, b) => looked[a].boardM2PerThousand - looked[b].boardM2PerThousand).slice(0, FINALISTS);
  // The usual sheet is searched in full too, or a saving against it would be none.
  const full = new Set([0, ...finalists]);
  const sheets: ComparedSheet[] = [];
  for (const [index, sheet] of looked.entries()) sheets.push(full.has(index) ? await searchInFull(job, sheet.candidate, search) : sheet);
  const leastBoard = [...full].sort((a, b) => sheets[a].boardM2PerThousand - sheets[b].boardM2PerThousand || a - b)[0];
  return { sheets, leastBoard, skipped };
}

type Look = (candidate: SheetCandidate) => Promise<ComparedSheet | undefined>;

/** The quick look. Problems with the same rotations share their parts, and by them their tables. */
function createLook(job: CompareJob, { seed, runner, stop }: SearchSettings): Look {
  const shared = new Map<string, readonly Part[]>();
  const patterns = standardMethods.budgetOf('normal').patterns * LOOK_SHARE;
  const methods = { ...standardMethods, budgetOf: () => ({ ...standardMethods.budgetOf('quick'), patterns, rounds: 0 }) };
  return async (candidate) => {
    const problem = problemOn(job, candidate);
    if (!problem) return undefined;
    const key = problem.parts[0].turns.join();
    const parts = shared.get(key) ?? problem.parts;
    shared.set(key, parts);
    const { best, limit } = await solveWith(methods, { ...problem, parts }, { effort: 'quick', seed, runner, stop });
    return best && limit && compared(candidate, problem, best, limit.ups, 'patterns');
  };
}

/** Undefined where the blank does not go onto the sheet. */
function problemOn(job: CompareJob, candidate: SheetCandidate): Problem | undefined {
  try {
    return prepareNest(nestJob(job, candidate)).problem;
  } catch (error) {
    if (error instanceof InputError && error.issues.every(({ code }) => DOES_NOT_FIT.has(code))) return undefined;
    throw error;
  }
}

const DOES_NOT_FIT: ReadonlySet<string> = new Set(['blank-larger-than-usable', 'nothing-left-of-sheet']);

/** The very job that `nest` would be given for this sheet. */
function nestJob(job: CompareJob, { sheet, grain }: SheetCandidate): NestJob {
  return { ...job, sheet, sheetGrain: job.grain === undefined || job.grain === 'any' ? undefined : grain, layouts: 1 };
}

async function searchInFull(job: CompareJob, candidate: SheetCandidate, search: SearchSettings): Promise<ComparedSheet> {
  const { problem, layouts, limit } = await nest(nestJob(job, candidate), search);
  const [layout] = layouts;
  return { ...compared(candidate, problem, layout.ranked, limit.ups, 'full'), layout };
}

function compared(candidate: SheetCandidate, problem: Problem, { placements, figures }: RankedLayout, upperBound: number, searched: ComparedSheet['searched']): ComparedSheet {
  const ups = placements.length;
  const { sheet, usable } = problem;
  const leastSheet = {
    width: toMillimetres(sheet.width - (usable.maxX - usable.minX) + figures.usedWidth),
    height: toMillimetres(sheet.height - (usable.maxY - usable.minY) + figures.usedHeight),
  };
  return { candidate, ups, upperBound, searched, boardM2PerThousand: (candidate.boughtM2 / ups) * 1000, leastSheet };
}

/**
 * Sizes made to order where one more row or column just fits: a coarse look over the range, each layout's sheet trimmed
 * to what it needs and rounded up to the mill's step.
 */
async function orderedSizes(job: CompareJob, order: NonNullable<CompareJob['madeToOrder']>, look: Look): Promise<SheetCandidate[]> {
  const { least, greatest, step, grain, pricePerTonne } = order;
  const candidate = (sheet: Size): SheetCandidate => ({ sheet, grain, origin: { kind: 'made-to-order' }, boughtM2: squareMetres(sheet), pricePerTonne });
  const side = (from: number, to: number, k: number) => from + Math.round(((to - from) * k) / (ORDER_STEPS - 1) / step) * step;
  const trimmed = new Map<string, { sheet: Size; ups: number }>();
  for (let i = 0; i < ORDER_STEPS; i++) {
    for (let j = 0; j < ORDER_STEPS; j++) {
      const seen = await look(candidate({ width: side(least.width, greatest.width, i), height: side(least.height, greatest.height, j) }));
      if (!seen) continue;
      const sheet = { width: roundUp(seen.leastSheet.width, step, least.width), height: roundUp(seen.leastSheet.height, step, least.height) };
      if (machinesTake(sheet, job.machines)) trimmed.set(`${sheet.width}x${sheet.height}`, { sheet, ups: seen.ups });
    }
  }
  const boardPerUp = ({ sheet, ups }: { sheet: Size; ups: number }) => squareMetres(sheet) / ups;
  return [...trimmed.values()].sort((a, b) => boardPerUp(a) - boardPerUp(b)).slice(0, KEPT_ORDERS).map(({ sheet }) => candidate(sheet));
}

/** In whole micrometres, so that a size that is a multiple of the step already is not raised by rounding noise. */
function roundUp(value: number, step: number, least: number): number {
  const [microns, unit] = [toMicrons(value), toMicrons(step)];
  return Math.max(least, toMillimetres(Math.ceil(microns / unit) * unit));
}
