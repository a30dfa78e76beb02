import type { Random } from '../../base/random.ts';
import type { Cell, Placement } from '../../layout/problem.ts';
import { placementAt, type Prepared } from '../prepare.ts';
import type { Tables } from '../tables.ts';
import { Crowd } from './guided-crowd.ts';
import { makeStart, standingOf, type Standing } from './guided-starts.ts';

/** Layout of the wanted number that still overlaps. Plain data: it goes from round to round with its lane. */
export interface FailedLayout {
  readonly standing: readonly Standing[];
  readonly overlap: number;
  /** How often in a row a start has not come near it. */
  readonly misses: number;
}

export interface GuidedInput {
  readonly prepared: Prepared;
  readonly tables: Tables;
  readonly random: Random;
  /** Best layouts known, best first, locked blanks among them. */
  readonly bases: readonly (readonly Placement[])[];
  readonly cells: readonly Cell[];
  readonly failed: FailedLayout | undefined;
  /** Moves a layout that is nearly right to one that keeps every rule; undefined when it cannot. */
  readonly finish: (placements: readonly Placement[]) => readonly Placement[] | undefined;
}

export interface GuidedStep {
  /** Look-ups of this step. */
  readonly work: number;
  /** A layout with one blank more than the best before. */
  readonly found?: readonly Placement[];
  readonly source?: string;
  /** Present whenever a start has ended. */
  readonly failed?: FailedLayout | undefined;
}

/** A start is given up after so many passes without the overlap falling to this share of the least seen. */
const STALL_PASSES = 100;
const PROGRESS = 0.98;
/** The exact finish is tried when no pair is deeper than this, µm, and not more often than every so many passes. */
const NEAR = 300;
const PASSES_BETWEEN_FINISHES = 20;
const VERY_NEAR = 10;
const PASSES_WHEN_VERY_NEAR = 3;
/** A start whose finishes fail so often is jammed by hundredths of a millimetre. */
const MOST_FINISHES = 3;
/** The kept failed layout gives way to one within this factor, or to any after so many misses. */
const AS_GOOD = 1.02;
const MOST_MISSES = 30;

/** Looks for one blank more than the best layout has, again and again, without end. */
export function* guidedSearch(input: GuidedInput): Generator<GuidedStep, void, void> {
  const { prepared, random } = input;
  let bases = input.bases.map((placements) => withoutLocked(prepared, placements));
  let failed = input.failed;
  for (;;) {
    const crowd = new Crowd(prepared, input.tables, (bases[0]?.length ?? 0) + 1);
    const source = makeStart(crowd, { bases, failed: failed?.standing, cells: input.cells }, random);
    const found = yield* settle(crowd, input);
    if (found) {
      bases = [withoutLocked(prepared, found)];
      failed = undefined;
      yield { work: 0, found, source: `free search, ${source}`, failed };
    } else {
      failed = keepFailed(failed, crowd);
      yield { work: 0, failed };
    }
  }
}

/** Passes until the layout keeps every rule or stalls. */
function* settle(crowd: Crowd, { prepared, random, finish }: GuidedInput): Generator<GuidedStep, readonly Placement[] | undefined, void> {
  let least = Infinity;
  let stalled = 0;
  let finishes = 0;
  let sinceFinish = PASSES_BETWEEN_FINISHES;
  let counted = 0;
  while (stalled < STALL_PASSES && finishes < MOST_FINISHES) {
    const deepest = crowd.deepest();
    if (deepest <= NEAR && sinceFinish >= (deepest <= VERY_NEAR ? PASSES_WHEN_VERY_NEAR : PASSES_BETWEEN_FINISHES)) {
      const found = finish(placementsOf(prepared, crowd));
      if (found) return found;
      finishes++;
      sinceFinish = 0;
    }
    crowd.pass(random);
    sinceFinish++;
    if (crowd.overlap < least * PROGRESS) {
      least = crowd.overlap;
      stalled = 0;
    } else stalled++;
    yield { work: crowd.work - counted };
    counted = crowd.work;
  }
  return undefined;
}

function keepFailed(kept: FailedLayout | undefined, crowd: Crowd): FailedLayout {
  if (kept && kept.standing.length === crowd.movable && crowd.overlap > kept.overlap * AS_GOOD && kept.misses < MOST_MISSES) {
    return { ...kept, misses: kept.misses + 1 };
  }
  const standing = Array.from({ length: crowd.movable }, (_, i) => ({ pose: crowd.pose[i], x: crowd.x[i], y: crowd.y[i] }));
  return { standing, overlap: crowd.overlap, misses: 0 };
}

function placementsOf(prepared: Prepared, crowd: Crowd): Placement[] {
  const free = Array.from({ length: crowd.movable }, (_, i) => placementAt(prepared, crowd.pose[i], crowd.x[i], crowd.y[i]));
  return [...prepared.problem.locked, ...free];
}

function withoutLocked(prepared: Prepared, placements: readonly Placement[]): Standing[] {
  const { locked } = prepared.problem;
  const isLocked = (p: Placement) => locked.some((q) => q.part === p.part && q.turn === p.turn && q.x === p.x && q.y === p.y);
  return placements.filter((placement) => !isLocked(placement)).map((placement) => standingOf(prepared, placement));
}
