import { createRandom } from '../base/random.ts';
import type { Placement, Problem } from '../layout/problem.ts';
import { compact } from './finish/compact.ts';
import { separate } from './finish/separate.ts';
import { prepareLinearPrograms } from './linear-program.ts';
import type { Prepared } from './prepare.ts';
import { lengthOf, stripSearch, type StripState } from './searches/strip.ts';
import { drawSteps } from './slices.ts';
import type { Tables } from './tables.ts';

/** A lane's round of the search for the shortest strip: a pure function of what stands here. Plain data. */
export interface StripTask {
  readonly kind: 'strip';
  readonly problem: Problem;
  readonly seed: number;
  /** Look-ups after which the round ends. */
  readonly work: number;
  /** Part of every blank wanted. */
  readonly parts: readonly number[];
  /** No layout is shorter, µm. */
  readonly bound: number;
  /** Shortest layout known, its blanks in the order of `parts`. */
  readonly best: readonly Placement[] | undefined;
  /** What this lane handed back the round before. */
  readonly state: StripState | undefined;
}

export interface StripResult {
  readonly kind: 'strip';
  readonly work: number;
  /** Shortest layout of the round, if it is shorter than the one given. */
  readonly found: { readonly placements: readonly Placement[]; readonly source: string } | undefined;
  readonly state: StripState | undefined;
}

/** A separation and the linear programs that push together take about as long as so many look-ups. */
const finishWork = (blanks: number): number => 20_000 * blanks;

export async function runStripLane(task: StripTask, { prepared, tables }: { prepared: Prepared; tables: Tables }, pause: () => Promise<boolean>): Promise<StripResult> {
  await prepareLinearPrograms();
  const { problem } = prepared;
  let found: StripResult['found'];
  let { state } = task;
  const apply = (placements: readonly Placement[]) => {
    const separated = separate(problem, placements);
    return separated && compact(problem, separated, 'lay');
  };
  const finish = { apply, work: finishWork };
  const search = stripSearch({ ...task, prepared, tables, random: createRandom(task.seed), finish });
  const work = await drawSteps(search, task.work, pause, (step) => {
    if (!step.state) return 'within';
    state = step.state;
    if (step.found) found = { placements: step.found, source: step.source ?? 'free search' };
    return step.found && lengthOf(prepared, step.found) <= task.bound ? 'done' : 'between';
  });
  return { kind: 'strip', work, found, state };
}
