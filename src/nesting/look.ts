import type { Candidate, Limit } from '../layout/problem.ts';
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
  const methods = beginningFrom(start, { ...standardMethods, patterns: [] });
  return { ...methods, budgetOf: (effort) => ({ ...standardMethods.budgetOf(effort), patterns: 1 }) };
}

/** The same methods, with a layout that is known before they begin. */
export function beginningFrom(start: Candidate, methods: Methods): Methods {
  const known: Search = {
    name: 'known layout',
    *run() {
      yield { work: 0, candidate: start };
    },
  };
  return { ...methods, patterns: [known, ...methods.patterns] };
}

/** Of the free search's budget, what one of several sheets in a row gets. */
const SHARE_OF_FREE = 1 / 12;

/** Whether so many blanks go onto the sheet: over as soon as they lie, or what is tried, rows alone or everything, finds no more. */
export function lookForSoMany(wanted: number, tried: 'rows' | 'everything'): Methods {
  const enough: Limit = { ups: wanted, value: wanted, by: 'area' };
  return {
    ...standardMethods,
    patterns: tried === 'rows' ? [gridSearch, rowsSearch] : patternSearches,
    // No limit of the sheet, but no more are asked for.
    closedFormLimits: (problem) => [enough, ...standardMethods.closedFormLimits(problem)],
    budgetOf: (effort) => {
      const { limit: _, ...budget } = standardMethods.budgetOf(effort);
      return { ...budget, patterns: Math.min(budget.patterns, MOST_WORK), free: tried === 'rows' ? 0 : budget.free * SHARE_OF_FREE, pushes: false };
    },
  };
}
