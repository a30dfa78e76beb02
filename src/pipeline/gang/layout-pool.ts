import type { Placement } from '../../layout/problem.ts';
import type { Master } from './master.ts';

/** A layout of several designs that keeps every rule. */
export interface MixedLayout {
  /** Ups by design. */
  readonly counts: readonly number[];
  readonly placements: readonly Placement[];
  /** Which search found it. */
  readonly source: string;
}

/** Layouts known to be possible, each a column of the master program under the same number. */
export interface LayoutPool {
  readonly layouts: readonly MixedLayout[];
  /** Takes a layout in unless one known holds as many of every design. True when it is new. */
  add(placements: readonly Placement[], source: string): boolean;
  /** A known layout that holds these counts. */
  holding(counts: readonly number[]): number | undefined;
}

export function createPool(designs: number, master: Master): LayoutPool {
  const layouts: MixedLayout[] = [];
  const holding = (counts: readonly number[]) => {
    const found = layouts.findIndex((layout) => layout.counts.every((count, d) => count >= counts[d]!));
    return found < 0 ? undefined : found;
  };
  return {
    layouts,
    holding,
    add(placements, source) {
      const counts = Array.from({ length: designs }, (_, d) => placements.filter(({ part }) => part === d).length);
      if (counts.every((count) => count === 0) || holding(counts) !== undefined) return false;
      layouts.push({ counts, placements, source });
      master.add(counts);
      return true;
    },
  };
}
