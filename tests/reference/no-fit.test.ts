import { FillRule, minkowskiSum, union } from 'clipper2-ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { noFitPolygon } from '../../src/geometry/no-fit.ts';
import { noFitOutline } from '../../src/geometry/no-fit-outline.ts';
import type { Ring } from '../../src/geometry/point.ts';
import { doubleArea, reverseRing, shiftRing } from '../../src/geometry/point.ts';
import { skylineRings, starRings } from '../support/rings.ts';

/**
 * Reference: the Minkowski sum of clipper2-ts, an independent library. It sweeps one outline along the other; the shifts at
 * which one lies wholly within the other are added, as copies of either.
 */
function libraryRings(a: Ring, b: Ring): Ring[] {
  const mirrored = b.map((p) => ({ x: -p.x, y: -p.y }));
  const swept = minkowskiSum(mirrored, [...a], true);
  return union([...swept, shiftRing(a, mirrored[0]) as never, shiftRing(mirrored, a[0]) as never], FillRule.NonZero);
}

/** Pockets smaller than this, µm², may be rounded away by either side. */
const SMALL_POCKET = 1e4;

function figures(rings: readonly Ring[]): { area: number; pockets: number } {
  return {
    area: rings.reduce((sum, loop) => sum + doubleArea(loop), 0) / 2,
    pockets: rings.filter((loop) => doubleArea(loop) < -2 * SMALL_POCKET).length,
  };
}

function perimeter(ring: Ring): number {
  return ring.reduce((sum, p, i) => sum + Math.hypot(p.x - ring[(i + 1) % ring.length].x, p.y - ring[(i + 1) % ring.length].y), 0);
}

/** Spirals and combs hold pockets more often than stars do. */
const comb: Ring = [[0, 0], [90, 0], [90, 60], [80, 60], [80, 10], [55, 10], [55, 40], [70, 42], [70, 60], [30, 60], [30, 45], [45, 44], [45, 10], [10, 10], [10, 60], [0, 60]].map(([x, y]) => ({ x: x * 1000, y: y * 1000 }));
const key: Ring = [[0, 0], [22, 0], [22, 20], [8, 20], [8, 34], [2, 34], [2, 20], [0, 20]].map(([x, y]) => ({ x: x * 1000, y: y * 1000 }));

test('same area and same pockets as the library’s Minkowski sum', () => {
  let pockets = 0;
  const rings = fc.oneof(starRings(12), skylineRings(5), fc.constantFrom(comb, key, reverseRing(comb.map((p) => ({ x: -p.x, y: p.y })))));
  fc.assert(
    fc.property(rings, rings, (a, b) => {
      const outline = noFitOutline(noFitPolygon(a, b));
      const ours = figures([outline.outer, ...outline.pockets]);
      const theirs = figures(libraryRings(a, b));
      // Either side may round each corner by a micrometre.
      expect(Math.abs(ours.area - theirs.area)).toBeLessThan(2 * (perimeter(outline.outer) + outline.pockets.reduce((sum, p) => sum + perimeter(p), 0)));
      expect(ours.pockets).toBe(theirs.pockets);
      pockets += ours.pockets;
    }),
    { seed: 61, numRuns: 60 },
  );
  expect(pockets).toBeGreaterThan(0);
});
