import { ellipsePoint, ellipseVelocity } from '../geometry/arc.ts';
import type { ArcCurve, CubicCurve } from '../geometry/curve.ts';
import type { Point } from '../geometry/point.ts';

/**
 * The arc as cubic curves of at most `longest` radians each, for formats without arcs. A quarter of a circle so drawn
 * leaves it by at most 2.8 parts in 10 000 of the radius, an eighth by 4.3 in 1 000 000 (control points at
 * 4/3 · tan(angle / 4), the usual choice).
 */
export function arcCubics(arc: ArcCurve, longest = Math.PI / 2): CubicCurve[] {
  // A sweep that rounding left a hair over the longest piece is still one piece.
  const pieces = Math.max(1, Math.ceil(Math.abs(arc.sweep) / longest - 1e-9));
  const angle = arc.sweep / pieces;
  const reach = (4 / 3) * Math.tan(angle / 4);
  const along = (start: Point, at: number, by: number): Point => {
    const velocity = ellipseVelocity(arc, at);
    return { x: start.x + by * velocity.x, y: start.y + by * velocity.y };
  };
  const end = (i: number) => (i === 0 ? arc.from : i === pieces ? arc.to : ellipsePoint(arc, arc.start + i * angle));

  return Array.from({ length: pieces }, (_, i) => {
    const [from, to] = [end(i), end(i + 1)];
    return { kind: 'cubic', from, control1: along(from, arc.start + i * angle, reach), control2: along(to, arc.start + (i + 1) * angle, -reach), to };
  });
}
