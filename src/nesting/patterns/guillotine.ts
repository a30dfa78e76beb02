/** A block of some kind within the sheet. */
export interface PlacedBlock<Kind> {
  readonly kind: Kind;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Kinds of blocks to divide a rectangle into: what each holds, and the sizes at which it holds one row or column more. */
export interface BlockOffer<Kind> {
  readonly kinds: readonly Kind[];
  count(kind: Kind, width: number, height: number): number;
  readonly widths: readonly number[];
  readonly heights: readonly number[];
  /** Between neighbouring blocks. */
  readonly gap: number;
  /** No rectangle holds more than its area by this. */
  readonly leastArea: number;
}

interface Division<Kind> {
  readonly count: number;
  readonly kind?: Kind;
  /** The first part ends at `cut`, across x or along y. */
  readonly cut?: { readonly axis: 'x' | 'y'; readonly at: number };
}

/**
 * Straight cuts through a rectangle, each at the size of a block, until every part holds one kind: the most blanks with
 * cuts nested to a given depth. Every rectangle met is solved once a depth.
 */
export class Guillotine<Kind> {
  private readonly offer: BlockOffer<Kind>;
  /** By depth, then by width · 2²⁶ + height: a whole number below 2⁵². */
  private readonly known: Map<number, Division<Kind>>[] = [];
  /** Blocks counted so far. */
  work = 0;

  constructor(offer: BlockOffer<Kind>) {
    this.offer = offer;
  }

  solve(width: number, height: number, depth: number): Division<Kind> {
    const solved = (this.known[depth] ??= new Map());
    const key = width * 2 ** 26 + height;
    let best = solved.get(key);
    if (!best) solved.set(key, (best = depth === 0 ? this.bestKind(width, height) : this.bestCut(width, height, depth)));
    return best;
  }

  blocks(width: number, height: number, depth: number, x = 0, y = 0): PlacedBlock<Kind>[] {
    const { kind, cut } = this.solve(width, height, depth);
    if (!cut) return kind === undefined ? [] : [{ kind, x, y, width, height }];
    const { gap } = this.offer;
    return cut.axis === 'x'
      ? [...this.blocks(cut.at, height, depth - 1, x, y), ...this.blocks(width - cut.at - gap, height, depth - 1, x + cut.at + gap, y)]
      : [...this.blocks(width, cut.at, depth - 1, x, y), ...this.blocks(width, height - cut.at - gap, depth - 1, x, y + cut.at + gap)];
  }

  private bestKind(width: number, height: number): Division<Kind> {
    let best: Division<Kind> = { count: 0 };
    for (const kind of this.offer.kinds) {
      this.work++;
      const count = this.offer.count(kind, width, height);
      if (count > best.count) best = { count, kind };
    }
    return best;
  }

  private bestCut(width: number, height: number, depth: number): Division<Kind> {
    const { widths, heights, gap, leastArea } = this.offer;
    let best: Division<Kind> = this.solve(width, height, depth - 1);
    const most = (w: number, h: number) => Math.floor((w * h) / leastArea);
    for (const at of widths) {
      const rest = width - at - gap;
      if (rest <= 0) break;
      if (most(at, height) + most(rest, height) <= best.count) continue;
      const count = this.solve(at, height, depth - 1).count + this.solve(rest, height, depth - 1).count;
      if (count > best.count) best = { count, cut: { axis: 'x', at } };
    }
    for (const at of heights) {
      const rest = height - at - gap;
      if (rest <= 0) break;
      if (most(width, at) + most(width, rest) <= best.count) continue;
      const count = this.solve(width, at, depth - 1).count + this.solve(width, rest, depth - 1).count;
      if (count > best.count) best = { count, cut: { axis: 'y', at } };
    }
    return best;
  }
}
