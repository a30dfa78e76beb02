import type { Search } from '../search.ts';
import { blocksSearch } from './blocks.ts';
import { commonKnifeSearch } from './common-knife.ts';
import { gridSearch } from './grid.ts';
import { latticeSearch } from './lattice.ts';
import { rectanglesSearch } from './rectangles.ts';
import { rowsSearch } from './rows.ts';

/**
 * The searches that lay out regular patterns, in the order in which they are tried: first a good answer at once. Common
 * knives, where they are allowed, come before it, since a run ends as soon as its limit is met.
 */
export const patternSearches: readonly Search[] = [commonKnifeSearch, gridSearch, rowsSearch, latticeSearch, blocksSearch, rectanglesSearch].map(asAsked);

/** Patterns hold as many blanks as they can, so they are no answer to given counts; given rows and columns are a grid. */
function asAsked(search: Search): Search {
  return {
    name: search.name,
    *run(context) {
      const { demand, grid } = context.problem;
      if (demand.kind === 'most' && (!grid || search === gridSearch || search === commonKnifeSearch)) yield* { [Symbol.iterator]: () => search.run(context) };
    },
  };
}
