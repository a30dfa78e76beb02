import { oneFormBound, type FormRoom } from '../../estimate/gang/form-bound.ts';
import type { Wanted } from '../../estimate/gang/form-runs.ts';
import type { Placement, Problem } from '../../layout/problem.ts';
import { bandsFor } from '../../nesting/mixed/bands.ts';
import { blockMixture } from '../../nesting/mixed/block-mixture.ts';
import { worthMostByStraightCuts } from '../../nesting/mixed/straight-layout.ts';
import { mixedFields, type MixedField } from '../../nesting/mixed/mixed-kinds.ts';
import { layoutIsValid } from '../../nesting/valid.ts';
import type { LayoutPool } from './layout-pool.ts';
import type { Master } from './master.ts';

/** Rounds of prices; the program is near its least after a few designs' worth of them. */
const ROUNDS_PER_DESIGN = 6;
/** Rounds in which what comes short is made dearer: for all designs together, and for some of them. */
const BALANCING_ROUNDS = 16;
const BALANCING_A_GROUP = 5;
/** Groups of neighbours by quantity, the smallest first. */
const MOST_GROUPS = 24;
/** What a design that comes short gains in worth, and one that does not loses. */
const DEARER = 1.25;
const DEEP = 3;
const SHALLOW = 2;

/** Makes layouts of a problem's parts by blocks and bands. */
export interface LayoutMaker {
  /** The blocks worth most. */
  readonly byWorth: (worths: readonly number[], depth: number) => boolean;
  /** These counts as bands, if they go. */
  readonly byBands: (counts: readonly number[]) => boolean;
}

/** Blocks and bands for a die; `straight` says whether a layout may be offered, where straight cuts must take it apart. */
export function createMaker(problem: Problem, pool: LayoutPool, straight?: (placements: readonly Placement[]) => boolean): LayoutMaker {
  const sets: MixedField[][] = mixedFields(problem);
  // Kinds of blocks nest rows of one part; where two blocks meet only the gap between their boxes counts. Checked all the same.
  const offer = (placements: readonly Placement[] | undefined, source: string) => placements !== undefined && layoutIsValid(problem, placements) && (straight?.(placements) ?? true) && pool.add(placements, source);
  return {
    byWorth: (worths, depth) => {
      const cut = straight && worthMostByStraightCuts(problem, worths);
      return cut ? offer(cut.placements, 'straight cuts') : offer(blockMixture(problem, sets, worths, depth), 'blocks of rows');
    },
    byBands: (counts) => offer(bandsFor(problem, sets, counts), 'bands of rows'),
  };
}

/**
 * Fills the pool: layouts at the prices of the master program until they repeat themselves (column generation, the
 * pricing step being the blocks worth most); then layouts of neighbours in the list by quantity, each design with its
 * share.
 */
export function seekLayouts(maker: LayoutMaker, pool: LayoutPool, master: Master, room: FormRoom, wanted: Wanted, stop: () => boolean): void {
  const quantities = wanted.least;
  for (let round = 0; round < ROUNDS_PER_DESIGN * quantities.length && !stop(); round++) {
    const { prices } = master.solve();
    if (!maker.byWorth(prices, SHALLOW) && !maker.byWorth(prices, DEEP)) break;
  }
  for (const group of neighboursByQuantity(quantities)) {
    if (stop()) return;
    const own = quantities.map((quantity, d) => (group.includes(d) ? quantity : 0));
    balance(maker, pool, room, own, group.length === quantities.length ? BALANCING_ROUNDS : BALANCING_A_GROUP);
    singleForm(maker, room, own);
  }
}

/** All designs; then, while they are not too many, every run of two or more of them in order of quantity. */
function neighboursByQuantity(quantities: readonly number[]): number[][] {
  const order = quantities.map((_, d) => d).sort((a, b) => quantities[b]! - quantities[a]!);
  const groups: number[][] = [order];
  for (let length = 2; length < order.length; length++) for (let from = 0; from + length <= order.length; from++) groups.push(order.slice(from, from + length));
  return groups.slice(0, MOST_GROUPS);
}

/** Blocks with every design's share evened out, round by round; designs of quantity 0 are left out. */
function balance(maker: LayoutMaker, pool: LayoutPool, room: FormRoom, quantities: readonly number[], rounds: number): void {
  let worths = room.shares.map((share, d) => (quantities[d]! > 0 ? share : 0));
  for (let round = 0; round < rounds; round++) {
    if (!maker.byWorth(worths, SHALLOW)) return;
    const { counts } = pool.layouts.at(-1)!;
    const runs = quantities.map((quantity, d) => quantity / Math.max(counts[d]!, 0.5));
    const asked = runs.filter((run) => run > 0);
    const middle = Math.sqrt(Math.max(...asked) * Math.min(...asked));
    worths = worths.map((worth, d) => (runs[d]! > middle ? worth * DEARER : worth / DEARER));
  }
}

/** Bands for ever more pressings of one form, from the fewest at which the counts may fit, until they do. */
function singleForm(maker: LayoutMaker, room: FormRoom, quantities: readonly number[]): void {
  let tried = '';
  for (let run = oneFormBound(room, quantities); run <= Math.max(...quantities); run = Math.max(run + 1, Math.ceil(run * 1.01))) {
    const counts = quantities.map((quantity) => Math.ceil(quantity / run));
    if (counts.join() === tried) continue;
    tried = counts.join();
    if (maker.byBands(counts)) return;
  }
}
