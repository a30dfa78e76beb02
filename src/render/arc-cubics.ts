import type { ArcCurve, CubicCurve } from '../geometry/curve.ts';
import type { Point } from '../geometry/point.ts';

/**
 * The arc as cubic curves of at most a quarter turn each, for formats without arcs. A quarter of a circle so drawn leaves
 * it by at most 2.8 parts in 10 000 of the radius (control points at 4/3 · tan(angle / 4), the usual choice).
 */
export function arcCubics(arc: ArcCurve): CubicCurve[] {
  const { centre, radiusX, radiusY, tilt, start, sweep } = arc;
  const pieces = Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 2) - 1e-9));
  const angle = sweep / pieces;
  const reach = (4 / 3) * Math.tan(angle / 4);
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  const place = (u: number, v: number): Point => ({ x: centre.x + c * radiusX * u - s * radiusY * v, y: centre.y + s * radiusX * u + c * radiusY * v });

  return Array.from({ length: pieces }, (_, i) => {
    const [a, b] = [start + i * angle, start + (i + 1) * angle];
    return {
      kind: 'cubic',
      from: i === 0 ? arc.from : place(Math.cos(a), Math.sin(a)),
      control1: place(Math.cos(a) - reach * Math.sin(a), Math.sin(a) + reach * Math.cos(a)),
      control2: place(Math.cos(b) + reach * Math.sin(b), Math.sin(b) - reach * Math.cos(b)),
      to: i === pieces - 1 ? arc.to : place(Math.cos(b), Math.sin(b)),
    };
  });
}
