/** A point or a vector. Whole micrometres in rings and polygons; millimetres in curves of a drawing. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * A closed outline, last point not repeated, whole micrometres. Outer rings run counter-clockwise, holes clockwise,
 * with x to the right and y up.
 */
export type Ring = readonly Point[];

/** One outer ring with its holes. */
export interface Polygon {
  readonly outer: Ring;
  readonly holes: readonly Ring[];
}

/** Axis-parallel box, closed. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/**
 * Largest coordinate of an outline or sheet, µm (16.7 m). Sums of two stay within 2²⁵, where the orientation
 * determinant is a whole number below 2⁵³ and therefore exact in double arithmetic.
 */
export const COORDINATE_LIMIT = 2 ** 24;

/** Twice the signed area; positive for counter-clockwise rings. Exact while the ring's box area is below 2⁵² µm². */
export function doubleArea(ring: Ring): number {
  let sum = 0;
  const origin = ring[0];
  if (!origin) return 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[i + 1]!;
    sum += (a.x - origin.x) * (b.y - origin.y) - (a.y - origin.y) * (b.x - origin.x);
  }
  return sum;
}

/** Unsigned area of the ring in square units of its coordinates. */
export function ringArea(ring: Ring): number {
  return Math.abs(doubleArea(ring)) / 2;
}

export function boxOf(points: Iterable<Point>): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const { x, y } of points) {
    if (x < minX) minX = x;
    if (y < minY) minY = y;
    if (x > maxX) maxX = x;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}

export function shiftRing(ring: Ring, by: Point): Ring {
  return ring.map((p) => ({ x: p.x + by.x, y: p.y + by.y }));
}

export function reverseRing(ring: Ring): Ring {
  return ring.toReversed();
}

/** The ring itself, or reversed where it runs clockwise. */
export function counterClockwise(ring: Ring): Ring {
  return doubleArea(ring) < 0 ? reverseRing(ring) : ring;
}
