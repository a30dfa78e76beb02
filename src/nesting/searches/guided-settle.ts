import type { Random } from '../../base/random.ts';
import type { Placement } from '../../layout/problem.ts';
import { placementAt } from '../prepare.ts';
import type { Crowd } from './guided-crowd.ts';
import type { Standing } from './guided-starts.ts';

/** The exact end of a search. */
export interface Finish {
  /** Moves a layout that is nearly right to one that keeps every rule; undefined when it cannot. */
  readonly apply: (placements: readonly Placement[]) => readonly Placement[] | undefined;
  /** What a try at so many blanks counts, in look-ups. */
  readonly work: (blanks: number) => number;
}

/** Layout of the wanted number that still overlaps. Plain data: it goes from round to round with its lane. */
export interface FailedLayout {
  readonly standing: readonly Standing[];
  readonly overlap: number;
  /** How often in a row a start has not come near it. */
  readonly misses: number;
}

/** A start is given up after so many passes without the overlap falling to this share of the least seen. */
const STALL_PASSES = 100;
const PROGRESS = 0.98;
/**
 * The exact finish is tried when no pair is deeper than this, µm, or than this share of the coarsest raster's step, and not
 * more often than every so many passes.
 */
const NEAR = 300;
const NEAR_SHARE = 0.2;
const PASSES_BETWEEN_FINISHES = 20;
const VERY_NEAR = 10;
const PASSES_WHEN_VERY_NEAR = 3;
/** A start whose finishes fail so often is jammed by hundredths of a millimetre. */
const MOST_FINISHES = 3;
/** The kept failed layout gives way to one within this factor, or to any after so many misses. */
const AS_GOOD = 1.02;
const MOST_MISSES = 30;

/** Passes until the layout keeps every rule or stalls. */
export function* settle(crowd: Crowd, random: Random, finish: Finish): Generator<{ work: number }, readonly Placement[] | undefined, void> {
  const near = Math.max(NEAR, NEAR_SHARE * crowd.tables.coarsest);
  let least = Infinity;
  let stalled = 0;
  let finishes = 0;
  let sinceFinish = PASSES_BETWEEN_FINISHES;
  let counted = 0;
  while (stalled < STALL_PASSES && finishes < MOST_FINISHES) {
    const deepest = crowd.deepest();
    if (deepest <= near && sinceFinish >= (deepest <= VERY_NEAR ? PASSES_WHEN_VERY_NEAR : PASSES_BETWEEN_FINISHES)) {
      const found = finish.apply(placementsOf(crowd));
      yield { work: finish.work(crowd.total) };
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

/** The one to go on from: what is kept, unless the crowd has come as near, or nothing has for long. */
export function keepFailed(kept: FailedLayout | undefined, crowd: Crowd): FailedLayout {
  if (kept && kept.standing.length === crowd.movable && crowd.overlap > kept.overlap * AS_GOOD && kept.misses < MOST_MISSES) {
    return { ...kept, misses: kept.misses + 1 };
  }
  const standing = Array.from({ length: crowd.movable }, (_, i) => ({ pose: crowd.pose[i], x: crowd.x[i], y: crowd.y[i] }));
  return { standing, overlap: crowd.overlap, misses: 0 };
}

export function placementsOf(crowd: Crowd): Placement[] {
  const { prepared } = crowd;
  const free = Array.from({ length: crowd.movable }, (_, i) => placementAt(prepared, crowd.pose[i], crowd.x[i], crowd.y[i]));
  return [...prepared.problem.locked, ...free];
}
