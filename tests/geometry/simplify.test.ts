import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point, Ring } from '../../src/geometry/point.ts';
import { boxOf, doubleArea } from '../../src/geometry/point.ts';
import { simplifyOutward } from '../../src/geometry/simplify.ts';
import { cartonRing, isSimple, skylineRings, starRing, starRings, withFlatVertices } from '../support/rings.ts';
import { sharedArea } from '../support/slow-overlap.ts';

function distanceToOutline(p: Point, ring: Ring): number {
  return Math.min(
    ...ring.map((a, i) => {
      const b = ring[(i + 1) % ring.length];
      const length = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
      const t = Math.min(1, Math.max(0, ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / length));
      return Math.hypot(p.x - a.x - t * (b.x - a.x), p.y - a.y - t * (b.y - a.y));
    }),
  );
}

function expectHolds(ring: Ring, tolerance: number): Ring {
  const { ring: simpler, deviationMicrons } = simplifyOutward(ring, tolerance);
  expect(isSimple(simpler)).toBe(true);
  expect(simpler.length).toBeLessThanOrEqual(ring.length);
  expect(boxOf(simpler)).toEqual(boxOf(ring));
  expect(deviationMicrons).toBeLessThanOrEqual(tolerance);
  // Holding the ring: what they share is the whole ring.
  expect(sharedArea(ring, simpler) / (doubleArea(ring) / 2)).toBeCloseTo(1, 9);
  simpler.forEach((a, i) => {
    const b = simpler[(i + 1) % simpler.length];
    for (const t of [0, 0.25, 0.5, 0.75]) {
      expect(distanceToOutline({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) }, ring)).toBeLessThanOrEqual(deviationMicrons + 1e-6);
    }
  });
  return simpler;
}

describe('simplifying outward', () => {
  test('holds the ring, keeps its box and stays within the tolerance', () => {
    fc.assert(
      fc.property(fc.oneof(starRings(40), skylineRings()), fc.integer({ min: 0, max: 20_000 }), (ring, tolerance) => void expectHolds(ring, tolerance)),
      { seed: 71, numRuns: 150 },
    );
  });

  test('takes flat corners out at no tolerance at all', () => {
    const ring: Ring = [{ x: 0, y: 0 }, { x: 60, y: 0 }, { x: 60, y: 60 }, { x: 0, y: 60 }];
    expect(simplifyOutward(withFlatVertices(ring, 6), 0)).toEqual({ ring, deviationMicrons: 0 });
  });

  test('brings finely flattened curves down to the corners that the tolerance needs', () => {
    const circle = starRing(Array.from({ length: 720 }, () => 50_000));
    // A polygon of n tangents of a circle of radius r stands out by r / cos(π/n) − r: 30 µm allow 91 corners or more.
    const simpler = expectHolds(circle, 30);
    expect(simpler.length).toBeGreaterThanOrEqual(91);
    expect(simpler.length).toBeLessThan(200);
    const carton = cartonRing(40);
    expect(expectHolds(carton, 30).length).toBeLessThan(carton.length / 2.5);
  });
});
