import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fewestPressings, pressingsByQuantity } from '../../src/estimate/gang/run-lengths.ts';
import { placeVersions } from '../../src/estimate/gang/stations.ts';
import { createWorkMeter } from '../../src/estimate/gang/work-meter.ts';

/** Slow and obvious: every way to deal the stations of one form, and so on. */
function canPlace(stations: readonly number[], quantities: readonly number[], runs: readonly number[]): boolean {
  const [quantity, ...rest] = quantities;
  if (quantity === undefined) return true;
  const deal = (form: number, left: number, free: readonly number[]): boolean => {
    if (left <= 0) return canPlace(free, rest, runs);
    if (form === runs.length) return false;
    for (let count = 0; count <= free[form]!; count++) {
      if (deal(form + 1, left - count * runs[form]!, free.with(form, free[form]! - count))) return true;
    }
    return false;
  };
  return deal(0, quantity, stations);
}

const problems = fc.record({
  stations: fc.integer({ min: 2, max: 4 }),
  quantities: fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 4 }),
});

test('stations for given runs agree with trying everything', () => {
  fc.assert(
    fc.property(problems, fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 3 }), ({ stations, quantities }, runs) => {
      const counts = placeVersions({ stations, quantities, runs }, createWorkMeter(1e9));
      expect(counts !== undefined).toBe(canPlace(runs.map(() => stations), quantities, runs));
      counts?.forEach((count, v) => expect(count.reduce((made, k, f) => made + k * runs[f]!, 0)).toBeGreaterThanOrEqual(quantities[v]!));
    }),
    { seed: 11, numRuns: 300 },
  );
});

test('the fewest pressings of two forms agree with trying every pair of runs', () => {
  fc.assert(
    fc.property(problems, ({ stations, quantities }) => {
      let best = 100;
      for (let first = 1; first <= 14; first++) {
        for (let second = 0; second <= first && first + second < best; second++) {
          if (canPlace([stations, stations], quantities, [first, second])) best = first + second;
        }
      }
      const found = fewestPressings({ stations, quantities }, 2, 100, createWorkMeter(1e9));
      expect(found.lowerBound).toBe(best);
      expect(found.forms?.reduce((sum, form) => sum + form.pressings, 0)).toBe(best === 100 ? undefined : best);
    }),
    { seed: 12, numRuns: 150 },
  );
});

test('a plan is never under its bound, with little work too', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 30000 }), { minLength: 2, maxLength: 20 }), fc.integer({ min: 2, max: 24 }), fc.integer({ min: 10, max: 1e5 }), (quantities, stations, work) => {
      const problem = { stations, quantities };
      const found = fewestPressings(problem, 2, 1e7, createWorkMeter(work));
      const pressings = found.forms?.reduce((sum, form) => sum + form.pressings, 0) ?? Infinity;
      expect(pressings).toBeGreaterThanOrEqual(found.lowerBound);
      expect(found.lowerBound).toBeGreaterThanOrEqual(pressingsByQuantity(problem));
    }),
    { seed: 13, numRuns: 60 },
  );
});
