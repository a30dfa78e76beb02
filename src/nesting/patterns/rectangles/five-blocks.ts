import type { Raster } from './raster.ts';

/** A box in a packing, its lower left corner; turned ones stand b wide and a high. */
export interface PackedBox {
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

/**
 * The most boxes in a rectangle by recursion: cut in two, or in five blocks like the sails of a windmill around a middle
 * one (Arenales and Morabito, EJOR 84, 1995; Morabito and Morales, JORS 49, 1998). Every rectangle met is solved once.
 * Lengths are indices of the raster. Counted work is one tried division; once it is spent, rectangles not yet solved get
 * their best plain grid.
 */
export class FiveBlocks {
  private readonly raster: Raster;
  /** Most boxes, by width × count + height; −1 not asked yet. */
  private readonly most: Int32Array;
  private readonly division: (readonly [x1: number, x2: number, y1: number, y2: number] | undefined)[] = [];
  private readonly solved: Uint8Array;
  work = 0;
  private readonly workLimit: number;

  private readonly windmills: boolean;

  /** `windmills` false: cut in two only, from edge to edge; exact while the work lasts. */
  constructor(raster: Raster, workLimit: number, windmills = true) {
    this.raster = raster;
    this.workLimit = workLimit;
    this.windmills = windmills;
    this.most = new Int32Array(raster.count ** 2).fill(-1);
    this.solved = new Uint8Array(raster.count ** 2);
  }

  /** A packing with as many boxes as solve() found. */
  boxes(w: number, h: number): PackedBox[] {
    const { lengths, rest, count } = this.raster;
    const division = this.division[w * count + h];
    if (!division) return this.grid(lengths[w], lengths[h]);
    const [x1, x2, y1, y2] = division;
    const block = (left: number, right: number, low: number, high: number) => moved(this.boxes(rest[right * count + left], rest[high * count + low]), lengths[left], lengths[low]);
    return [...block(0, x1, 0, y2), ...block(0, x2, y2, h), ...block(x2, w, y1, h), ...block(x1, w, 0, y1), ...block(x1, x2, y1, y2)];
  }

  private grid(width: number, height: number): PackedBox[] {
    const { a, b } = this.raster;
    const upright = Math.floor(width / a) * Math.floor(height / b);
    const turned = Math.floor(width / b) * Math.floor(height / a) > upright;
    const [stepX, stepY] = turned ? [b, a] : [a, b];
    const columns = Math.floor(width / stepX);
    return Array.from({ length: columns * Math.floor(height / stepY) }, (_, i) => ({ x: (i % columns) * stepX, y: Math.floor(i / columns) * stepY, turned }));
  }

  /** No packing of the rectangle holds more. */
  bound(w: number, h: number): number {
    const { lengths, a, b } = this.raster;
    return Math.floor((lengths[w] * lengths[h]) / (a * b));
  }

  /** The most boxes found in width w and height h. */
  solve(w: number, h: number): number {
    const at = w * this.raster.count + h;
    if (this.solved[at] !== 0) return this.most[at];
    this.solved[at] = 1;
    this.most[at] = this.gridCount(w, h);
    const bound = this.bound(w, h);
    if (this.most[at] < bound) this.cutInTwo(w, h, bound);
    if (this.windmills && this.most[at] < bound) this.cutInFive(w, h, bound);
    return this.most[at];
  }

  private gridCount(w: number, h: number): number {
    const { lengths, a, b } = this.raster;
    const [width, height] = [lengths[w], lengths[h]];
    return Math.max(Math.floor(width / a) * Math.floor(height / b), Math.floor(width / b) * Math.floor(height / a));
  }

  private cutInTwo(w: number, h: number, bound: number): void {
    const { lengths, rest, count, cuts } = this.raster;
    const at = w * count + h;
    for (const x of cuts[w]) {
      if (x === 0 || 2 * lengths[x] > lengths[w] || this.work >= this.workLimit) continue;
      this.work++;
      const other = rest[w * count + x];
      if (this.bound(x, h) + this.bound(other, h) <= this.most[at]) continue;
      if (this.improve(at, this.solve(x, h) + this.solve(other, h), [x, x, h, h]) >= bound) return;
    }
    for (const y of cuts[h]) {
      if (y === 0 || 2 * lengths[y] > lengths[h] || this.work >= this.workLimit) continue;
      this.work++;
      const other = rest[h * count + y];
      if (this.bound(w, y) + this.bound(w, other) <= this.most[at]) continue;
      if (this.improve(at, this.solve(w, y) + this.solve(w, other), [w, w, y, y]) >= bound) return;
    }
  }

  /** The half turn of a windmill is a windmill again, so x1 + x2 ≤ w is enough. */
  private cutInFive(w: number, h: number, bound: number): void {
    const { lengths, rest, count, cuts } = this.raster;
    const at = w * count + h;
    for (const x1 of cuts[w]) {
      if (x1 === 0) continue;
      for (const x2 of cuts[w]) {
        if (x2 <= x1) continue;
        if (lengths[x1] + lengths[x2] > lengths[w]) break;
        for (const y1 of cuts[h]) {
          if (y1 === 0) continue;
          const right = this.bound(rest[w * count + x1], y1);
          for (const y2 of cuts[h]) {
            if (y2 <= y1 || y2 === h) continue;
            if (this.work >= this.workLimit) return;
            this.work++;
            const blocks = [x1, y2, x2, rest[h * count + y2], rest[w * count + x2], rest[h * count + y1], rest[w * count + x1], y1, rest[x2 * count + x1], rest[y2 * count + y1]];
            let reachable = right;
            for (let k = 0; k < 10; k += 2) if (k !== 6) reachable += this.bound(blocks[k], blocks[k + 1]);
            for (let k = 0; k < 10 && reachable > this.most[at]; k += 2) reachable += this.solve(blocks[k], blocks[k + 1]) - this.bound(blocks[k], blocks[k + 1]);
            if (reachable > this.most[at] && this.improve(at, reachable, [x1, x2, y1, y2]) >= bound) return;
          }
        }
      }
    }
  }

  private improve(at: number, count: number, division: readonly [number, number, number, number]): number {
    if (count > this.most[at]) {
      this.most[at] = count;
      this.division[at] = division;
    }
    return this.most[at];
  }
}

function moved(boxes: readonly PackedBox[], x: number, y: number): PackedBox[] {
  return boxes.map((box) => ({ x: box.x + x, y: box.y + y, turned: box.turned }));
}
