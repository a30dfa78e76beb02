import type { Placement, Problem } from '../../layout/problem.ts';
import { noFitTable } from '../no-fit-table.ts';
import { placementIsValid } from '../valid.ts';

/** The blanks of a pattern that keep their distance from keep-outs and locked blanks. Exact. */
export function clearOnes(problem: Problem, placements: readonly Placement[]): Placement[] {
  const table = noFitTable(problem);
  return placements.filter((placement) => placementIsValid(problem, placement) && !problem.locked.some((locked) => table.forbidsPair(locked, placement)));
}
