import type { FiveBlocks, PackedBox } from './five-blocks.ts';
import type { Raster } from './raster.ts';

/**
 * An L: a rectangle w × h without its upper right corner. The arm is `arm` wide and reaches up to h, the foot is `foot`
 * high and reaches out to w. All four are indices of the raster. A rectangle has arm = w and foot = h.
 */
export interface Ell {
  readonly w: number;
  readonly h: number;
  readonly arm: number;
  readonly foot: number;
}

/** A part of a divided L: where its box stands, mirrored or not, and what L it is then. */
interface EllPart {
  readonly ell: Ell;
  /** Ends of the box in the undivided L, indices of the raster. The part is mirrored within the box. */
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly mirrorX: boolean;
  readonly mirrorY: boolean;
}

/** Work of a division refused by its areas alone, as a part of one that is tried. */
const GLANCE = 1 / 64;

interface Known {
  most: number;
  /** `failed[d]`: so many boxes were looked for in vain with d divisions one within another. */
  readonly failed: number[];
  division?: readonly [EllPart, EllPart];
}

/**
 * Whether an L holds a given number of boxes, by dividing it into two L's along a line with at most two bends, over and
 * over (Lins, Lins and Morabito, "An L-approach for packing (l,w)-rectangles into rectangular and L-shaped pieces", JORS
 * 54, 2003; Birgin, Lobato and Morabito, JORS 61, 2010). Six families of lines keep both parts L-shaped.
 */
export class EllShapes {
  private readonly raster: Raster;
  private readonly rectangles: FiveBlocks;
  private readonly known = new Map<number, Known>();
  /** Tried divisions so far, and how many there may be. */
  work = 0;
  workLimit = 0;

  constructor(raster: Raster, rectangles: FiveBlocks) {
    this.raster = raster;
    this.rectangles = rectangles;
  }

  /**
   * True when `target` boxes go into the L with at most `depth` divisions one within another. False may also mean that the
   * work was spent.
   */
  holds(shape: Ell, target: number, depth: number): boolean {
    const known = this.knownOf(shape);
    if (known.most >= target) return true;
    if (depth === 0 || this.bound(shape) < target || (known.failed[depth] ?? Infinity) <= target) return false;
    const ell = canonical(shape);
    for (const division of this.divisions(ell, target)) {
      this.work += GLANCE;
      if (this.bound(division[0].ell) + this.bound(division[1].ell) < target) continue;
      if (++this.work > this.workLimit) return false;
      if (this.knownOf(division[0].ell) === known || this.knownOf(division[1].ell) === known) continue;
      const count = this.reached(division, target, depth - 1);
      if (count < target) continue;
      known.most = count;
      known.division = division;
      return true;
    }
    if (this.work <= this.workLimit) for (let d = 1; d <= depth; d++) known.failed[d] = Math.min(known.failed[d] ?? Infinity, target);
    return false;
  }

  /** A packing of the L with as many boxes as are known to fit. */
  boxes(shape: Ell): PackedBox[] {
    const ell = canonical(shape);
    const { division } = this.knownOf(shape);
    const boxes = division ? division.flatMap((part) => this.boxesOfPart(part)) : this.rectangles.boxes(ell.w, ell.h);
    return isSwapped(shape) ? boxes.map(({ x, y, turned }) => ({ x: y, y: x, turned: !turned })) : boxes;
  }

  private boxesOfPart({ ell, x0, x1, y0, y1, mirrorX, mirrorY }: EllPart): PackedBox[] {
    const { lengths, a, b } = this.raster;
    return this.boxes(ell).map(({ x, y, turned }) => ({
      x: mirrorX ? lengths[x1] - x - (turned ? b : a) : lengths[x0] + x,
      y: mirrorY ? lengths[y1] - y - (turned ? a : b) : lengths[y0] + y,
      turned,
    }));
  }

  /** Boxes in both parts together if that is at least the target, else something less. */
  private reached([{ ell: first }, { ell: second }]: readonly [EllPart, EllPart], target: number, depth: number): number {
    const most = this.most(first, depth);
    let wanted = target - this.most(second, depth);
    for (; wanted <= most && this.holds(first, wanted, depth); wanted++) {
      const count = this.knownOf(first).most;
      if (this.holds(second, target - count, depth)) return target;
      wanted = Math.max(wanted, count);
    }
    return -1;
  }

