import type { Candidate, Cell, Problem } from '../layout/problem.ts';
import type { Random } from '../base/random.ts';

/**
 * One way of finding layouts. A search is an iterator: each step does a slice of counted work and may bring a candidate
 * or a repeating cell. The driver owns budget, seeds, order, clock and incumbents; a search never looks at a clock.
 */
export interface Search {
  /** For `--history` and the table of searches in `bench/`. */
  readonly name: string;
  run(context: SearchContext): Iterator<SearchStep, void, void>;
}

export interface SearchContext {
  readonly problem: Problem;
  readonly random: Random;
  /** The most layouts worth finding: once this many ups are met, more cannot be had. */
  readonly limit: number;
  /** Best layouts and densest cells known so far, best first; grows while searches run. */
  readonly known: Known;
}

export interface Known {
  readonly best: Candidate | undefined;
  readonly cells: readonly Cell[];
}

export interface SearchStep {
  /** Counted work of this step; the unit is one exact pair test or one table look-up, whichever the search does. */
  readonly work: number;
  readonly candidate?: Candidate;
  readonly cell?: Cell;
}
