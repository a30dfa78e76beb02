import type { Random } from '../../base/random.ts';
import type { ProgramResult } from '../linear-program.ts';
import { createLinearProgram } from '../linear-program.ts';
import type { CellGrid } from './cell-grid.ts';
import { stepOf } from './cell-grid.ts';
import type { Orbits } from './cell-orbits.ts';
import { heavyCliques } from './clique-separation.ts';
import type { ConflictGraph } from './conflict-graph.ts';
import { commonConflicts, growClique } from './conflict-graph.ts';

/** Cliques of cells with weights: a cover when the weights of every cell sum to its worth or more. */
export interface CliqueCover {
  readonly cliques: readonly Int32Array[];
  readonly weights: Float64Array;
  /** What a blank counts, by design; 1 where there is one design. */
  readonly worths: readonly number[];
  /** What every cell is covered with at least, as a share of its worth and at most 1. */
  readonly least: number;
  /** Sum of the weights over `least`: the blanks of no layout are worth more together. Of a mixture: the limit of t. */
  readonly value: number;
}

/** Several designs on one sheet, wanted in a proportion. */
export interface Mixture {
  /** By index of turn: the design. */
  readonly designOf: readonly number[];
  /** Parts of one whole, by design; each above zero. */
  readonly shares: readonly number[];
  /** Most blanks of each design on a sheet, proved elsewhere; may be Infinity. */
  readonly most: readonly number[];
}

/** Cliques to start with are at most so many; a sixth of the cells otherwise. */
const MOST_START = 500;
const NEW_CLIQUES = 150;
const SEEDS = 150;
/** A round is content with so many new cliques. */
const ENOUGH = 75;
/** Above so many rows those are dropped that are slack by more than `SLACK` and carry no weight. */
const MOST_ROWS = 6000;
const SLACK = 0.15;
/** Simplex iterations a round; one that is cut short still gives a cover, as its prices stay feasible. */
const ITERATIONS = 30_000;

/** Microseconds measured on one slow core: what work is counted in. */
const WORK_PER_CELL_PAIR = 0.02;
const WORK_PER_SEED = 250;
const WORK_PER_CLIQUE = 80;
const WORK_PER_ITERATION = 50;
const WORK_PER_ITERATION_AND_LINE = 0.12;

/**
 * Upper limits by covering the cells with cliques.
 *
 * Theorem. Let S1 … Sm be sets of placements, any two different ones of a set in conflict, with weights that give every placement of the sheet a sum
 * of at least 1. Then no layout has more blanks than the sum of all weights: it has at most one in each set, and each is counted at least once.
 *
 * The least sum is the dual of the linear program: most Σ x over cells with Σ x ≤ 1 over every clique. It is solved by cutting planes: solve over the
 * cliques in hand, look for cliques that its solution breaks, add them, solve on from the last basis. Any subset of cliques gives a true limit.
 *
 * Of several designs the program seeks the largest number t for which a layout, cells in fractions, has share × t blanks of each design and none
 * more often than it fits by itself. With prices p of the demands, Σ share × p = 1, and r of the limits, t ≤ Σ weights + Σ r × most wherever the weights
 * at every placement sum to p − r at least. That is what a blank is worth to the cover: no layout holds blanks worth more than the sum of all weights.
 * `reach`: how far from a seed cell cliques are drawn to, half micrometres.
 * Cutting at points between the solution and an average of earlier ones keeps the program from jumping between its many optima
 * (Ben-Ameur and Neto, Acceleration of cutting-plane and column generation algorithms, Networks 49, 2007).
 */
export class CliqueProgram {
  readonly grid: CellGrid;
  readonly orbits: Orbits;
  /** Work done so far, about a microsecond each. */
  work: number;
  cover: CliqueCover;
  private readonly graph: ConflictGraph;
  private readonly random: Random;
  private readonly reach: number;
  private readonly mixture: Mixture;
  private readonly program = createLinearProgram('maximise');
  /** By orbit. */
  private readonly designOf: Uint8Array;
  /** Rows before those of cliques: the demands of several designs, and the most of each. */
  private readonly demands: number;
  private cliques: Int32Array[] = [];
  private readonly known = new Set<string>();
  private x: Float64Array;
  private average: Float64Array | undefined;

