import type { Search } from '../search.ts';
import { blocksSearch } from './blocks.ts';
import { latticeSearch } from './lattice.ts';
import { rectanglesSearch } from './rectangles.ts';
import { rowsSearch } from './rows.ts';

/** The searches that lay out regular patterns, in the order in which they are tried: first a good answer at once. */
export const patternSearches: readonly Search[] = [rowsSearch, rectanglesSearch, blocksSearch, latticeSearch];
