import { inputError } from '../base/issue.ts';
import type { Candidate } from '../layout/problem.ts';
import { closedFormLimits } from '../nesting/limits/closed-form.ts';
import type { Methods } from '../nesting/driver.ts';
import { lookForSoMany } from '../nesting/look.ts';
import { sheetGrainAxis } from '../press/grain.ts';
import type { Size } from '../press/sheet-areas.ts';
import { preparedOrNone } from './look.ts';
import type { NestJob, SearchSettings } from './nest.ts';
import { solveByRule } from './solve-by-rule.ts';

/** `depth` is measured away from the gripper edge. */
export type LeastSide = 'depth' | 'width' | 'area';

/** What is to be held, and in which steps of a millimetre value the sheet may shrink. */
export interface LeastSheetWish {
  readonly ups: number;
  readonly least: LeastSide;
  readonly stepMm: number;
}

export interface LeastSheet extends LeastSheetWish {
  readonly sheet: Size;
  /** A layout of so many on it. */
  readonly known: Candidate;
  /** The job on that sheet, to begin from the layout. */
  readonly job: NestJob;
  /** No sheet whose varied side is shorter than this holds so many, mm; absent where two sides vary or nothing is proved. */
  readonly impossibleBelowMm?: number;
}

type Search = Pick<SearchSettings, 'effort' | 'seed' | 'runner' | 'stop'>;

/**
 * The least sheet, within the job's sheet and what the machines take, that is known to hold so many ups. Sides shrink in steps; a sheet is tried with
 * patterns and, at more effort, with a short free search, and halving finds the least that works. A search that misses a layout only makes the
 * sheet larger than need be; what no sheet can hold is known from limits of closed form.
 *
 * Throws an InputError where the whole sheet is not known to hold so many.
 */
export async function leastSheet(given: NestJob, wish: LeastSheetWish, { effort, seed, runner, stop }: Search): Promise<LeastSheet> {
  const job = withFixedGrain(given);
  // What is met on sheets that are only tried is no improvement of the answer: nobody is told.
  const sheets = createSheets(job, wish.ups, { effort, seed, runner, stop });
  const whole = await sheets.holding(job.sheet);
  if (!whole) throw inputError('least-sheet-too-many', { where: '--ups', facts: { ups: wish.ups, width: job.sheet.width, height: job.sheet.height, most: sheets.limitOf(job.sheet) } });
  const find = wish.least === 'area' ? leastArea : wish.least === 'depth' ? shortest : narrowest;
  const { sheet, known, impossibleBelowMm } = await find(sheets, stepsOf(job, wish.stepMm), { sheet: job.sheet, known: whole });
  return { ...wish, sheet, known, job: { ...job, sheet, start: known }, ...(impossibleBelowMm !== undefined && { impossibleBelowMm }) };
}

/** “Long” and “short” are meant of the sheet that was given. */
function withFixedGrain(job: NestJob): NestJob {
  return job.sheetGrain === undefined ? job : { ...job, sheetGrain: sheetGrainAxis(job.sheetGrain, job.sheet) };
}

interface Sheets {
  /** A layout of so many on the sheet, where one is found. */
  readonly holding: (sheet: Size) => Promise<Candidate | undefined>;
  /** No more go onto it. */
  readonly limitOf: (sheet: Size) => number;
  readonly mayHold: (sheet: Size) => boolean;
}

function createSheets(job: NestJob, wanted: number, search: Search): Sheets & { readonly byRows: Sheets } {
  const preparedOn = (sheet: Size) => preparedOrNone({ ...job, sheet });
  const limitOf = (sheet: Size) => {
    const problem = preparedOn(sheet)?.problem;
    return problem ? closedFormLimits(problem)[0]!.ups : 0;
  };
  const sheetsBy = (methods: Methods): Sheets => ({
    limitOf,
    mayHold: (sheet) => limitOf(sheet) >= wanted,
    async holding(sheet) {
      const prepared = preparedOn(sheet);
      if (!prepared || search.stop()) return undefined;
      const { best } = await solveByRule(methods, prepared, search);
      return best && best.placements.length >= wanted ? best : undefined;
    },
  });
  return { ...sheetsBy(lookForSoMany(wanted, 'everything')), byRows: sheetsBy(lookForSoMany(wanted, 'rows')) };
}

