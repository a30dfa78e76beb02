import fc from 'fast-check';
import type { Point, Ring } from '../../src/geometry/point.ts';
import { starRing } from './rings.ts';

/** Whole-micrometre points within ±reach; a small reach makes collinear, touching and overlapping cases common. */
export function wholePoint(reach: number): fc.Arbitrary<Point> {
  const coordinate = fc.integer({ min: -reach, max: reach });
  return fc.record({ x: coordinate, y: coordinate });
}

/** Counter-clockwise rings of unit steps: columns standing on one line, with many shared lines and corners. */
export const columnRing: fc.Arbitrary<Ring> = fc
  .tuple(fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 5 }), wholePoint(3))
  .map(([heights, at]) => {
    const top = heights.flatMap((height, i) => [
      { x: at.x + i, y: at.y + height },
      { x: at.x + i + 1, y: at.y + height },
    ]);
    return [{ x: at.x, y: at.y }, { x: at.x + heights.length, y: at.y }, ...top.toReversed()].filter(
      (p, i, all) => i === 0 || p.x !== all[i - 1].x || p.y !== all[i - 1].y,
    );
  });

/** Star-shaped rings anywhere near the origin. */
export function placedStar(reach: number, mostPoints = 16): fc.Arbitrary<Ring> {
  const distances = fc.array(fc.integer({ min: Math.ceil(reach / 5), max: reach }), { minLength: 4, maxLength: mostPoints });
  return fc.tuple(distances, wholePoint(reach)).map(([lengths, centre]) => starRing(lengths, centre));
}
