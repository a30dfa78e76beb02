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
  /** This many boxes were looked for in vain. */
  failed: number;
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

  /** True when `target` boxes go into the L. False may also mean that the work was spent. */
  holds(shape: Ell, target: number): boolean {
    const ell = canonical(shape);
    const known = this.knownOf(ell);
    if (known.most >= target) return true;
    if (this.bound(ell) < target || known.failed <= target) return false;
    for (const division of this.divisions(ell, target)) {
      if (++this.work > this.workLimit) return false;
      if (division.some((part) => this.knownOf(canonical(part.ell)) === known)) continue;
      const count = this.reached(division, target);
      if (count < target) continue;
      known.most = count;
      known.division = division;
      return true;
    }
    if (this.work <= this.workLimit) known.failed = target;
    return false;
  }

  /** A packing of the L with as many boxes as are known to fit. */
  boxes(shape: Ell): PackedBox[] {
    const ell = canonical(shape);
    const { division } = this.knownOf(ell);
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
  private reached([{ ell: first }, { ell: second }]: readonly [EllPart, EllPart], target: number): number {
    let wanted = target - this.most(second);
    if (this.most(first) < wanted) return -1;
    for (; wanted <= this.most(first) && this.holds(first, Math.max(0, wanted)); wanted++) {
      const count = this.knownOf(canonical(first)).most;
      if (this.holds(second, target - count)) return target;
      wanted = Math.max(wanted, count);
    }
    return -1;
  }

  /** The least upper bound known. */
  private most(shape: Ell): number {
    const ell = canonical(shape);
    return Math.min(this.bound(ell), this.knownOf(ell).failed - 1);
  }

  private bound(ell: Ell): number {
    return Math.floor(this.area(ell) / (this.raster.a * this.raster.b));
  }

  private knownOf(ell: Ell): Known {
    const { count } = this.raster;
    const key = ((ell.w * count + ell.h) * count + ell.arm) * count + ell.foot;
    let known = this.known.get(key);
    if (!known) this.known.set(key, (known = this.firstGuess(ell)));
    return known;
  }

  /** A rectangle by five blocks; an L cut straight at its inner corner, both ways. */
  private firstGuess(ell: Ell): Known {
    const { w, h, arm } = ell;
    const { rectangles } = this;
    if (arm === w) return { most: rectangles.solve(w, h), failed: Infinity };
    const straight = [this.cutAtCorner(ell, 'down'), this.cutAtCorner(ell, 'left')].map((division) => ({
      division,
      most: rectangles.solve(division[0].ell.w, division[0].ell.h) + rectangles.solve(division[1].ell.w, division[1].ell.h),
    }));
    const best = straight[0].most >= straight[1].most ? straight[0] : straight[1];
    return { most: best.most, failed: Infinity, division: best.division };
  }

  private cutAtCorner({ w, h, arm, foot }: Ell, way: 'down' | 'left'): [EllPart, EllPart] {
    const block = (x0: number, x1: number, y0: number, y1: number) => this.part(x0, x1, y0, y1, { arm: [x0, x1], foot: [y0, y1] });
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
          yield [this.part(0, arm, y, h, { arm: [0, x], foot: [foot, h], mirrorY: true }), this.part(0, w, 0, foot, { arm: [x, w], foot: [0, y], mirrorX: true })];
        }
        // From the inner corner to the left, up, to the left.
        if (x <= arm && y >= foot && fits(width * footHeight + cx * (cy - footHeight))) {
          yield [this.part(0, w, 0, y, { arm: [0, x], foot: [0, foot] }), this.part(0, arm, foot, h, { arm: [x, arm], foot: [y, h], mirrorX: true, mirrorY: true })];
        }
        // From the arm's side to the left, down.
        if (x <= arm && y >= foot && fits((width - cx) * footHeight + (armWidth - cx) * (cy - footHeight))) {
          yield [this.part(x, w, 0, y, { arm: [x, arm], foot: [0, foot] }), this.part(0, arm, 0, h, { arm: [0, x], foot: [y, h], mirrorY: true })];
        }
        // From the inner corner down, to the right, down.
        if (x >= arm && y <= foot && fits(armWidth * height + (cx - armWidth) * cy)) {
          yield [this.part(0, x, 0, h, { arm: [0, arm], foot: [0, y] }), this.part(arm, w, 0, foot, { arm: [x, w], foot: [y, foot], mirrorX: true, mirrorY: true })];
        }
        // From the foot's top down, to the left.
        if (x >= arm && y <= foot && fits(armWidth * (height - cy) + (cx - armWidth) * (footHeight - cy))) {
          yield [this.part(0, x, y, h, { arm: [0, arm], foot: [y, foot] }), this.part(0, w, 0, foot, { arm: [x, w], foot: [0, y], mirrorX: true })];
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
        yield [this.part(0, arm, 0, h, { arm: [0, x], foot: [y, h], mirrorY: true }), this.part(x, w, 0, foot, { arm: [arm, w], foot: [0, y], mirrorX: true })];
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

  /** The part in the box x0…x1 × y0…y1; arm and foot as stretches of the undivided L. */
  private part(x0: number, x1: number, y0: number, y1: number, { arm, foot, mirrorX = false, mirrorY = false }: { arm: [number, number]; foot: [number, number]; mirrorX?: boolean; mirrorY?: boolean }): EllPart {
    const { rest, count } = this.raster;
    const between = (from: number, to: number) => rest[to * count + from];
    const ell = { w: between(x0, x1), h: between(y0, y1), arm: between(...arm), foot: between(...foot) };
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
