import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { forbids, noFitPolygon } from '../../src/geometry/no-fit.ts';
import { freeIntervals, leastPitch, leastShift } from '../../src/geometry/no-fit-slices.ts';
import type { Ring } from '../../src/geometry/point.ts';
import { cartonRing, skylineRings, starRings } from '../support/rings.ts';

const tinyRings = fc.oneof(skylineRings(5, 3), starRings(9, 12));
const ring = (...points: [number, number][]): Ring => points.map(([x, y]) => ({ x, y }));
const square = ring([0, 0], [10, 0], [10, 10], [0, 10]);
/** A U, 30 wide, its inlet 10 wide and 20 deep, open at the top. */
const u = ring([0, 0], [30, 0], [30, 30], [20, 30], [20, 10], [10, 10], [10, 30], [0, 30]);

describe('free intervals', () => {
  test('hold exactly the whole shifts that are not forbidden', () => {
    fc.assert(
      fc.property(tinyRings, tinyRings, fc.constantFrom(0, 0, 1, 2, 5), fc.integer({ min: -20, max: 20 }), fc.constantFrom('x' as const, 'y' as const), (a, b, gap, at, axis) => {
        const noFit = noFitPolygon(a, b, gap);
        const free = freeIntervals(noFit, axis, at);
        for (let shift = -50; shift <= 50; shift++) {
          const forbidden = axis === 'x' ? forbids(noFit, shift, at) : forbids(noFit, at, shift);
          expect(free.some(({ from, to }) => shift >= from && shift <= to)).toBe(!forbidden);
        }
        free.forEach(({ from, to }, i) => {
          expect(from).toBeLessThanOrEqual(to);
          if (i > 0) expect(from).toBeGreaterThan(free[i - 1].to + 1);
        });
        expect(free[0].from).toBe(-Infinity);
        expect(free.at(-1)!.to).toBe(Infinity);
      }),
      { seed: 31, numRuns: 150 },
    );
  });

  test('at full size: the ends are allowed, one micrometre further is not', () => {
    const carton = cartonRing(6);
    for (const gap of [0, 3000, 4567]) {
      const noFit = noFitPolygon(carton, carton, gap);
      for (let at = -150_000; at <= 150_000; at += 7919) {
        for (const { from, to } of freeIntervals(noFit, 'x', at)) {
          if (from > -Infinity) expect([forbids(noFit, from, at), forbids(noFit, from - 1, at)]).toEqual([false, true]);
          if (to < Infinity) expect([forbids(noFit, to, at), forbids(noFit, to + 1, at)]).toEqual([false, true]);
        }
      }
    }
  });

  test('keep the slit of a bar in an inlet just as wide', () => {
    const bar = ring([0, 0], [10, 0], [10, 20], [0, 20]);
    const noFit = noFitPolygon(u, bar);
    expect(freeIntervals(noFit, 'x', 15)).toEqual([{ from: -Infinity, to: -10 }, { from: 10, to: 10 }, { from: 30, to: Infinity }]);
    expect(freeIntervals(noFit, 'y', 10)).toEqual([{ from: -Infinity, to: -20 }, { from: 10, to: Infinity }]);
    expect(freeIntervals(noFit, 'x', 9)).toEqual([{ from: -Infinity, to: -10 }, { from: 30, to: Infinity }]);
    expect(freeIntervals(noFitPolygon(u, bar, 1), 'x', 15)).toEqual([{ from: -Infinity, to: -11 }, { from: 31, to: Infinity }]);
  });

  test('of two squares', () => {
    expect(freeIntervals(noFitPolygon(square, square), 'x', 9)).toEqual([{ from: -Infinity, to: -10 }, { from: 10, to: Infinity }]);
    expect(freeIntervals(noFitPolygon(square, square), 'x', 10)).toEqual([{ from: -Infinity, to: Infinity }]);
    // Corner to corner the gap is a disc: (3, 4) is 5 away.
    expect(freeIntervals(noFitPolygon(square, square, 5), 'x', 14)).toEqual([{ from: -Infinity, to: -13 }, { from: 13, to: Infinity }]);
    expect(freeIntervals(noFitPolygon(square, square, 5), 'y', 0)).toEqual([{ from: -Infinity, to: -15 }, { from: 15, to: Infinity }]);
  });
});

describe('least shift and pitch', () => {
  test('a bar into the U, then past it', () => {
    const noFit = noFitPolygon(u, ring([0, 0], [8, 0], [8, 20], [0, 20]));
    expect(leastShift(noFit, 'x', 15)).toBe(10);
    expect(leastShift(noFit, 'x', 15, 13)).toBe(30);
    expect(leastShift(noFit, 'y', 10)).toBe(10);
  });

  test('every multiple of the pitch is free, and no smaller step has that property', () => {
    fc.assert(
      fc.property(tinyRings, fc.constantFrom(0, 1, 2), fc.constantFrom('x' as const, 'y' as const), (a, gap, axis) => {
        const noFit = noFitPolygon(a, a, gap);
        const stands = (step: number) => {
          for (let k = 1; k * step < 60; k++) if (axis === 'x' ? forbids(noFit, k * step, 0) : forbids(noFit, 0, k * step)) return false;
          return true;
        };
        const pitch = leastPitch(noFit, axis);
        expect(stands(pitch)).toBe(true);
        for (let step = 1; step < pitch; step++) expect(stands(step)).toBe(false);
      }),
      { seed: 32, numRuns: 300 },
    );
  });
});
