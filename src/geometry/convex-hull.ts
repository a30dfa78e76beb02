import type { Point } from './point.ts';
import { orient } from './predicates.ts';

/** Corners of the convex hull, counter-clockwise, collinear points left out (Andrew 1979, monotone chain). */
export function convexHull(points: readonly Point[]): Point[] {
  const sorted = points.toSorted((a, b) => a.x - b.x || a.y - b.y);
  const half = (order: readonly Point[]) => {
    const chain: Point[] = [];
    for (const p of order) {
      while (chain.length >= 2 && orient(chain.at(-2)!, chain.at(-1)!, p) <= 0) chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  const hull = [...half(sorted), ...half(sorted.toReversed())];
  return hull.length > 0 ? hull : sorted.slice(0, 1);
}
