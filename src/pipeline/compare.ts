import { InputError, inputError } from '../base/issue.ts';
import { toMillimetres } from '../base/units.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import { placementsOf } from '../layout/layout-of.ts';
import type { Problem } from '../layout/problem.ts';
import { budgetOf, type Effort } from '../nesting/effort.ts';
import type { LookDepth } from '../nesting/look.ts';
import type { Size } from '../press/sheet-areas.ts';
import { squareMetres, type SheetCandidate, type SheetRange } from '../press/sheet-candidates.ts';
import type { NearMissFacts } from '../render/near-miss-facts.ts';
import { cheapestAtQuantities, compareCosts, type ComparedCosts, type CostTerms, type SheetToCost } from './compare-costs.ts';
import { sizesThatJustFit } from './compare-ranges.ts';
import { createLook, type Look, type Seen } from './look.ts';
import type { StyledSource } from './near-miss-changes.ts';
import { nearMisses, type NearMissTerms } from './near-misses.ts';
import type { NestedLayout } from './nest-task.ts';
import { nest, prepareNest, type NestJob, type SearchSettings } from './nest.ts';

/** One design on every sheet that could be bought. */
export interface CompareJob extends Omit<NestJob, 'sheet' | 'sheetGrain' | 'grid' | 'locked' | 'layouts'> {
  /** The first is the one that is usually bought: savings are told against it. */
  readonly candidates: readonly SheetCandidate[];
  readonly ranges: readonly SheetRange[];
  /** How much shorter than ordered a sheet may come, mm. */
  readonly toleranceMm: number;
  readonly terms: CostTerms;
  /** A die that stands, with its layout: one more candidate, for which no die is paid. */
  readonly standingDie?: { readonly number: string | undefined; readonly layout: LayoutFile; readonly candidate: SheetCandidate } | undefined;
}

export interface ComparedSheet extends SheetToCost {
  readonly upperBound: number;
  /** A quick look with a few rows, with all rows, with all patterns; in full as `nest` does; or the layout of a die that stands. */
  readonly searched: LookDepth | 'full' | 'die';
  /** Board bought for a thousand blanks, nothing lost, m². */
  readonly boardM2PerThousand: number;
  /** What the layout found needs of the sheet, mm. */
  readonly leastSheet: Size;
  /** The same with the tolerance: what must be ordered for the layout to be sure to fit. */
  readonly sheetToOrder: Size;
  readonly layout: LayoutFile;
}

export interface Comparison extends ComparedCosts {
  /** In the order of the candidates, then sizes found in ranges, then the die that stands; sheets that hold no blank are left out. */
  readonly compared: readonly ComparedSheet[];
  /** Index of the sheet that takes the least board, nothing lost. */
  readonly leastBoard: number;
  readonly skipped: readonly SheetCandidate[];
  /** Counted work of all searches. */
  readonly work: number;
}

/** Sheets searched in full: the usual one and what wins after the looks. With the looks they stay under four times one `nest`. */
const MOST_IN_FULL: Readonly<Record<Effort, number>> = { quick: 2, normal: 3, thorough: 3 };

/** Looks at every sheet with patterns, then searches the most promising in full, exactly as `nest` would. */
export async function compareSheets(job: CompareJob, search: SearchSettings): Promise<Comparison> {
  const looks = createLooks(job, search);
  const ordered: SheetCandidate[] = [];
  for (const range of job.ranges) ordered.push(...(await sizesThatJustFit(range, job.toleranceMm, looks.look)));
  const { sheets, skipped } = await looks.lookAtAll([...job.candidates, ...ordered]);
  if (job.standingDie) sheets.push(await onStandingDie(job, job.standingDie, looks.look));
  if (sheets.length === 0) throw inputError('no-sheet-holds-blank', { where: job.id, facts: { count: skipped.length } });
  let { work } = looks.spent();
  for (let searched = 0; searched < MOST_IN_FULL[search.effort]; searched++) {
    const next = mostPromising(sheets, job.terms);
    if (next === undefined) break;
    const found = await searchInFull(job, sheets[next].candidate, search);
    // A rule for stripping that the search finds no way to keep: what the look found keeps it.
    sheets[next] = found?.sheet ?? { ...sheets[next], searched: 'full' };
    work += found?.work ?? 0;
  }
  const costs = compareCosts(sheets, job.terms);
  const least = leastBoard(sheets);
  // Nobody asked about quantities: the board of the sheet alone decides.
  const winners = job.terms.quantities.length === 0 ? [{ fromQuantity: 0, candidate: least }] : costs.winners;
  return { ...costs, winners, compared: sheets, leastBoard: least, skipped, work };
}

/** Near misses of the sheet that wins at the largest quantity asked, or that takes the least board. */
export async function nearMissesOf(job: CompareJob, { winners, compared: sheets }: Comparison, terms: NearMissTerms, search: Pick<SearchSettings, 'seed' | 'runner' | 'stop'>, style?: StyledSource): Promise<NearMissFacts> {
  const most = job.terms.quantities.at(-1) ?? 0;
  const best = sheets[winners.findLast(({ fromQuantity }) => fromQuantity <= most)?.candidate ?? 0];
  const onSheet = nestJob(job, best.candidate);
  const { problem } = prepareNest(onSheet);
  return nearMisses({ job: onSheet, problem, placements: placementsOf(best.layout, problem.parts), style }, terms, search);
}

/** The usual sheet first, or a saving against it would be none; then what wins at a quantity asked; then the least board. */
function mostPromising(sheets: readonly ComparedSheet[], terms: CostTerms): number | undefined {
  const wanted = [0, ...cheapestAtQuantities(sheets, terms).toReversed(), leastBoard(sheets)];
  return wanted.find((index) => index !== undefined && sheets[index].searched !== 'full' && sheets[index].searched !== 'die');
}

