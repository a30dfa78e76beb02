/** What a weight keeps of itself in each pass without conflict. */
const FADING = 0.95;

/**
 * The pairs of a crowd that overlap, or did lately: how deep, and how much the pair weighs. A pair that is not kept has
 * depth 0 and weight 1. Kept pairs are few, so that every question costs what the conflicts are, not the square of the
 * crowd. Depths in µm.
 */
export class Conflicts {
  /** Sum of the depths of all pairs. */
  overlap = 0;
  /** Number of others each one overlaps. */
  readonly counts: Int32Array;

  private readonly total: number;
  /** Place in `pairs` plus one, 0 for a pair that is not kept; by i · total + j, both ways. */
  private readonly slots: Int32Array;
  private readonly pairs: Pair[] = [];
  private readonly pairsOf: Pair[][];

  constructor(total: number) {
    this.total = total;
    this.counts = new Int32Array(total);
    this.slots = new Int32Array(total * total);
    this.pairsOf = Array.from({ length: total }, () => []);
  }

  clear(): void {
    for (const { a, b } of this.pairs) this.slots[a * this.total + b] = this.slots[b * this.total + a] = 0;
    this.pairs.length = 0;
    for (const list of this.pairsOf) list.length = 0;
    this.counts.fill(0);
    this.overlap = 0;
  }

  weight(i: number, j: number): number {
    const slot = this.slots[i * this.total + j];
    return slot === 0 ? 1 : this.pairs[slot - 1].weight;
  }

  /** Forgets how deep i overlaps others, not what the pairs weigh. */
  lift(i: number): void {
    for (const pair of this.pairsOf[i]) if (pair.depth > 0) this.setDepth(pair, 0);
  }

  /** i and j overlap by a depth above 0. */
  meet(i: number, j: number, depth: number): void {
    const slot = this.slots[i * this.total + j];
    this.setDepth(slot === 0 ? this.keep(i, j) : this.pairs[slot - 1], depth);
  }

  /** Sum of depth × weight over the pairs of i. */
  weightedDepth(i: number): number {
    let sum = 0;
    for (const { depth, weight } of this.pairsOf[i]) sum += depth * weight;
    return sum;
  }

  /** Depth of the deepest pair. */
  deepest(): number {
    let deepest = 0;
    for (const { depth } of this.pairs) if (depth > deepest) deepest = depth;
    return deepest;
  }

  /** Pairs in conflict gain weight by their share of the deepest, the others' fades; what weighs nothing more is dropped. */
  adjustWeights(): void {
    const deepest = this.deepest();
    if (deepest === 0) return;
    for (let k = this.pairs.length - 1; k >= 0; k--) {
      const pair = this.pairs[k];
      if (pair.depth > 0) pair.weight += pair.depth / deepest;
      else if ((pair.weight *= FADING) <= 1) this.drop(pair, k);
    }
  }

  /** Pairs kept: what `deepest` and `adjustWeights` cost. */
  get size(): number {
    return this.pairs.length;
  }

  private setDepth(pair: Pair, depth: number): void {
    const change = (depth > 0 ? 1 : 0) - (pair.depth > 0 ? 1 : 0);
    this.overlap += depth - pair.depth;
    this.counts[pair.a] += change;
    this.counts[pair.b] += change;
    pair.depth = depth;
  }

  private keep(a: number, b: number): Pair {
    const pair: Pair = { a, b, depth: 0, weight: 1 };
    this.slots[a * this.total + b] = this.slots[b * this.total + a] = this.pairs.push(pair);
    this.pairsOf[a].push(pair);
    this.pairsOf[b].push(pair);
    return pair;
  }

  private drop(pair: Pair, k: number): void {
    const { a, b } = pair;
    this.slots[a * this.total + b] = this.slots[b * this.total + a] = 0;
    const last = this.pairs.pop()!;
    if (last !== pair) {
      this.pairs[k] = last;
      this.slots[last.a * this.total + last.b] = this.slots[last.b * this.total + last.a] = k + 1;
    }
    removeFrom(this.pairsOf[a], pair);
    removeFrom(this.pairsOf[b], pair);
  }
}

interface Pair {
  readonly a: number;
  readonly b: number;
  depth: number;
  weight: number;
}

function removeFrom(list: Pair[], pair: Pair): void {
  const last = list.pop()!;
  if (last !== pair) list[list.indexOf(pair)] = last;
}
