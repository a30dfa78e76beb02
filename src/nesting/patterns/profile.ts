import type { Point, Ring } from '../../geometry/point.ts';

/** What of a ring can be touched from one side. */
export interface Profile {
  /** Edges from left to right: from.x < to.x. */
  readonly edges: readonly Edge[];
  readonly corners: readonly Corner[];
}

export interface Edge {
  readonly from: Point;
  readonly to: Point;
}

/** An end of an edge, with the ways from it to the two corners next to it on the ring. */
export interface Corner {
  readonly at: Point;
  readonly back: Point;
  readonly ahead: Point;
}

/**
 * The edges of a simple ring that are outermost over some stretch of x, looked at from above or from below, and their
 * ends. Upright edges are left out; their ends belong to other edges. Edges of a simple ring do not cross, so which is
 * outermost changes only at corners.
 */
export function profileFrom(side: 'above' | 'below', ring: Ring): Profile {
  const sign = side === 'above' ? 1 : -1;
  const stops = [...new Set(ring.map((p) => p.x))].toSorted((a, b) => a - b);
  const top = new Float64Array(stops.length).fill(-Infinity);
  const seen = new Int32Array(stops.length).fill(-1);
  ring.forEach((_, index) => {
    const { from, to } = sidewaysEdge(ring, index);
    for (let slab = lowerIndex(stops, from.x); stops[slab] < to.x; slab++) {
      const middle = (stops[slab] + stops[slab + 1]) / 2;
      const y = sign * (from.y + ((middle - from.x) * (to.y - from.y)) / (to.x - from.x));
      if (y <= top[slab]) continue;
      top[slab] = y;
      seen[slab] = index;
    }
  });
  const kept = [...new Set(seen)].filter((index) => index >= 0);
  const ends = new Set(kept.flatMap((index) => [index, (index + 1) % ring.length]));
  return { edges: kept.map((index) => sidewaysEdge(ring, index)), corners: [...ends].map((index) => cornerOf(ring, index)) };
}

function sidewaysEdge(ring: Ring, index: number): Edge {
  const p = ring[index];
  const q = ring[(index + 1) % ring.length];
  return p.x < q.x ? { from: p, to: q } : { from: q, to: p };
}

function cornerOf(ring: Ring, index: number): Corner {
  const at = ring[index];
  const before = ring[(index + ring.length - 1) % ring.length];
  const after = ring[(index + 1) % ring.length];
  return { at, back: { x: before.x - at.x, y: before.y - at.y }, ahead: { x: after.x - at.x, y: after.y - at.y } };
}

/** Index of the first element that is not less than `value` in a rising list. */
function lowerIndex(rising: readonly number[], value: number): number {
  let from = 0;
  let to = rising.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if (rising[middle] < value) from = middle + 1;
    else to = middle;
  }
  return from;
}
