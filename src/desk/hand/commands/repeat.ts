import type { Axis } from '../../../geometry/no-fit-slices.ts';
import { leastRepeat } from '../../../geometry/no-fit-slices.ts';
import type { Placement, Problem } from '../../../layout/problem.ts';
import { groupShifts } from '../../../nesting/group-shifts.ts';

/** The least whole step, µm, at which an endless row of the group along the axis keeps the required gap. Keep-outs do not count. */
export function leastGroupStep(problem: Problem, group: readonly Placement[], axis: Axis): number {
  return leastRepeat(groupShifts(withoutKeepOuts(problem), group, group, axis, 0));
}

/** The group repeated: copies moved by 0, 1, … times the step. */
export function repeated<Item extends Placement>(group: readonly Item[], axis: Axis, step: number, count: number): Item[] {
  return Array.from({ length: count }, (_, i) => group.map((item) => ({ ...item, [axis]: item[axis] + i * step }))).flat();
}

const bare = new WeakMap<Problem, Problem>();

/** One and the same object each time, so that its no-fit polygons are made once. */
function withoutKeepOuts(problem: Problem): Problem {
  if (problem.keepOuts.length === 0) return problem;
  let without = bare.get(problem);
  if (!without) bare.set(problem, (without = { ...problem, keepOuts: [] }));
  return without;
}
