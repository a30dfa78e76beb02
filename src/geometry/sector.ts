import type { Point, Ring } from './point.ts';
import { cross, dot, minus } from './vector.ts';

/** The directions counter-clockwise from `start` to `end`, as seen from one point. */
export interface Sector {
  readonly start: Point;
  readonly end: Point;
}

/** What lies left of the outline at its point i. */
export function sectorAtPoint(ring: Ring, i: number): Sector {
  const p = ring[i];
  return { start: minus(ring[(i + 1) % ring.length], p), end: minus(ring[(i + ring.length - 1) % ring.length], p) };
}

/** What lies left of the edge from a to b, at a point within it. */
export function sectorAtEdge(a: Point, b: Point): Sector {
  return { start: minus(b, a), end: minus(a, b) };
}

/** Whether a direction lies in the sector, its start counted in, its end not. Exact on whole micrometres. */
export function inSector(direction: Point, { start, end }: Sector): boolean {
  const turned = cross(start, end);
  const convex = turned > 0 || (turned === 0 && dot(start, end) < 0);
  return convex ? inHalfTurn(direction, start, end) : !inHalfTurn(direction, end, start);
}

/** For sectors of up to half a turn. */
function inHalfTurn(direction: Point, start: Point, end: Point): boolean {
  const fromStart = cross(start, direction);
  return fromStart === 0 ? dot(start, direction) > 0 : fromStart > 0 && cross(direction, end) > 0;
}

/** Whether two open sectors share a direction. */
export function sectorsOverlap(a: Sector, b: Sector): boolean {
  return inSector(a.start, b) || inSector(b.start, a);
}
