import { createRandom } from '../../src/base/random.ts';
import type { Candidate, Cell, Problem } from '../../src/layout/problem.ts';
import type { Search } from '../../src/nesting/search.ts';

/** Everything the searches bring, one after another to their ends, each knowing the cells of those before it. */
export function runSearches(searches: readonly Search[], problem: Problem, seed = 1): { candidates: Candidate[]; cells: Cell[]; work: number } {
  const candidates: Candidate[] = [];
  const cells: Cell[] = [];
  let work = 0;
  for (const search of searches) {
    const known = { best: undefined, cells: cells.toSorted((a, b) => b.density - a.density) };
    const steps = search.run({ problem, random: createRandom(seed), limit: Infinity, known });
    for (let step = steps.next(); !step.done; step = steps.next()) {
      work += step.value.work;
      if (step.value.candidate) candidates.push(step.value.candidate);
      if (step.value.cell) cells.push(step.value.cell);
    }
  }
  return { candidates, cells, work };
}

/** The candidate with most blanks, undefined when there is none. */
export function mostOf(candidates: readonly Candidate[]): Candidate | undefined {
  return candidates.reduce<Candidate | undefined>((best, candidate) => (best && best.placements.length >= candidate.placements.length ? best : candidate), undefined);
}
