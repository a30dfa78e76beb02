import type { Point, Ring } from './point.ts';
import { samePoint } from './vector.ts';

/**
 * Exact decisions on whole micrometres. Within twice COORDINATE_LIMIT (sums of two outlines' coordinates) differences
 * stay within 2²⁶, their products within 2⁵² and the determinant within 2⁵³, so plain doubles make no rounding error.
 */

/** Twice the signed area of the triangle a, b, c. */
export function determinant(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/** 1 when c lies left of the line from a to b, −1 right of it, 0 on it. */
export function orient(a: Point, b: Point, c: Point): -1 | 0 | 1 {
  const value = determinant(a, b, c);
  return value > 0 ? 1 : value < 0 ? -1 : 0;
}

/** Whether p lies on the closed segment from a to b. */
export function onSegment(p: Point, a: Point, b: Point): boolean {
  return inSpan(p, a, b) && orient(a, b, p) === 0;
}

function inSpan(p: Point, a: Point, b: Point): boolean {
  return (
    p.x >= Math.min(a.x, b.x) && p.x <= Math.max(a.x, b.x) && p.y >= Math.min(a.y, b.y) && p.y <= Math.max(a.y, b.y)
  );
}

/** Where a point lies against a ring of either orientation; for rings that cross themselves, by the even-odd rule. */
export function locatePoint(p: Point, ring: Ring): 'inside' | 'boundary' | 'outside' {
  let inside = false;
  let a = ring[ring.length - 1];
  for (const b of ring) {
    // Half-open in y, so that a vertex at the height of p counts once.
    if (a.y > p.y !== b.y > p.y) {
      const side = orient(a, b, p);
      if (side === 0) return 'boundary';
      if (side > 0 === b.y > a.y) inside = !inside;
    } else if (a.y === p.y && b.y === p.y ? inSpan(p, a, b) : samePoint(p, b)) {
      return 'boundary';
    }
    a = b;
  }
  return inside ? 'inside' : 'outside';
}

/** How two closed segments meet. */
export type Crossing =
  | { readonly kind: 'none' }
  /** They cross within both. The place is constructed: rounded to whole micrometres. */
  | { readonly kind: 'proper'; readonly at: Point }
  /** They share one point, which is an end of at least one of them. The place is exact. */
  | { readonly kind: 'touch'; readonly at: Point }
  /** They share a stretch of one line. Its ends are exact. */
  | { readonly kind: 'overlap'; readonly from: Point; readonly to: Point };

const NONE: Crossing = { kind: 'none' };

/** How the segment from a to b meets the segment from c to d. A segment may be a single point. */
export function crossing(a: Point, b: Point, c: Point, d: Point): Crossing {
  const cSide = orient(a, b, c);
  const dSide = orient(a, b, d);
  const aSide = orient(c, d, a);
  const bSide = orient(c, d, b);
  if (cSide * dSide < 0 && aSide * bSide < 0) return { kind: 'proper', at: crossingPoint(a, b, c, d) };
  const shared = [a, b].filter((p) => onSegment(p, c, d)).concat([c, d].filter((p) => onSegment(p, a, b)));
  if (shared.length === 0) return NONE;
  const other = shared.find((p) => !samePoint(p, shared[0]));
  return other ? { kind: 'overlap', from: shared[0], to: other } : { kind: 'touch', at: shared[0] };
}

function crossingPoint(a: Point, b: Point, c: Point, d: Point): Point {
  const fromA = determinant(c, d, a);
  const t = fromA / (fromA - determinant(c, d, b));
  return { x: Math.round(a.x + t * (b.x - a.x)), y: Math.round(a.y + t * (b.y - a.y)) };
}
