import type { Curve, CurvePath } from './curve.ts';
import type { Point } from './point.ts';
import { cross, minus } from './vector.ts';

/**
 * Signed area within a closed loop of true curves, in the square of its unit; positive when it runs counter-clockwise.
 * Green's theorem, ½∮ (x dy − y dx), in closed form for each kind of curve.
 */
export function loopArea(loop: CurvePath): number {
  if (loop.length === 0) return 0;
  const origin = loop[0].from;
  return loop.reduce((sum, curve) => sum + sweptArea(curve, origin), 0);
}

function sweptArea(curve: Curve, origin: Point): number {
  const from = minus(curve.from, origin);
  const to = minus(curve.to, origin);
  switch (curve.kind) {
    case 'line':
      return cross(from, to) / 2;
    case 'cubic': {
      const p1 = minus(curve.control1, origin);
      const p2 = minus(curve.control2, origin);
      const weighted =
        6 * cross(from, p1) + 3 * cross(from, p2) + cross(from, to) + 3 * cross(p1, p2) + 3 * cross(p1, to) + 6 * cross(p2, to);
      return weighted / 20;
    }
    case 'arc':
      return (cross(minus(curve.centre, origin), minus(to, from)) + curve.radiusX * curve.radiusY * curve.sweep) / 2;
  }
}
