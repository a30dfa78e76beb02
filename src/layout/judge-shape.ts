import type { Turn } from '../geometry/turn.ts';
import type { Outline } from './judge-outline.ts';

/** Edges of one block share a box; whole blocks are passed over at once. */
export const BLOCK = 8;

/** An outline made ready for measuring. Millimetres, all in the shape's own coordinates. */
export interface Shape extends Outline {
  /** minX, minY, maxX, maxY of each block of `BLOCK` edges. */
  readonly blocks: Float64Array;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  /** Points that reach farthest: left, bottom, right, top. */
  readonly extremes: readonly [Spot, Spot, Spot, Spot];
  /** A point well inside. */
  readonly core: Spot;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export function shapeOf(outline: Outline): Shape {
  const { xs, ys } = outline;
  const count = xs.length;
  let [left, bottom, right, top] = [0, 0, 0, 0];
  const blocks = new Float64Array(4 * Math.ceil(count / BLOCK));
  for (let block = 0; block * 4 < blocks.length; block++) {
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    // Includes the point where the block's last edge ends.
    for (let i = block * BLOCK; i <= Math.min(count, (block + 1) * BLOCK); i++) {
      const x = xs[i % count]!;
      const y = ys[i % count]!;
      minX = Math.min(minX, x);
      minY = Math.min(minY, y);
      maxX = Math.max(maxX, x);
      maxY = Math.max(maxY, y);
    }
    blocks.set([minX, minY, maxX, maxY], block * 4);
  }
  for (let i = 1; i < count; i++) {
    if (xs[i]! < xs[left]!) left = i;
    if (xs[i]! > xs[right]!) right = i;
    if (ys[i]! < ys[bottom]!) bottom = i;
    if (ys[i]! > ys[top]!) top = i;
  }
  const spot = (i: number): Spot => ({ x: xs[i]!, y: ys[i]! });
  return {
    ...outline,
    blocks,
    minX: xs[left]!,
    minY: ys[bottom]!,
    maxX: xs[right]!,
    maxY: ys[top]!,
    extremes: [spot(left), spot(bottom), spot(right), spot(top)],
    core: coreOf(outline, ys[bottom]!, ys[top]!),
  };
}

/** Only swaps and signs, so nothing is lost. */
export function turnOutline(outline: Outline, turn: Turn): Outline {
  const { xs, ys, straight } = outline;
  switch (turn) {
    case 0:
      return outline;
    case 1:
      return { xs: ys.map((y) => -y), ys: xs, straight };
    case 2:
      return { xs: xs.map((x) => -x), ys: ys.map((y) => -y), straight };
    case 3:
      return { xs: ys, ys: xs.map((x) => -x), straight };
  }
}

/** Heights at which the inside is probed; odd parts, so that no probe runs along an edge of a drawing in round numbers. */
const PROBES = [0.5071, 0.2539, 0.7523, 0.1297, 0.8713];

/** The middle of the widest stretch of inside that the probes meet. */
function coreOf({ xs, ys }: Outline, minY: number, maxY: number): Spot {
  let best: Spot & { width: number } = { x: xs[0]!, y: ys[0]!, width: -1 };
  for (const probe of PROBES) {
    const y = minY + probe * (maxY - minY);
    const crossings: number[] = [];
    for (let i = 0, j = xs.length - 1; i < xs.length; j = i++) {
      if (ys[i]! > y !== ys[j]! > y) crossings.push(xs[i]! + ((y - ys[i]!) / (ys[j]! - ys[i]!)) * (xs[j]! - xs[i]!));
    }
    crossings.sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const width = crossings[i + 1]! - crossings[i]!;
      if (width > best.width) best = { x: (crossings[i]! + crossings[i + 1]!) / 2, y, width };
    }
  }
  return best;
}
