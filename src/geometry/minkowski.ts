import { convexParts } from './convex-parts.ts';
import type { Ring } from './point.ts';

/**
 * Convex polygons in flat arrays: polygon k has the corners `start[k]` … `start[k + 1] − 1`, counter-clockwise, strictly
 * convex, whole micrometres; `box` holds minX, minY, maxX, maxY of each. Largest area first.
 */
export interface ConvexPolygons {
  readonly count: number;
  readonly start: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly box: Float64Array;
}

/**
 * The sums of every convex part of `a` with every convex part of `b` turned through the origin: b moved by d meets a in
 * their interiors exactly when d is strictly inside one of them. (An open set that two outlines share meets the interior
 * of some part of each, since the parts leave out nothing of any area.) Sums lying in another one are left out.
 */
export function differenceSums(a: Ring, b: Ring): ConvexPolygons {
  const mirrored = b.map((p) => ({ x: -p.x, y: -p.y }));
  const left = convexParts(a).map(fromLowest);
  const right = convexParts(mirrored).map(fromLowest);
  const room = left.length * right.length;
  const corners = right.length * cornersOf(left) + left.length * cornersOf(right);
  const sums = {
    count: 0,
    start: new Int32Array(room + 1),
    x: new Float64Array(corners),
    y: new Float64Array(corners),
  };
  for (const p of left) for (const q of right) appendSum(sums, p, q);
  return withoutContained(sums);
}

interface Sums {
  count: number;
  readonly start: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

function cornersOf(parts: readonly Ring[]): number {
  return parts.reduce((sum, part) => sum + part.length, 0);
}

/** The ring begun at its lowest corner, of two the left one: from there a convex ring's directions run once through the full turn. */
export function fromLowest(ring: Ring): Ring {
  let first = 0;
  ring.forEach((p, i) => {
    const lowest = ring[first];
    if (p.y < lowest.y || (p.y === lowest.y && p.x < lowest.x)) first = i;
  });
  return [...ring.slice(first), ...ring.slice(0, first)];
}

/** Sum of two convex rings by merging their edges by direction; parallel edges become one. */
function appendSum(sums: Sums, p: Ring, q: Ring): void {
  const { x, y } = sums;
  let at = sums.start[sums.count];
  let i = 0;
  let j = 0;
  while (i < p.length || j < q.length) {
    const a = p[i % p.length];
    const b = q[j % q.length];
    x[at] = a.x + b.x;
    y[at] = a.y + b.y;
    at++;
    const a2 = p[(i + 1) % p.length];
    const b2 = q[(j + 1) % q.length];
    const side = i === p.length ? -1 : j === q.length ? 1 : (a2.x - a.x) * (b2.y - b.y) - (a2.y - a.y) * (b2.x - b.x);
    if (side >= 0) i++;
    if (side <= 0) j++;
  }
  sums.start[++sums.count] = at;
}

function doubleAreaOf({ start, x, y }: Sums, k: number): number {
  let sum = 0;
  const first = start[k];
  for (let i = first + 1; i + 1 < start[k + 1]; i++) {
    sum += (x[i] - x[first]) * (y[i + 1] - y[first]) - (y[i] - y[first]) * (x[i + 1] - x[first]);
  }
  return sum;
}

/** How many of the largest polygons are tried as containers; the rest are too small to hold much. */
const CONTAINERS = 32;

function withoutContained(sums: Sums): ConvexPolygons {
  const areas = Float64Array.from({ length: sums.count }, (_, k) => doubleAreaOf(sums, k));
  const boxes = boxesOf(sums);
  const bySize = Array.from({ length: sums.count }, (_, k) => k).sort((k, l) => areas[l] - areas[k] || k - l);
  const kept: number[] = [];
  // What held the last one is tried first: sums alike in size are often alike in place.
  let likely = 0;
  for (const k of bySize) {
    const holders = Math.min(kept.length, CONTAINERS);
    let holder = holders > 0 && lies(sums, boxes, k, kept[likely]) ? likely : 0;
    if (holder === 0) while (holder < holders && !lies(sums, boxes, k, kept[holder])) holder++;
    if (holder === holders) kept.push(k);
    else likely = holder;
  }
  return gather(sums, boxes, kept);
}

function boxesOf({ count, start, x, y }: Sums): Float64Array {
  const box = new Float64Array(4 * count);
  for (let k = 0; k < count; k++) {
    let minX = Infinity;
    let minY = Infinity;
    let maxX = -Infinity;
    let maxY = -Infinity;
    for (let i = start[k]; i < start[k + 1]; i++) {
      if (x[i] < minX) minX = x[i];
      if (x[i] > maxX) maxX = x[i];
      if (y[i] < minY) minY = y[i];
      if (y[i] > maxY) maxY = y[i];
    }
    box[4 * k] = minX;
    box[4 * k + 1] = minY;
    box[4 * k + 2] = maxX;
    box[4 * k + 3] = maxY;
  }
  return box;
}

/** Whether polygon `inner` lies in polygon `outer`, boundaries included. */
function lies({ start, x, y }: Sums, box: Float64Array, inner: number, outer: number): boolean {
  const i = 4 * inner;
  const o = 4 * outer;
  if (box[o] > box[i] || box[o + 1] > box[i + 1] || box[o + 2] < box[i + 2] || box[o + 3] < box[i + 3]) return false;
  const from = start[outer];
  const to = start[outer + 1];
  const first = start[inner];
  const last = start[inner + 1];
  for (let b = from, a = to - 1; b < to; a = b++) {
    const dx = x[b] - x[a];
    const dy = y[b] - y[a];
    for (let v = first; v < last; v++) if (dx * (y[v] - y[a]) < dy * (x[v] - x[a])) return false;
  }
  return true;
}

function gather(sums: Sums, boxes: Float64Array, kept: readonly number[]): ConvexPolygons {
  const start = new Int32Array(kept.length + 1);
  const box = new Float64Array(4 * kept.length);
  kept.forEach((k, i) => {
    start[i + 1] = start[i] + sums.start[k + 1] - sums.start[k];
    box.set(boxes.subarray(4 * k, 4 * k + 4), 4 * i);
  });
  const x = new Float64Array(start[kept.length]);
  const y = new Float64Array(start[kept.length]);
  kept.forEach((k, i) => {
    x.set(sums.x.subarray(sums.start[k], sums.start[k + 1]), start[i]);
    y.set(sums.y.subarray(sums.start[k], sums.start[k + 1]), start[i]);
  });
  return { count: kept.length, start, x, y, box };
}

/** Whether the point is strictly inside one of the polygons. Exact for whole coordinates within 2²⁵. */
export function insideAny({ count, start, x, y, box }: ConvexPolygons, px: number, py: number): boolean {
  for (let k = 0; k < count; k++) {
    const b = 4 * k;
    if (px <= box[b] || py <= box[b + 1] || px >= box[b + 2] || py >= box[b + 3]) continue;
    let h = start[k + 1] - 1;
    let i = start[k];
    for (const end = h; i <= end; h = i++) {
      if ((x[i] - x[h]) * (py - y[h]) - (y[i] - y[h]) * (px - x[h]) <= 0) break;
    }
    if (i === start[k + 1]) return true;
  }
  return false;
}
