import type { Point, Ring } from '../../src/geometry/point.ts';

/** The slow, obvious reference: distance of a point from a closed outline in doubles. */
export function distanceToOutline(p: Point, ring: Ring): number {
  let best = Infinity;
  ring.forEach((a, i) => {
    best = Math.min(best, distanceToSegment(p, a, ring[(i + 1) % ring.length]));
  });
  return best;
}

export function distanceToSegment(p: Point, a: Point, b: Point): number {
  const length = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
  const t = length === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / length));
  return Math.hypot(a.x + t * (b.x - a.x) - p.x, a.y + t * (b.y - a.y) - p.y);
}

/** Even-odd, in doubles: only for points well away from the outline. */
export function isWithin(p: Point, ring: Ring): boolean {
  let inside = false;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length];
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) * (b.x - a.x)) / (b.y - a.y)) inside = !inside;
  });
  return inside;
}