  constructor(grid: CellGrid, graph: ConflictGraph, orbits: Orbits, random: Random, reach: number, start: readonly ArrayLike<number>[] = [], mixture?: Mixture) {
    this.grid = grid;
    this.graph = graph;
    this.orbits = orbits;
    this.random = random;
    this.reach = reach;
    this.work = WORK_PER_CELL_PAIR * grid.count * grid.count;
    this.x = new Float64Array(orbits.count);
    this.mixture = mixture ?? { designOf: grid.turns.map(() => 0), shares: [1], most: [Infinity] };
    this.designOf = new Uint8Array(orbits.count);
    orbits.orbitOf.forEach((orbit, cell) => (this.designOf[orbit] = this.mixture.designOf[grid.turnOf[cell]!]!));
    for (const size of orbits.sizes) this.program.addColumn(mixture ? 0 : size, 0, Infinity);
    this.demands = mixture ? this.addDemands(mixture) : 0;
    this.cover = { cliques: [], weights: new Float64Array(0), worths: this.mixture.shares.map(() => 1), least: 1, value: grid.count === 0 ? 0 : Infinity };
    if (grid.count === 0) return;
    this.addCliques([...start.map((clique) => this.extend(clique)), ...this.startCliques(start)]);
    this.solve();
  }

  /** One round: new cliques, a new solution. False when no clique was found that the solution breaks. */
  round(): boolean {
    if (this.grid.count === 0) return false;
    const found = this.separate();
    if (found.length === 0) return false;
    this.addCliques(found);
    this.dropIdle();
    this.solve();
    return true;
  }

  get usedCliques(): number[][] {
    const { cliques, weights } = this.cover;
    return cliques.filter((_, k) => weights[k]! > 0).map((clique) => [...clique]);
  }

  dispose(): void {
    this.program.dispose();
  }

  /** A column for t; two rows for each design: its cells hold share × t blanks, and not above its most. */
  private addDemands({ shares, most }: Mixture): number {
    const whole = this.program.addColumn(1, 0, Infinity);
    const own = shares.map((_, design) => {
      const columns = [...this.designOf.keys()].filter((orbit) => this.designOf[orbit] === design);
      return { columns, values: columns.map((orbit) => this.orbits.sizes[orbit]!) };
    });
    this.program.addRows(own.map(({ columns, values }, design) => ({ lower: 0, upper: Infinity, columns: [...columns, whole], values: [...values, -shares[design]!] })));
    this.program.addRows(own.map((row, design) => ({ lower: -Infinity, upper: most[design]!, ...row })));
    return 2 * shares.length;
  }

  private startCliques(start: readonly ArrayLike<number>[]): Int32Array[] {
    const count = this.grid.count;
    const most = Math.min(MOST_START, Math.ceil(count / 6));
    const covered = new Uint8Array(this.orbits.count);
    for (const clique of start) for (let k = 0; k < clique.length; k++) covered[this.orbits.orbitOf[clique[k]!]!] = 1;
    const cliques: Int32Array[] = [];
    const grow = (cell: number) => {
      const clique = this.extend([cell]);
      for (const member of clique) covered[this.orbits.orbitOf[member]!] = 1;
      cliques.push(clique);
    };
    const order = shuffled(count, this.random);
    for (const cell of order) if (covered[this.orbits.orbitOf[cell]!] === 0) grow(cell);
    if (start.length === 0) for (const cell of order) if (cliques.length < most) grow(cell);
    return cliques;
  }

  /** The clique made as large as it goes: first by cells of value, then by those nearest to its middle. */
  private extend(clique: ArrayLike<number>): Int32Array {
    this.work += WORK_PER_CLIQUE;
    const { mask, list } = commonConflicts(this.graph, clique);
    const { columnOf, rowOf, x, y } = this.grid;
    const stretch = 0.67 + 0.83 * this.random.unit();
    let middleX = 0;
    let middleY = 0;
    for (let k = 0; k < clique.length; k++) {
      middleX += columnOf[clique[k]!]! / clique.length;
      middleY += rowOf[clique[k]!]! / clique.length;
    }
    const stepX = stepOf(x) * stretch;
    const stepY = stepOf(y);
    const keys = new Float64Array(this.grid.count);
    for (const cell of list) {
      const value = this.x[this.orbits.orbitOf[cell]!]!;
      const dx = (columnOf[cell]! - middleX) * stepX;
      const dy = (rowOf[cell]! - middleY) * stepY;
      keys[cell] = value > 0 ? -value : dx * dx + dy * dy;
    }
    return growClique(this.graph, clique, mask, list.sort((a, b) => keys[a]! - keys[b]! || a - b));
  }

  private separate(): Int32Array[] {
    const { x } = this;
    const mean = x.reduce((sum, value) => sum + value, 0) / x.length;
    const average = (this.average ??= new Float64Array(x.length).fill(mean / 2));
    let found: Int32Array[] = [];
    for (const share of [0.3, 0.6, 1]) {
      found = this.newCliques(x.map((value, orbit) => share * value + (1 - share) * average[orbit]!), SEEDS, 1.002);
      if (found.length >= ENOUGH) break;
    }
    if (found.length === 0) found = this.newCliques(x, 5 * SEEDS, 1.0001);
    for (let orbit = 0; orbit < x.length; orbit++) average[orbit] = 0.7 * average[orbit]! + 0.3 * x[orbit]!;
    return found;
  }