  /** No more than this is found with so many divisions. */
  private most(shape: Ell, depth: number): number {
    const known = this.knownOf(shape);
    return depth === 0 ? known.most : Math.min(this.bound(shape), (known.failed[depth] ?? Infinity) - 1);
  }

  private bound(ell: Ell): number {
    return Math.floor(this.area(ell) / (this.raster.a * this.raster.b));
  }

  private knownOf(shape: Ell): Known {
    const key = this.keyOf(shape);
    let known = this.known.get(key);
    if (!known) this.known.set(key, (known = this.firstGuess(canonical(shape))));
    return known;
  }

  /** One number for all L's with the same canonical one; made without it, since this is asked most. */
  private keyOf({ w, h, arm, foot }: Ell): number {
    if (arm === 0 || h === foot) [h, arm] = [foot, w];
    if (foot === 0 || w === arm) [w, foot] = [arm, h];
    const { count } = this.raster;
    const isSwapped = w < h || (w === h && arm < foot);
    return isSwapped ? ((h * count + w) * count + foot) * count + arm : ((w * count + h) * count + arm) * count + foot;
  }

  /** A rectangle by five blocks; an L cut straight at its inner corner, both ways. */
  private firstGuess(ell: Ell): Known {
    const { w, h, arm } = ell;
    const { rectangles } = this;
    if (arm === w) return { most: rectangles.solve(w, h), failed: [] };
    const straight = [this.cutAtCorner(ell, 'down'), this.cutAtCorner(ell, 'left')].map((division) => ({
      division,
      most: rectangles.solve(division[0].ell.w, division[0].ell.h) + rectangles.solve(division[1].ell.w, division[1].ell.h),
    }));
    const best = straight[0].most >= straight[1].most ? straight[0] : straight[1];
    return { most: best.most, failed: [], division: best.division };
  }

  private cutAtCorner({ w, h, arm, foot }: Ell, way: 'down' | 'left'): [EllPart, EllPart] {
    const block = (x0: number, x1: number, y0: number, y1: number) => this.part(x0, x1, y0, y1, x0, x1, y0, y1, false, false);
    return way === 'down' ? [block(0, arm, 0, h), block(arm, w, 0, foot)] : [block(0, w, 0, foot), block(0, arm, foot, h)];
  }

  /** Ways to divide that leave room for the target by area. */
  private *divisions(ell: Ell, target: number): Generator<[EllPart, EllPart]> {
    if (ell.arm < ell.w) yield* this.ellDivisions(ell, target);
    else {
      yield* this.rectangleDivisions(ell.w, ell.h, target, false);
      if (ell.w !== ell.h) yield* this.rectangleDivisions(ell.h, ell.w, target, true);
    }
  }

  private *ellDivisions(ell: Ell, target: number): Generator<[EllPart, EllPart]> {
    const { w, h, arm, foot } = ell;
    const { lengths, cuts } = this.raster;
    const [width, height, armWidth, footHeight] = [lengths[w], lengths[h], lengths[arm], lengths[foot]];
    const total = this.area(ell);
    const fits = (first: number) => this.leavesRoom(first, total, target);
    yield* this.downLeftDown(ell, target);
    for (const x of cuts[w]) {
      if (this.work > this.workLimit) return;
      const cx = lengths[x];
      for (const y of cuts[h]) {
        const cy = lengths[y];
        // From the inner corner to the left, down, to the left.
        if (x <= arm && y <= foot && fits(armWidth * (height - footHeight) + cx * (footHeight - cy))) {
          yield [this.part(0, arm, y, h, 0, x, foot, h, false, true), this.part(0, w, 0, foot, x, w, 0, y, true, false)];
        }
        // From the inner corner to the left, up, to the left.
        if (x <= arm && y >= foot && fits(width * footHeight + cx * (cy - footHeight))) {
          yield [this.part(0, w, 0, y, 0, x, 0, foot, false, false), this.part(0, arm, foot, h, x, arm, y, h, true, true)];
        }
        // From the arm's side to the left, down.
        if (x <= arm && y >= foot && fits((width - cx) * footHeight + (armWidth - cx) * (cy - footHeight))) {
          yield [this.part(x, w, 0, y, x, arm, 0, foot, false, false), this.part(0, arm, 0, h, 0, x, y, h, false, true)];
        }
        // From the inner corner down, to the right, down.
        if (x >= arm && y <= foot && fits(armWidth * height + (cx - armWidth) * cy)) {
          yield [this.part(0, x, 0, h, 0, arm, 0, y, false, false), this.part(arm, w, 0, foot, x, w, y, foot, true, true)];
        }
        // From the foot's top down, to the left.
        if (x >= arm && y <= foot && fits(armWidth * (height - cy) + (cx - armWidth) * (footHeight - cy))) {
          yield [this.part(0, x, y, h, 0, arm, y, foot, false, false), this.part(0, w, 0, foot, x, w, 0, y, true, false)];
        }
      }
    }
  }

