import type { Random } from '../../base/random.ts';
import type { CellGrid } from './cell-grid.ts';
import { stepOf } from './cell-grid.ts';
import type { ConflictGraph } from './conflict-graph.ts';
import { commonConflicts } from './conflict-graph.ts';

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
const NEIGHBOURS = 128;
const STARTS = 3;
const KEY_STEPS = 2 ** 40;
const SWAPS = 6;
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
  /** A row of `words` words a cell: bit b of row a set when the two conflict. */
  readonly words: number;
  readonly bits: Uint32Array;
}

function neighbourhood(graph: ConflictGraph, grid: CellGrid, values: Float64Array, seed: number): Neighbourhood {
  let near = commonConflicts(graph, [seed]).list.filter((cell) => values[cell]! > 0);
  if (near.length >= NEIGHBOURS) near = near.sort((a, b) => values[b]! - values[a]! || a - b).slice(0, NEIGHBOURS - 1).sort();
  const cells = Int32Array.from([seed, ...near]);
  const stepX = stepOf(grid.x);
  const stepY = stepOf(grid.y);
  return {
    cells,
    values: Float64Array.from(cells, (cell) => values[cell]!),
    x: Float64Array.from(cells, (cell) => grid.columnOf[cell]! * stepX),
    y: Float64Array.from(cells, (cell) => grid.rowOf[cell]! * stepY),
    ...conflictsAmong(graph, cells),
  };
}

function conflictsAmong({ words: allWords, bits: allBits }: ConflictGraph, cells: Int32Array): Pick<Neighbourhood, 'words' | 'bits'> {
  const count = cells.length;
  const words = Math.ceil(count / 32);
  const bits = new Uint32Array(count * words);
  for (let a = 0; a < count; a++) {
    const row = cells[a]! * allWords;
    for (let b = 0; b < a; b++) {
      const cell = cells[b]!;
      const bit = (allBits[row + (cell >>> 5)]! >>> (cell & 31)) & 1;
      bits[a * words + (b >>> 5)]! |= bit << (b & 31);
      bits[b * words + (a >>> 5)]! |= bit << (a & 31);
    }
  }
  return { words, bits };
}

function heaviestAround(near: Neighbourhood, random: Random, reach: number): HeavyClique {
  const count = near.cells.length;
  const keys = new Float64Array(count);
  const order = new Int32Array(count);
  const search = new CliqueSearch(near);
  for (let start = 0; start < STARTS; start++) {
    const focusX = near.x[0]! + (2 * random.unit() - 1) * reach;
    const focusY = near.y[0]! + (2 * random.unit() - 1) * reach;
    const pull = (3 * random.unit()) / (reach * reach);
    for (let k = 0; k < count; k++) {
      const dx = near.x[k]! - focusX;
      const dy = near.y[k]! - focusY;
      const far = pull * (dx * dx + dy * dy);
      const key = (near.values[k]! * (0.6 + 0.8 * random.unit())) / (1 + far + (far * far) / 2);
      // Key and index in one whole number below 2⁵³, so that numbers can be sorted without a comparison of ours.
      keys[k] = Math.floor(Math.min(1, key) * KEY_STEPS) * NEIGHBOURS + k;
    }
    keys.sort();
    for (let k = 0; k < count; k++) order[count - 1 - k] = keys[k]! % NEIGHBOURS;
    search.run(order);
  }
  return { cells: search.best.map((k) => near.cells[k]!), weight: search.most };
}

/** Greedy cliques with swaps, as sets of bits. */
class CliqueSearch {
  best = new Int32Array(0);
  most = 0;
  private readonly near: Neighbourhood;
  private readonly members: Uint32Array;
  /** Cells that conflict with all members. */
  private readonly open: Uint32Array;

  constructor(near: Neighbourhood) {
    this.near = near;
    this.members = new Uint32Array(near.words);
    this.open = new Uint32Array(near.words);
  }

  /** From the seed on, cells in the given order; then single cells for those members that they do not conflict with, as long as that gains. */
  run(order: Int32Array): void {
    this.members.fill(0);
    this.open.fill(0xffffffff);
    this.add(0);
    this.fill(order);
    for (let swap = 0; swap < SWAPS; swap++) {
      const gaining = this.bestSwap();
      if (gaining < 0) break;
      this.swapIn(gaining);
      this.fill(order);
    }
    const chosen = order.filter((k) => isSet(this.members, k));
    const weight = chosen.reduce((sum, k) => sum + this.near.values[k]!, 0);
    if (weight > this.most) {
      this.most = weight;
      this.best = chosen;
    }
  }

  private fill(order: Int32Array): void {
    for (const k of order) if (isSet(this.open, k)) this.add(k);
  }

  private add(cell: number): void {
    const { members, open, near } = this;
    members[cell >>> 5]! |= 1 << (cell & 31);
    const row = cell * near.words;
    for (let w = 0; w < open.length; w++) open[w]! &= near.bits[row + w]!;
  }

  /** The cell that gains most over the members it would expel; −1 where none gains. */
  private bestSwap(): number {
    const { values } = this.near;
    let best = -1;
    let gain = LEAST_GAIN;
    for (let k = 0; k < values.length; k++) {
      if (values[k]! <= gain || isSet(this.members, k)) continue;
      const g = values[k]! - this.lossBy(k, values[k]! - gain);
      if (g > gain) {
        gain = g;
        best = k;
      }
    }
    return best;
  }

  /** Value of the members that do not conflict with the cell; may stop once it passes `enough`. */
  private lossBy(cell: number, enough: number): number {
    const { members, near } = this;
    const row = cell * near.words;
    let loss = 0;
    for (let w = 0; w < members.length; w++) {
      for (let rest = members[w]! & ~near.bits[row + w]!; rest !== 0; rest &= rest - 1) {
        loss += near.values[32 * w + 31 - Math.clz32(rest & -rest)]!;
        if (loss >= enough) return loss;
      }
    }
    return loss;
  }

  private swapIn(cell: number): void {
    const { members, open, near } = this;
    const row = cell * near.words;
    for (let w = 0; w < members.length; w++) members[w]! &= near.bits[row + w]!;
    open.fill(0xffffffff);
    for (let k = 0; k < near.cells.length; k++) {
      if (isSet(members, k)) for (let w = 0; w < open.length; w++) open[w]! &= near.bits[k * near.words + w]!;
    }
    this.add(cell);
  }
}

function isSet(bits: Uint32Array, k: number): boolean {
  return ((bits[k >>> 5]! >>> (k & 31)) & 1) === 1;
}

/** Under this a swap is only rounding. */
const LEAST_GAIN = 1e-9;