  private newCliques(byOrbit: Float64Array, seeds: number, threshold: number): Int32Array[] {
    const values = Float64Array.from(this.orbits.orbitOf, (orbit) => byOrbit[orbit]!);
    const heavy = heavyCliques(this.graph, this.grid, values, this.random, { seeds, threshold, most: NEW_CLIQUES, reach: this.reach });
    this.work += WORK_PER_SEED * seeds;
    return heavy.map(({ cells }) => this.extend(cells));
  }

  private addCliques(cliques: readonly Int32Array[]): void {
    const fresh = cliques.filter((clique) => {
      const key = clique.join();
      if (this.known.has(key)) return false;
      this.known.add(key);
      return true;
    });
    this.program.addRows(fresh.map((clique) => ({ lower: -Infinity, upper: 1, ...this.rowOf(clique) })));
    this.cliques.push(...fresh);
  }

  private rowOf(clique: Int32Array): { columns: Int32Array; values: Float64Array } {
    const counts = new Map<number, number>();
    for (const cell of clique) {
      const orbit = this.orbits.orbitOf[cell]!;
      counts.set(orbit, (counts.get(orbit) ?? 0) + 1);
    }
    return { columns: Int32Array.from(counts.keys()), values: Float64Array.from(counts.values()) };
  }

  private dropIdle(): void {
    if (this.cliques.length <= MOST_ROWS) return;
    const { weights } = this.cover;
    const idle = new Set<number>();
    weights.forEach((weight, row) => {
      if (weight === 0 && this.sumOver(this.cliques[row]!) < 1 - SLACK) idle.add(row);
    });
    this.program.deleteRows([...idle].map((row) => this.demands + row));
    for (const row of idle) this.known.delete(this.cliques[row]!.join());
    this.cliques = this.cliques.filter((_, row) => !idle.has(row));
  }

  private sumOver(clique: Int32Array): number {
    return clique.reduce((sum, cell) => sum + this.x[this.orbits.orbitOf[cell]!]!, 0);
  }

  private solve(): void {
    const result = this.program.solve(ITERATIONS);
    this.work += result.iterations * (WORK_PER_ITERATION + WORK_PER_ITERATION_AND_LINE * (this.cliques.length + this.orbits.count));
    if (result.status === 'optimal') this.x = result.values.subarray(0, this.orbits.count).map((value) => Math.max(0, value));
    const cover = this.coverOf(result);
    if (cover.value < this.cover.value || this.cover.cliques.length === 0) this.cover = cover;
  }

  private coverOf({ rowDuals }: ProgramResult): CliqueCover {
    const weights = rowDuals.subarray(this.demands).map((price) => Math.max(0, price));
    const { worths, capped } = this.worthsOf(rowDuals);
    const sums = new Float64Array(this.orbits.count);
    let total = 0;
    weights.forEach((weight, row) => {
      if (weight === 0) return;
      total += weight;
      for (const cell of this.cliques[row]!) sums[this.orbits.orbitOf[cell]!]! += weight;
    });
    const least = sums.reduce((low, sum, orbit) => {
      const wanted = this.orbits.sizes[orbit]! * worths[this.designOf[orbit]!]!;
      return wanted > 0 ? Math.min(low, sum / wanted) : low;
    }, 1);
    return { cliques: [...this.cliques], weights, worths, least, value: total / least + capped };
  }

  /** What a blank of each design counts in the cover, and how much the limits by themselves take of t. Infinity when there are no prices. */
  private worthsOf(rowDuals: Float64Array): { worths: number[]; capped: number } {
    const { shares, most } = this.mixture;
    if (this.demands === 0) return { worths: [1], capped: 0 };
    const prices = shares.map((_, design) => Math.max(0, -rowDuals[design]!));
    const whole = prices.reduce((all, price, design) => all + price * shares[design]!, 0);
    if (whole === 0) return { worths: prices, capped: Infinity };
    const limits = most.map((ups, design) => (ups < Infinity ? Math.min(prices[design]!, Math.max(0, rowDuals[shares.length + design]!)) : 0));
    return {
      worths: prices.map((price, design) => (price - limits[design]!) / whole),
      capped: limits.reduce((sum, limit, design) => sum + (limit > 0 ? (limit / whole) * most[design]! : 0), 0),
    };
  }
}

function shuffled(count: number, random: Random): Int32Array {
  const order = Int32Array.from({ length: count }, (_, k) => k);
  for (let k = count - 1; k > 0; k--) {
    const other = random.below(k + 1);
    const kept = order[k]!;
    order[k] = order[other]!;
    order[other] = kept;
  }
  return order;
}