  /** From the inner corner down, to the left, down. */
  private *downLeftDown(ell: Ell, target: number): Generator<[EllPart, EllPart]> {
    const { w, h, arm, foot } = ell;
    const { lengths, cuts } = this.raster;
    const total = this.area(ell);
    for (const x of cuts[w]) {
      if (x > arm) break;
      for (const y of cuts[h]) {
        if (y > foot) break;
        if (!this.leavesRoom(lengths[arm] * (lengths[h] - lengths[y]) + lengths[x] * lengths[y], total, target)) continue;
        yield [this.part(0, arm, 0, h, 0, x, y, h, false, true), this.part(x, w, 0, foot, arm, w, 0, y, true, false)];
      }
    }
  }

  /** A rectangle is an L whose inner corner is anywhere on its upper side. */
  private *rectangleDivisions(w: number, h: number, target: number, swapped: boolean): Generator<[EllPart, EllPart]> {
    for (const arm of this.raster.cuts[w]) {
      if (arm === 0 || this.work > this.workLimit) continue;
      for (const [first, second] of this.downLeftDown({ w, h, arm, foot: h }, target)) yield swapped ? [swapAxes(first), swapAxes(second)] : [first, second];
    }
  }

  /** Whether two parts of these areas can hold the target between them. */
  private leavesRoom(first: number, total: number, target: number): boolean {
    this.work += GLANCE;
    const { a, b } = this.raster;
    return Math.floor(first / (a * b)) + Math.floor((total - first) / (a * b)) >= target;
  }

  private area({ w, h, arm, foot }: Ell): number {
    const { lengths } = this.raster;
    return lengths[w] * lengths[foot] + lengths[arm] * (lengths[h] - lengths[foot]);
  }

  /** The part in the box x0…x1 × y0…y1; its arm spans a0…a1 and its foot f0…f1 of the undivided L. */
  private part(x0: number, x1: number, y0: number, y1: number, a0: number, a1: number, f0: number, f1: number, mirrorX: boolean, mirrorY: boolean): EllPart {
    const { rest, count } = this.raster;
    const ell = { w: rest[x1 * count + x0], h: rest[y1 * count + y0], arm: rest[a1 * count + a0], foot: rest[f1 * count + f0] };
    return { ell, x0, x1, y0, y1, mirrorX, mirrorY };
  }
}

/** Axes of the part's place swapped, and with them the part itself. */
function swapAxes({ ell, x0, x1, y0, y1, mirrorX, mirrorY }: EllPart): EllPart {
  return { ell: transposed(ell), x0: y0, x1: y1, y0: x0, y1: x1, mirrorX: mirrorY, mirrorY: mirrorX };
}

function transposed({ w, h, arm, foot }: Ell): Ell {
  return { w: h, h: w, arm: foot, foot: arm };
}

/** One L for all that hold the same: without empty arm or foot, and wider than high. */
function canonical(shape: Ell): Ell {
  const plain = withoutEmptyEnds(shape);
  return isSwapped(shape) ? transposed(plain) : plain;
}

function isSwapped(shape: Ell): boolean {
  const { w, h, arm, foot } = withoutEmptyEnds(shape);
  return w < h || (w === h && arm < foot);
}

function withoutEmptyEnds({ w, h, arm, foot }: Ell): Ell {
  if (arm === 0 || h === foot) [h, arm] = [foot, w];
  if (foot === 0 || w === arm) [w, foot] = [arm, h];
  return { w, h, arm, foot };
}