interface Held {
  readonly sheet: Size;
  readonly known: Candidate;
  readonly impossibleBelowMm?: number | undefined;
}

/** The sheet's side from what is given down to the least that machines take, mm. */
type Steps = (side: keyof Size) => readonly number[];

function stepsOf({ sheet, machines: { press, cutter } }: NestJob, stepMm: number): Steps {
  return (side) => {
    const least = Math.max(stepMm, ...[press, cutter].map((machine) => machine?.minSheet?.[side] ?? 0));
    return Array.from({ length: Math.max(1, Math.floor((sheet[side] - least) / stepMm + 1e-6) + 1) }, (_, k) => Math.round((sheet[side] - k * stepMm) * 1000) / 1000);
  };
}

function shortest(sheets: Sheets, steps: Steps, held: Held): Promise<Held> {
  return shrink(sheets, steps('height').map((height) => ({ ...held.sheet, height })), 'height', held.known);
}

function narrowest(sheets: Sheets, steps: Steps, held: Held): Promise<Held> {
  return shrink(sheets, steps('width').map((width) => ({ ...held.sheet, width })), 'width', held.known);
}

/** Widths whose shortest sheet by rows is among the smallest get all methods. */
const WIDTHS_SEARCHED = 2;

/** Of every width the shortest sheet by rows; of the best of these widths the shortest by everything. */
async function leastArea(sheets: Sheets & { readonly byRows: Sheets }, steps: Steps, held: Held): Promise<Held> {
  const heights = steps('height');
  const seen: Held[] = [held];
  const smallest = () => seen.toSorted((a, b) => areaOf(a.sheet) - areaOf(b.sheet));
  for (const width of steps('width')) {
    const area = areaOf(smallest()[0]!.sheet);
    const column = heights.map((height) => ({ width, height })).filter((sheet) => areaOf(sheet) < area);
    const known = column[0] && sheets.mayHold(column[0]) ? await sheets.byRows.holding(column[0]) : undefined;
    if (known) seen.push(await shrink(sheets.byRows, column, 'height', known));
  }
  for (const { sheet, known } of smallest().slice(0, WIDTHS_SEARCHED)) {
    seen.push(await shrink(sheets, heights.filter((height) => height <= sheet.height).map((height) => ({ ...sheet, height })), 'height', known));
  }
  const [{ sheet, known }] = smallest() as [Held];
  return { sheet, known };
}

function areaOf({ width, height }: Size): number {
  return width * height;
}

/** `sizes` shrink; the first is known to hold them. Halves between it and the largest on which they are known not to go. */
async function shrink(sheets: Sheets, sizes: readonly Size[], side: keyof Size, first: Candidate): Promise<Held> {
  const possible = await lastThat(sizes.length, (k) => Promise.resolve(sheets.mayHold(sizes[k]!)));
  let known = first;
  const least = await lastThat(possible + 1, async (k) => {
    const found = await sheets.holding(sizes[k]!);
    known = found ?? known;
    return found !== undefined;
  });
  return { sheet: sizes[least]!, known, ...(possible + 1 < sizes.length && { impossibleBelowMm: sizes[possible]![side] }) };
}

/** The last index below `count` that passes, where 0 does and those after a failure are taken to fail. */
async function lastThat(count: number, passes: (index: number) => Promise<boolean>): Promise<number> {
  let [low, high] = [0, count];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (await passes(middle)) low = middle;
    else high = middle;
  }
  return low;
}
