import { combine, toPaths, type Operation } from './clipper-paths.ts';
import type { Polygon } from './point.ts';

/**
 * Unions, intersections and differences of areas, by clipper2-ts. Outer rings counter-clockwise, holes clockwise, in and
 * out; polygons of one list may overlap. Crossings of edges are rounded to whole micrometres. Not guaranteed: a result may
 * touch itself in a point, and two of its polygons may touch in points.
 */

export function unite(polygons: readonly Polygon[]): Polygon[] {
  return area('union', polygons, []);
}

export function intersect(a: readonly Polygon[], b: readonly Polygon[]): Polygon[] {
  return area('intersection', a, b);
}

/** What is in `a` and not in `b`. */
export function subtract(a: readonly Polygon[], b: readonly Polygon[]): Polygon[] {
  return area('difference', a, b);
}

function area(operation: Operation, a: readonly Polygon[], b: readonly Polygon[]): Polygon[] {
  return combine(operation, toPaths(a), toPaths(b), 'not zero');
}
