import type { Point, Ring } from '../geometry/point.ts';
import { crossing, locatePoint, onSegment, orient } from '../geometry/predicates.ts';

/** Whether the ring turns left at every corner and goes round once: a convex polygon, counter-clockwise. */
export function isStrictlyConvex(ring: Ring): boolean {
  const n = ring.length;
  const corner = (i: number) => ring[i % n]!;
  // A chain that turns left everywhere is convex when all corners lie left of the first edge's line and all later corners fan out left about the first.
  return (
    n >= 3 &&
    ring.every((_, i) => orient(corner(i), corner(i + 1), corner(i + 2)) > 0) &&
    ring.slice(2).every((_, k) => orient(corner(0), corner(k + 1), corner(k + 2)) > 0)
  );
}

/** Whether no two edges share more than the corner between neighbours. */
export function isSimple(ring: Ring): boolean {
  const n = ring.length;
  const end = (i: number) => ring[(i + 1) % n]!;
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const { kind } = crossing(ring[i]!, end(i), ring[j]!, end(j));
      const neighbours = j === i + 1 || (i === 0 && j === n - 1);
      if (neighbours ? kind !== 'touch' : kind !== 'none') return false;
    }
  }
  return n >= 3;
}

/**
 * Whether a convex polygon lies in a simple outline, touching allowed. An outline has no holes, so it is enough that every edge does: its ends and no crossing
 * with an edge of the outline, and between the outline's corners that lie on it one point of each stretch.
 */
export function isPartInside(part: Ring, outline: Ring): boolean {
  return part.every((a, i) => isEdgeInside(a, part[(i + 1) % part.length]!, outline));
}

function isEdgeInside(a: Point, b: Point, outline: Ring): boolean {
  const stops: Point[] = [a, b];
  for (let i = 0; i < outline.length; i++) {
    const c = outline[i]!;
    if (crossing(a, b, c, outline[(i + 1) % outline.length]!).kind === 'proper') return false;
    if (onSegment(c, a, b)) stops.push(c);
  }
  const along = (p: Point) => (p.x - a.x) * Math.sign(b.x - a.x) + (p.y - a.y) * Math.sign(b.y - a.y);
  stops.sort((p, q) => along(p) - along(q));
  const twice = outline.map(({ x, y }) => ({ x: 2 * x, y: 2 * y }));
  return (
    [a, b].every((p) => locatePoint(p, outline) !== 'outside') &&
    stops.slice(1).every((q, i) => locatePoint({ x: stops[i]!.x + q.x, y: stops[i]!.y + q.y }, twice) !== 'outside')
  );
}
