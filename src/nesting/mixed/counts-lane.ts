import { createRandom } from '../../base/random.ts';
import type { Placement, Problem } from '../../layout/problem.ts';
import { separate } from '../finish/separate.ts';
import { separationWork } from '../lanes.ts';
import { prepareLinearPrograms } from '../linear-program.ts';
import type { Prepared } from '../prepare.ts';
import { Crowd } from '../searches/guided-crowd.ts';
import { keepFailed, settle, type FailedLayout } from '../searches/guided-settle.ts';
import { makeStart, standingOf } from '../searches/guided-starts.ts';
import { drawSteps } from '../slices.ts';
import type { Tables } from '../tables.ts';

/** Whether given counts of several parts fit on the sheet: a pure function of what stands here. Plain data. */
export interface CountsTask {
  readonly kind: 'counts';
  readonly problem: Problem;
  readonly seed: number;
  /** Look-ups after which the search ends. */
  readonly work: number;
  /** A sound layout to start from; blanks beyond the wanted counts are left out, missing ones put in. */
  readonly base: readonly Placement[];
  readonly counts: readonly number[];
}

export interface CountsResult {
  readonly kind: 'counts';
  readonly work: number;
  readonly found: { readonly placements: readonly Placement[]; readonly source: string } | undefined;
}

export async function runCountsLane({ problem, seed, work: budget, base, counts }: CountsTask, { prepared, tables }: { prepared: Prepared; tables: Tables }, pause: () => Promise<boolean>): Promise<CountsResult> {
  await prepareLinearPrograms();
  const random = createRandom(seed);
  const finish = { apply: (placements: readonly Placement[]) => separate(problem, placements), work: separationWork };
  let found: CountsResult['found'];
  const search = function* () {
    let failed: FailedLayout | undefined;
    while (!found) {
      const kept = keptOf(base, counts, (limit) => random.below(limit));
      const parts = [...kept.map(({ part }) => part), ...missing(kept, counts)];
      // A failed layout of other blanks in another order is no start for these.
      const crowd = new Crowd(prepared, tables, parts.length);
      parts.forEach((part, i) => (crowd.choice[i] = part));
      const usable = failed?.standing.every(({ pose }, i) => prepared.poses[pose].shape === parts[i]) ? failed : undefined;
      const source = makeStart(crowd, { bases: [kept.map((placement) => standingOf(prepared, placement))], failed: usable?.standing, cells: [] }, random);
      const placements = yield* settle(crowd, random, finish);
      if (placements) found = { placements, source: `free search, ${source}` };
      else failed = keepFailed(usable, crowd);
      yield { work: 0 };
    }
  };
  const work = await drawSteps(search(), budget, pause, ({ work: step }) => (found ? 'done' : step === 0 ? 'between' : 'within'));
  return { kind: 'counts', work, found };
}

/** The base without blanks beyond the counts, those left out drawn at random. */
function keptOf(base: readonly Placement[], counts: readonly number[], below: (limit: number) => number): Placement[] {
  const kept = [...base];
  counts.forEach((count, part) => {
    for (;;) {
      const own = kept.flatMap((placement, i) => (placement.part === part ? [i] : []));
      if (own.length <= count) return;
      kept.splice(own[below(own.length)], 1);
    }
  });
  return kept;
}

function missing(kept: readonly Placement[], counts: readonly number[]): number[] {
  return counts.flatMap((count, part) => Array.from({ length: Math.max(0, count - kept.filter((placement) => placement.part === part).length) }, () => part));
}
