import { EndType, FillRule, inflatePaths, JoinType, union } from 'clipper2-ts';
import { convexParts } from '../geometry/convex-parts.ts';
import type { Point, Ring } from '../geometry/point.ts';
import type { Edges } from './tables-raster.ts';
export interface Contour { readonly border: Edges; readonly slits: Edges }
export function contourOf(a: Ring, b: Ring, clearance: number): Contour {
  const as = convexParts(a);
  const bs = convexParts(b.map((p) => ({ x: -p.x, y: -p.y })));
  const sums = as.flatMap((p) => bs.map((q) => convexSum(p, q)));
  let paths = union(sums as any, FillRule.NonZero);
  if (clearance > 0) paths = inflatePaths(paths, clearance, JoinType.Round, EndType.Polygon, 2, 5);
  return { border: Float64Array.from(paths.flatMap((ring: any) => ring.flatMap((p: Point, k: number) => [p.x, p.y, ring[(k + 1) % ring.length].x, ring[(k + 1) % ring.length].y]))), slits: new Float64Array(0) };
}
function convexSum(p: Ring, q: Ring): Point[] {
  const low = (r: Ring) => r.reduce((best, v, i) => (v.y < r[best].y || (v.y === r[best].y && v.x < r[best].x) ? i : best), 0);
  let i = low(p), j = low(q);
  const out: Point[] = [];
  const n = p.length, m = q.length;
  for (let a = 0, b = 0; a < n || b < m;) {
    out.push({ x: p[i].x + q[j].x, y: p[i].y + q[j].y });
    const pe = { x: p[(i + 1) % n].x - p[i].x, y: p[(i + 1) % n].y - p[i].y };
    const qe = { x: q[(j + 1) % m].x - q[j].x, y: q[(j + 1) % m].y - q[j].y };
    const cross = pe.x * qe.y - pe.y * qe.x;
    if (b >= m || (a < n && cross > 0)) { i = (i + 1) % n; a++; }
    else if (a >= n || cross < 0) { j = (j + 1) % m; b++; }
    else { i = (i + 1) % n; a++; j = (j + 1) % m; b++; }
  }
  return out;
}
