import type { NoFitOutline } from './no-fit-outline.ts';
import type { Point } from './point.ts';
import { between, distanceBetween, dot, minus } from './vector.ts';

export interface WayOut {
  /** The nearest allowed shift, not whole. */
  readonly place: Point;
  /** How far it is, µm. */
  readonly depth: number;
}

/**
 * From a forbidden shift to the nearest allowed one: on the boundary, a pocket's edge, a slit or a single point. Exact but
 * for the rounding of the outline's corners.
 */
export function nearestFree({ outer, pockets, slits, points }: NoFitOutline, shift: Point): WayOut {
  let best: WayOut = { place: shift, depth: Infinity };
  const consider = (from: Point, to: Point) => {
    const along = minus(to, from);
    const length = dot(along, along);
    const t = length === 0 ? 0 : Math.min(1, Math.max(0, dot(minus(shift, from), along) / length));
    const place = between(from, to, t);
    const depth = distanceBetween(shift, place);
    if (depth < best.depth) best = { place, depth };
  };
  for (const ring of [outer, ...pockets]) ring.forEach((from, i) => consider(from, ring[(i + 1) % ring.length]));
  for (const [from, to] of slits) consider(from, to);
  for (const point of points) consider(point, point);
  return best;
}
