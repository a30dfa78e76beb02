import type { Box, Ring } from '../../geometry/point.ts';
import { ROUNDING_SHARE } from './granted.ts';

/** A ring with a disc of radius `by` (µm, not negative) swept over it. */
export interface GrownRing {
  readonly ring: Ring;
  readonly by: number;
}

/** Horizontal slabs between two neighbouring vertices' heights, at least; the more, the less is lost along slanted edges. */
const SLABS = 2048;

/**
 * A number that the area of the union of grown rings, cut to `clip`, does not fall below, µm².
 *
 * The plane is cut into horizontal slabs, with every ring vertex on a border. What lies at one x across the whole height of a slab is counted:
 * between two edges of a ring, and in the sweep of the disc along an edge, which is convex, so that a stretch found on both borders runs through.
 */
export function unionAreaBelow(shapes: readonly GrownRing[], clip?: Box): number {
  const borders = slabBorders(shapes, clip);
  let area = 0;
  for (let i = 0; i + 1 < borders.length; i++) {
    const low = borders[i]!;
    const high = borders[i + 1]!;
    const spans: Span[] = [];
    for (const { ring, by } of shapes) {
      collectInside(ring, low, high, spans);
      if (by > 0) collectSweeps(ring, by, low, high, spans);
    }
    area += (high - low) * coveredLength(spans, clip);
  }
  return area * (1 - ROUNDING_SHARE);
}

type Span = readonly [number, number];

function slabBorders(shapes: readonly GrownRing[], clip?: Box): number[] {
  const heights = new Set<number>();
  for (const { ring, by } of shapes) for (const { y } of ring) for (const border of [y - by, y, y + by]) heights.add(border);
  const sorted = [...heights].sort((a, b) => a - b);
  const low = Math.max(sorted[0] ?? 0, clip?.minY ?? -Infinity);
  const high = Math.min(sorted.at(-1) ?? 0, clip?.maxY ?? Infinity);
  const step = (high - low) / SLABS;
  const borders: number[] = low < high ? [low] : [];
  for (const height of [...sorted.filter((y) => y > low && y < high), ...(low < high ? [high] : [])]) {
    const start = borders.at(-1)!;
    const pieces = Math.ceil((height - start) / step);
    for (let k = 1; k < pieces; k++) borders.push(start + ((height - start) * k) / pieces);
    borders.push(height);
  }
  return borders;
}

/** Stretches inside the ring on both borders; no vertex lies strictly between them, so edges cross the slab whole or not at all. */
function collectInside(ring: Ring, low: number, high: number, spans: Span[]): void {
  const crossings: { left: number; right: number; sum: number }[] = [];
  let a = ring.at(-1)!;
  for (const b of ring) {
    if (Math.min(a.y, b.y) <= low && Math.max(a.y, b.y) >= high) {
      const slope = (b.x - a.x) / (b.y - a.y);
      const atLow = a.x + slope * (low - a.y);
      const atHigh = a.x + slope * (high - a.y);
      crossings.push({ left: Math.min(atLow, atHigh), right: Math.max(atLow, atHigh), sum: atLow + atHigh });
    }
    a = b;
  }
  crossings.sort((p, q) => p.sum - q.sum);
  for (let k = 0; k + 1 < crossings.length; k += 2) {
    const from = crossings[k]!.right;
    const to = crossings[k + 1]!.left;
    if (from < to) spans.push([from, to]);
  }
}

function collectSweeps(ring: Ring, by: number, low: number, high: number, spans: Span[]): void {
  let a = ring.at(-1)!;
  for (const b of ring) {
    if (Math.min(a.y, b.y) - by < high && Math.max(a.y, b.y) + by > low) {
      const onLow = sweptSpan(a.x, a.y, b.x, b.y, by, low);
      const onHigh = sweptSpan(a.x, a.y, b.x, b.y, by, high);
      const from = Math.max(onLow[0], onHigh[0]);
      const to = Math.min(onLow[1], onHigh[1]);
      if (from < to) spans.push([from, to]);
    }
    a = b;
  }
}

/** Where the horizontal line at height y meets the sweep of a disc along a–b: the two end discs and the rectangle between. */
function sweptSpan(ax: number, ay: number, bx: number, by: number, radius: number, y: number): Span {
  let from = Infinity;
  let to = -Infinity;
  const add = (x: number) => {
    from = Math.min(from, x);
    to = Math.max(to, x);
  };
  for (const [x, centre] of [[ax, ay], [bx, by]] as const) {
    const rest = radius * radius - (y - centre) * (y - centre);
    if (rest < 0) continue;
    add(x - Math.sqrt(rest));
    add(x + Math.sqrt(rest));
  }
  const length = Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
  if (length === 0 || ay === by) return [from, to];
  for (const side of [radius / length, -radius / length]) {
    const sy = ay + side * (bx - ax);
    const share = (y - sy) / (by - ay);
    if (share >= 0 && share <= 1) add(ax - side * (by - ay) + share * (bx - ax));
  }
  return [from, to];
}

function coveredLength(spans: Span[], clip?: Box): number {
  spans.sort((p, q) => p[0] - q[0]);
  let end = clip?.minX ?? -Infinity;
  let total = 0;
  for (const [from, to] of spans) {
    const start = Math.max(from, end);
    const stop = Math.min(to, clip?.maxX ?? Infinity);
    if (stop > start) total += stop - start;
    end = Math.max(end, stop);
  }
  return total;
}
