import type { Random } from '../../base/random.ts';
import type { CellGrid } from './cell-grid.ts';
import type { ConflictGraph } from './conflict-graph.ts';
import { commonConflicts, conflict } from './conflict-graph.ts';

/** A clique whose cells' values sum to more than 1, and the sum. */
export interface HeavyClique {
  readonly cells: Int32Array;
  readonly weight: number;
}

export interface SeparationSettings {
  readonly seeds: number;
  /** A clique counts from this sum of values on. */
  readonly threshold: number;
  readonly most: number;
  /** How far from its seed a clique is drawn to, half micrometres: about half a blank. */
  readonly reach: number;
}

/** Most cells of the neighbourhood in which a clique is sought. */
const NEIGHBOURS = 256;
const STARTS = 6;
const SWAPS = 24;
/** Cells already in so many new cliques are no seeds. */
const OFTEN = 2;

/**
 * Cliques heavier than the threshold under the given cell values, found by greedy starts about random foci and swaps, in the neighbourhoods of seed cells
 * drawn in proportion to their values. A heuristic: nothing found proves nothing.
 */
export function heavyCliques(graph: ConflictGraph, grid: CellGrid, values: Float64Array, random: Random, settings: SeparationSettings): HeavyClique[] {
  const found: HeavyClique[] = [];
  const uses = new Uint8Array(graph.count);
  const drawSeed = seedDrawer(values, random);
  for (let k = 0; k < settings.seeds && found.length < settings.most; k++) {
    const seed = drawSeed();
    if (seed < 0) break;
    if (uses[seed]! >= OFTEN) continue;
    const heavy = heaviestAround(neighbourhood(graph, grid, values, seed), random, settings.reach);
    if (heavy.weight <= settings.threshold) continue;
    for (const cell of heavy.cells) uses[cell] = Math.min(255, uses[cell]! + 1);
    found.push(heavy);
  }
  return found;
}

function seedDrawer(values: Float64Array, random: Random): () => number {
  const sums = new Float64Array(values.length);
  let sum = 0;
  values.forEach((value, cell) => (sums[cell] = sum += value));
  return () => {
    if (sum <= 0) return -1;
    const target = random.unit() * sum;
    let low = 0;
    let high = sums.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (sums[middle]! > target) high = middle;
      else low = middle + 1;
    }
    return low;
  };
}

/** The seed, at index 0, and the cells of positive value that conflict with it; heaviest ones if there are too many. */
interface Neighbourhood {
  readonly cells: Int32Array;
  readonly values: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** 1 where the two do not conflict; 0 for a cell with itself. Row by row. */
  readonly apart: Uint8Array;
}

function neighbourhood(graph: ConflictGraph, grid: CellGrid, values: Float64Array, seed: number): Neighbourhood {
  let near = commonConflicts(graph, [seed]).list.filter((cell) => values[cell]! > 0);
  if (near.length >= NEIGHBOURS) near = near.sort((a, b) => values[b]! - values[a]! || a - b).slice(0, NEIGHBOURS - 1);
  const cells = Int32Array.from([seed, ...near]);
  const count = cells.length;
  const apart = new Uint8Array(count * count);
  for (let a = 0; a < count; a++) {
    for (let b = 0; b < a; b++) if (!conflict(graph, cells[a]!, cells[b]!)) apart[a * count + b] = apart[b * count + a] = 1;
  }
  const stepX = (2 * grid.x.span) / grid.x.count;
  const stepY = (2 * grid.y.span) / grid.y.count;
  return {
    cells,
    values: Float64Array.from(cells, (cell) => values[cell]!),
    x: Float64Array.from(cells, (cell) => grid.columnOf[cell]! * stepX),
    y: Float64Array.from(cells, (cell) => grid.rowOf[cell]! * stepY),
    apart,
  };
}

function heaviestAround(near: Neighbourhood, random: Random, reach: number): HeavyClique {
  const count = near.cells.length;
  const keys = new Float64Array(count);
  const order = Int32Array.from(keys.keys());
  const search = new CliqueSearch(near);
  for (let start = 0; start < STARTS; start++) {
    const focusX = near.x[0]! + (2 * random.unit() - 1) * reach;
    const focusY = near.y[0]! + (2 * random.unit() - 1) * reach;
    const pull = (3 * random.unit()) / (reach * reach);
    for (let k = 0; k < count; k++) {
      const dx = near.x[k]! - focusX;
      const dy = near.y[k]! - focusY;
      const far = pull * (dx * dx + dy * dy);
      keys[k] = (near.values[k]! * (0.6 + 0.8 * random.unit())) / (1 + far + (far * far) / 2);
    }
    search.run(order.sort((a, b) => keys[b]! - keys[a]! || a - b));
  }
  return { cells: search.best.map((k) => near.cells[k]!), weight: search.most };
}

/**
 * Greedy cliques with swaps. `missing[k]` counts the members that k does not conflict with and `loss[k]` is the sum of their values: k may join
 * where it is 0, and taking k in at the cost of those members gains values[k] − loss[k].
 */
class CliqueSearch {
  best = new Int32Array(0);
  most = 0;
  private readonly near: Neighbourhood;
  private readonly missing: Int32Array;
  private readonly loss: Float64Array;
  private readonly isMember: Uint8Array;
  private weight = 0;

  constructor(near: Neighbourhood) {
    const count = near.cells.length;
    this.near = near;
    this.missing = new Int32Array(count);
    this.loss = new Float64Array(count);
    this.isMember = new Uint8Array(count);
  }

  run(order: Int32Array): void {
    this.missing.fill(0);
    this.loss.fill(0);
    this.isMember.fill(0);
    this.weight = 0;
    this.add(0);
    this.fill(order);
    for (let swap = 0; swap < SWAPS; swap++) {
      const gaining = this.bestSwap();
      if (gaining < 0) break;
      this.swapIn(gaining);
      this.fill(order);
    }
    if (this.weight > this.most) {
      this.most = this.weight;
      this.best = Int32Array.from(this.isMember.keys()).filter((k) => this.isMember[k] === 1);
    }
  }

  /** Takes in all that may join, in the given order. */
  private fill(order: Int32Array): void {
    const { missing, isMember } = this;
    for (const k of order) if (missing[k] === 0 && isMember[k] === 0) this.add(k);
  }

  private bestSwap(): number {
    const { near, loss, isMember } = this;
    let best = -1;
    let gain = LEAST_GAIN;
    for (let k = 0; k < isMember.length; k++) {
      const g = near.values[k]! - loss[k]!;
      if (g > gain && isMember[k] === 0) {
        gain = g;
        best = k;
      }
    }
    return best;
  }

  private swapIn(cell: number): void {
    const count = this.isMember.length;
    for (let k = 0; k < count; k++) if (this.isMember[k] === 1 && this.near.apart[cell * count + k] === 1) this.remove(k);
    this.add(cell);
  }

  private add(cell: number): void {
    this.change(cell, 1);
  }

  private remove(cell: number): void {
    this.change(cell, -1);
  }

  private change(cell: number, sign: 1 | -1): void {
    const { near, missing, loss, isMember } = this;
    const count = isMember.length;
    const row = cell * count;
    const value = sign * near.values[cell]!;
    isMember[cell] = sign === 1 ? 1 : 0;
    this.weight += value;
    for (let k = 0; k < count; k++) {
      const apart = near.apart[row + k]!;
      missing[k]! += sign * apart;
      loss[k]! += value * apart;
    }
  }
}

/** Under this a swap is only rounding. */
const LEAST_GAIN = 1e-9;
