import type { Point } from './point.ts';

/** Vector arithmetic. Exact on whole micrometres within the coordinate limit. */

export function minus(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

/** a + t (b − a). */
export function between(a: Point, b: Point, t: number): Point {
  return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
}

/** z component of the cross product: positive when b lies counter-clockwise of a. */
export function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x;
}

export function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

/** Square roots are correctly rounded in every engine; Math.hypot is not. */
export function lengthOf(v: Point): number {
  return Math.sqrt(v.x * v.x + v.y * v.y);
}

export function distanceBetween(a: Point, b: Point): number {
  return lengthOf(minus(a, b));
}

export function samePoint(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}
