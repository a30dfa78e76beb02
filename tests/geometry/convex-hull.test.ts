import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { convexHull } from '../../src/geometry/convex-hull.ts';
import { orient } from '../../src/geometry/predicates.ts';

describe('convex hull', () => {
  test('turns left at every corner, is made of the points and leaves none outside', () => {
    const point = fc.record({ x: fc.integer({ min: -50, max: 50 }), y: fc.integer({ min: -50, max: 50 }) });
    fc.assert(
      fc.property(fc.array(point, { minLength: 1, maxLength: 40 }), (points) => {
        const hull = convexHull(points);
        for (const corner of hull) expect(points).toContainEqual(corner);
        if (hull.length < 3) return;
        hull.forEach((a, i) => {
          const b = hull[(i + 1) % hull.length]!;
          expect(orient(a, b, hull[(i + 2) % hull.length]!)).toBe(1);
          for (const p of points) expect(orient(a, b, p)).toBeGreaterThanOrEqual(0);
        });
      }),
      { seed: 1 },
    );
  });
});
