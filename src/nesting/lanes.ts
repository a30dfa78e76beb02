import { createRandom } from '../base/random.ts';
import type { Candidate, Cell, Placement, Problem } from '../layout/problem.ts';
import { separate } from './finish/separate.ts';
import { prepareLinearPrograms } from './linear-program.ts';
import type { Prepared } from './prepare.ts';
import { guidedSearch, type FailedLayout } from './searches/guided.ts';
import type { Tables } from './tables.ts';

/**
 * A lane's round of free search: a pure function of what stands here, so that it does not matter which thread runs it or
 * how many lanes run at once. Plain data.
 */
export interface LaneTask {
  readonly kind: 'lane';
  readonly problem: Problem;
  readonly seed: number;
  /** Look-ups after which the round ends. */
  readonly work: number;
  /** The most blanks worth looking for. */
  readonly limit: number;
  /** Best layouts known, best first. */
  readonly bases: readonly (readonly Placement[])[];
  readonly cells: readonly Cell[];
  /** What this lane handed back the round before. */
  readonly failed: FailedLayout | undefined;
}

export interface LaneResult {
  readonly kind: 'lane';
  readonly work: number;
  readonly found: readonly Candidate[];
  readonly failed: FailedLayout | undefined;
}

/** Look-ups between two questions whether to stop. */
const WORK_PER_PAUSE = 200_000;

/** `pause` tells whether to stop at once; what was found until then counts. */
export async function runLane(task: LaneTask, { prepared, tables }: { prepared: Prepared; tables: Tables }, pause: () => Promise<boolean>): Promise<LaneResult> {
  const { problem } = prepared;
  const found: Candidate[] = [];
  let failed = task.failed;
  let work = 0;
  let pauseAt = WORK_PER_PAUSE;
  await prepareLinearPrograms();
  const finish = (placements: readonly Placement[]) => separate(problem, placements);
  const search = guidedSearch({ ...task, prepared, tables, random: createRandom(task.seed), finish });
  for (const step of search) {
    work += step.work;
    if ('failed' in step) failed = step.failed;
    if (step.found) {
      found.push({ placements: step.found, source: step.source ?? 'free search' });
      if (step.found.length >= task.limit) break;
    }
    if (work >= task.work) break;
    if (work < pauseAt) continue;
    pauseAt = work + WORK_PER_PAUSE;
    if (await pause()) break;
  }
  return { kind: 'lane', work, found, failed };
}
