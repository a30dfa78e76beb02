import type { Random } from '../../base/random.ts';
import type { Cell, Placement } from '../../layout/problem.ts';
import type { Prepared } from '../prepare.ts';
import type { Tables } from '../tables.ts';
import { Crowd } from './guided-crowd.ts';
import { keepFailed, settle, type FailedLayout, type Finish } from './guided-settle.ts';
import { makeStart, standingOf, type Standing } from './guided-starts.ts';

export interface GuidedInput {
  readonly prepared: Prepared;
  readonly tables: Tables;
  readonly random: Random;
  /** Best layouts known, best first, locked blanks among them. */
  readonly bases: readonly (readonly Placement[])[];
  readonly cells: readonly Cell[];
  readonly failed: FailedLayout | undefined;
  readonly finish: Finish;
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

/** Looks for one blank more than the best layout has, again and again, without end; at once at an end when no blank fits. */
export function* guidedSearch(input: GuidedInput): Generator<GuidedStep, void, void> {
  const { prepared, random } = input;
  let bases = input.bases.map((placements) => withoutLocked(prepared, placements));
  let failed = input.failed;
  while (prepared.posesOf.some((poses) => poses.length > 0)) {
    const crowd = new Crowd(prepared, input.tables, (bases[0]?.length ?? 0) + 1);
    const source = makeStart(crowd, { bases, failed: failed?.standing, cells: input.cells }, random);
    const found = yield* settle(crowd, random, input.finish);
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

/** Blanks that may move. */
export function withoutLocked(prepared: Prepared, placements: readonly Placement[]): Standing[] {
  const { locked } = prepared.problem;
  const isLocked = (p: Placement) => locked.some((q) => q.part === p.part && q.turn === p.turn && q.x === p.x && q.y === p.y);
  return placements.filter((placement) => !isLocked(placement)).map((placement) => standingOf(prepared, placement));
}