function leastBoard(sheets: readonly ComparedSheet[]): number {
  return sheets.reduce((best, sheet, index) => (sheet.boardM2PerThousand < sheets[best].boardM2PerThousand ? index : best), 0);
}

type LookAtSheet = (candidate: SheetCandidate) => Promise<ComparedSheet | undefined>;

interface Looks {
  readonly look: LookAtSheet;
  readonly lookAtAll: (candidates: readonly SheetCandidate[]) => Promise<{ sheets: ComparedSheet[]; skipped: SheetCandidate[] }>;
  /** Counted work so far. */
  readonly spent: () => { work: number };
}

/**
 * Looks at every sheet, then deeper ones at those with the least board, as long as all of them together count no more than
 * the patterns of one `nest` may.
 */
function createLooks(job: CompareJob, search: SearchSettings): Looks {
  const lookOnce: Look = createLook(search);
  const budget = budgetOf(search.effort).patterns;
  let work = 0;
  const look = async (candidate: SheetCandidate, depth: LookDepth) => {
    const seen = await lookOnce(nestJob(job, candidate), { depth });
    if (!seen) return undefined;
    work += seen.work;
    return compared(job, candidate, seen, depth);
  };
  const [first, deeper]: [LookDepth, LookDepth] = search.effort === 'quick' ? ['few-rows', 'rows'] : ['rows', 'patterns'];
  return {
    spent: () => ({ work }),
    look: (candidate) => look(candidate, work < budget / 2 ? deeper : first),
    lookAtAll: async (candidates) => {
      const sheets: ComparedSheet[] = [];
      const skipped: SheetCandidate[] = [];
      for (const candidate of candidates) {
        const seen = await look(candidate, first);
        if (seen) sheets.push(seen);
        else skipped.push(candidate);
      }
      const byBoard = [...sheets.keys()].toSorted((a, b) => sheets[a].boardM2PerThousand - sheets[b].boardM2PerThousand);
      for (const index of byBoard) {
        if (work >= budget) break;
        const seen = await look(sheets[index].candidate, deeper);
        if (seen && seen.ups >= sheets[index].ups) sheets[index] = seen;
      }
      return { sheets, skipped };
    },
  };
}

/** The very job that `nest` would be given for this sheet. */
function nestJob(job: CompareJob, { sheet, grain }: SheetCandidate): NestJob {
  return { ...job, sheet, sheetGrain: job.grain === undefined || job.grain === 'any' ? undefined : grain, layouts: 1 };
}

async function searchInFull(job: CompareJob, candidate: SheetCandidate, search: SearchSettings): Promise<{ sheet: ComparedSheet; work: number } | undefined> {
  const outcome = await nest(nestJob(job, candidate), search).catch((error: unknown) => {
    if (error instanceof InputError && error.issues.some(({ code }) => code === 'stripping-rule-impossible')) return undefined;
    throw error;
  });
  if (!outcome) return undefined;
  const { problem, layouts, limit, solution } = outcome;
  return { sheet: compared(job, candidate, { problem, layout: layouts[0], upperBound: limit.ups }, 'full'), work: solution.work };
}

/** The layout of the die, with the limit that a look at its sheet gives. */
async function onStandingDie(job: CompareJob, { layout, candidate }: NonNullable<CompareJob['standingDie']>, look: LookAtSheet): Promise<ComparedSheet> {
  const seen = await look(candidate);
  if (!seen) throw inputError('no-sheet-holds-blank', { where: job.id, facts: { count: 1 } });
  const ups = layout.placements.length;
  checkSameOutline(layout, seen.layout);
  return { ...seen, ups, upperBound: Math.max(seen.upperBound, ups), searched: 'die', ownDie: true, layout, boardM2PerThousand: (candidate.boughtM2 / ups) * 1000, leastSheet: candidate.sheet, sheetToOrder: candidate.sheet };
}

function checkSameOutline(die: LayoutFile, found: LayoutFile): void {
  const outline = JSON.stringify(found.designs[0].outline);
  const other = die.designs.find((design) => JSON.stringify(design.outline) !== outline);
  if (other) throw inputError('die-other-outline', { where: '--die', facts: { design: other.id } });
}

function compared(job: CompareJob, candidate: SheetCandidate, { problem, layout, upperBound }: Omit<Seen, 'work'>, searched: ComparedSheet['searched']): ComparedSheet {
  const ups = layout.file.placements.length;
  const leastSheet = leastSheetOf(problem, layout);
  const { toleranceMm } = job;
  return {
    candidate,
    ups,
    ownDie: false,
    upperBound,
    searched,
    boardM2PerThousand: (candidate.boughtM2 / ups) * 1000,
    leastSheet,
    sheetToOrder: { width: leastSheet.width + toleranceMm, height: leastSheet.height + toleranceMm },
    layout: layout.file,
  };
}

/** The sheet less what the layout leaves free at tail and the side away from the lay. */
function leastSheetOf({ sheet, usable }: Problem, { ranked: { figures } }: NestedLayout): Size {
  return {
    width: toMillimetres(sheet.width - (usable.maxX - usable.minX) + figures.usedWidth),
    height: toMillimetres(sheet.height - (usable.maxY - usable.minY) + figures.usedHeight),
  };
}

export function candidateOfDie({ sheet }: LayoutFile, pricePerTonne: number | undefined): SheetCandidate {
  return { sheet, grain: undefined, origin: { kind: 'stock' }, boughtM2: squareMetres(sheet), pricePerTonne };
}
