import { createRandom, type Random } from '../base/random.ts';
import type { Candidate, Cell, Placement, Problem } from '../layout/problem.ts';
import { compact } from './finish/compact.ts';
import { separate } from './finish/separate.ts';
import { prepareLinearPrograms } from './linear-program.ts';
import type { Prepared } from './prepare.ts';
import { guidedSearch } from './searches/guided.ts';
import type { FailedLayout } from './searches/guided-settle.ts';
import { drawSteps } from './slices.ts';
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
  /** Whether to begin with one of the layouts pushed together, which may open room for one more. */
  readonly push: boolean;
}

export interface LaneResult {
  readonly kind: 'lane';
  readonly work: number;
  readonly found: readonly Candidate[];
  readonly failed: FailedLayout | undefined;
}

/** A separation takes about as long as so many look-ups. */
export const separationWork = (blanks: number): number => 1000 * blanks + 10 * blanks ** 2;

/** Pushing a layout together, likewise: some thirty linear programs. */
export const pushWork = (blanks: number): number => 200 * blanks ** 2;

/** `pause` tells whether to stop at once; what was found until then counts. */
export async function runLane(task: LaneTask, { prepared, tables }: { prepared: Prepared; tables: Tables }, pause: () => Promise<boolean>): Promise<LaneResult> {
  await prepareLinearPrograms();
  const found: Candidate[] = [];
  let failed = task.failed;
  const finish = { apply: (placements: readonly Placement[]) => separate(prepared.problem, placements), work: separationWork };
  const random = createRandom(task.seed);
  const pushing = workOfPush(task);
  const bases = pushing > 0 ? [pushed(prepared.problem, task.bases, random), ...task.bases] : task.bases;
  const search = guidedSearch({ ...task, bases, prepared, tables, random, finish });
  const work = await drawSteps(search, task.work - pushing, pause, (step) => {
    if (!('failed' in step)) return 'within';
    failed = step.failed;
    if (step.found) found.push({ placements: step.found, source: step.source ?? 'free search' });
    return step.found && step.found.length >= task.limit ? 'done' : 'between';
  });
  return { kind: 'lane', work: work + pushing, found, failed };
}

/** 0 where no push is wanted, or where it would take most of the round. */
function workOfPush({ push, bases, work }: LaneTask): number {
  const pushing = push && bases.length > 0 ? pushWork(bases[0].length) : 0;
  return pushing <= work / 2 ? pushing : 0;
}

function pushed(problem: Problem, bases: LaneTask['bases'], random: Random): readonly Placement[] {
  return compact(problem, bases[random.below(bases.length)], random.below(2) === 0 ? 'gripper' : 'lay');
}
