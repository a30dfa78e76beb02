import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { forbids, noFitPolygon } from '../../src/geometry/no-fit.ts';
import { shiftRing } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/point.ts';
import { TURNS, turnPoint, turnRing } from '../../src/geometry/turn.ts';
import { skylineRings, starRings } from '../support/rings.ts';
import { outlinesNearer, sharedArea } from '../support/slow-overlap.ts';

/** Small enough to try every whole shift. */
const tinyRings = fc.oneof(skylineRings(5, 3), starRings(9, 12));
const shifts = fc.record({ x: fc.integer({ min: -30, max: 30 }), y: fc.integer({ min: -30, max: 30 }) });

function slowForbids(a: Ring, b: Ring, d: { x: number; y: number }, gap: number): boolean {
  const moved = shiftRing(b, d);
  return sharedArea(a, moved) > 1e-9 || (gap > 0 && outlinesNearer(a, moved, gap));
}

describe('forbidden shifts', () => {
  test('are those at which an independent library finds shared area, or outlines nearer than the gap', () => {
    const sizes = { forbidden: 0, free: 0 };
    fc.assert(
      fc.property(tinyRings, tinyRings, fc.constantFrom(0, 0, 1, 3), fc.array(shifts, { minLength: 10, maxLength: 10 }), (a, b, gap, tries) => {
        const noFit = noFitPolygon(a, b, gap);
        for (const d of tries) {
          const expected = slowForbids(a, b, d, gap);
          sizes[expected ? 'forbidden' : 'free']++;
          expect(forbids(noFit, d.x, d.y)).toBe(expected);
        }
      }),
      { seed: 21, numRuns: 150 },
    );
    expect(Math.min(sizes.forbidden, sizes.free)).toBeGreaterThan(150);
  });

  test('of b against a are those of a against b through the origin', () => {
    fc.assert(
      fc.property(tinyRings, tinyRings, fc.constantFrom(0, 2), shifts, (a, b, gap, d) => {
        expect(forbids(noFitPolygon(a, b, gap), d.x, d.y)).toBe(forbids(noFitPolygon(b, a, gap), -d.x, -d.y));
      }),
      { seed: 22, numRuns: 150 },
    );
  });

  test('turn with the outlines and move with either of them', () => {
    fc.assert(
      fc.property(tinyRings, tinyRings, fc.constantFrom(0, 2), shifts, fc.constantFrom(...TURNS), shifts, (a, b, gap, d, turn, by) => {
        const expected = forbids(noFitPolygon(a, b, gap), d.x, d.y);
        const turned = turnPoint(d, turn);
        expect(forbids(noFitPolygon(turnRing(a, turn), turnRing(b, turn), gap), turned.x, turned.y)).toBe(expected);
        expect(forbids(noFitPolygon(shiftRing(a, by), b, gap), d.x + by.x, d.y + by.y)).toBe(expected);
        expect(forbids(noFitPolygon(a, shiftRing(b, by), gap), d.x - by.x, d.y - by.y)).toBe(expected);
      }),
      { seed: 23, numRuns: 100 },
    );
  });
});
