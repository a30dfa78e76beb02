import { toMillimetres } from '../base/units.ts';
import type { CurvePath } from '../geometry/curve.ts';
import type { Polygon } from '../geometry/point.ts';
import { polyline } from './shapes.ts';

/** Closed paths of polygons in whole µm, in millimetres; areas are the points that an odd number of them encloses. */
export function polygonPaths(polygons: readonly Polygon[]): CurvePath[] {
  return polygons.flatMap(({ outer, holes }) => [outer, ...holes]).map((ring) => polyline(ring.map(({ x, y }) => ({ x: toMillimetres(x), y: toMillimetres(y) })), true));
}
