import type { Candidate } from '../layout/problem.ts';
import type { Methods } from './driver.ts';
import { standardMethods } from './methods.ts';
import type { Search } from './search.ts';
import { gridSearch } from './searches/grid.ts';
import { patternSearches } from './searches/patterns.ts';
import { rowsSearch, rowsSearchOf } from './searches/rows.ts';

/** How much a look at one of many sheets takes in: the plainest rows, all rows, or every pattern. */
export type LookDepth = 'few-rows' | 'rows' | 'patterns';

/** Enough for all but one blank in a hundred, in a quarter of the time that all rows take. */
const FEW_ROWS = 40;
/** Counted work that a look may cost; all but the largest have ended long before. */
const MOST_WORK = 8e6;

/** Regular patterns and limits of closed form alone: what a person sees at a glance, for looking at many sheets. */
export function lookMethods(depth: LookDepth): Methods {
  const patterns = { 'few-rows': [gridSearch, rowsSearchOf(FEW_ROWS)], rows: [gridSearch, rowsSearch], patterns: patternSearches }[depth];
  return { ...standardMethods, patterns, budgetOf: () => ({ patterns: MOST_WORK, free: 0, laneWork: 0, pushes: false }) };
}

/** A little free search from a layout that is known: whether one more blank goes in beside those that lie already. */
export function lookFrom(start: Candidate): Methods {
  const known: Search = {
    name: 'known layout',
    *run() {
      yield { work: 0, candidate: start };
    },
  };
  return { ...standardMethods, patterns: [known], budgetOf: (effort) => ({ ...standardMethods.budgetOf(effort), patterns: 1 }) };
}
