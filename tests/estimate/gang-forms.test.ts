import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boundByPrices, mayFit, mostWorth, oneFormBound, type FormRoom } from '../../src/estimate/gang/form-bound.ts';
import { wholeRuns } from '../../src/estimate/gang/form-runs.ts';

const rooms: fc.Arbitrary<FormRoom> = fc.integer({ min: 1, max: 3 }).chain((designs) =>
  fc.record({
    shares: fc.array(fc.double({ min: 0.09, max: 0.6, noNaN: true }), { minLength: designs, maxLength: designs }),
    covers: fc.array(fc.array(fc.oneof(fc.constant(0), fc.double({ min: 0.05, max: 0.7, noNaN: true })), { minLength: designs, maxLength: designs }), { maxLength: 2 }),
    alone: fc.array(fc.integer({ min: 1, max: 8 }), { minLength: designs, maxLength: designs }),
  }),
);

function everyCounts(room: FormRoom): number[][] {
  return room.alone.reduce<number[][]>((all, most) => all.flatMap((counts) => Array.from({ length: most + 1 }, (_, count) => [...counts, count])), [[]]).filter((counts) => mayFit(room, counts));
}

describe('what is proved of forms', () => {
  test('the counts of most worth, as trying all finds', () => {
    fc.assert(
      fc.property(rooms, fc.array(fc.double({ min: 0, max: 5, noNaN: true }), { minLength: 3, maxLength: 3 }), (room, prices) => {
        const worthOf = (counts: readonly number[]) => counts.reduce((sum, count, d) => sum + count * prices[d]!, 0);
        const own = prices.slice(0, room.shares.length);
        const most = Math.max(...everyCounts(room).map(worthOf));
        const found = mostWorth(room, own);
        expect(found.worth).toBeCloseTo(most, 6);
        expect(mayFit(room, found.counts)).toBe(true);
      }),
      { seed: 51, numRuns: 200 },
    );
  });

  test('one form: the fewest pressings at which the counts may fit', () => {
    fc.assert(
      fc.property(rooms, fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 3, maxLength: 3 }), (room, all) => {
        const quantities = all.slice(0, room.shares.length);
        const runs = Array.from({ length: 60 }, (_, i) => i + 1).filter((run) => mayFit(room, quantities.map((quantity) => Math.ceil(quantity / run))));
        expect(oneFormBound(room, quantities)).toBe(runs[0] ?? Infinity);
      }),
      { seed: 52, numRuns: 200 },
    );
  });

  test('no two forms beat the bound by any prices', () => {
    fc.assert(
      fc.property(rooms, fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 3, maxLength: 3 }), fc.array(fc.double({ min: 0, max: 5, noNaN: true }), { minLength: 3, maxLength: 3 }), (room, all, prices) => {
        const quantities = all.slice(0, room.shares.length);
        const bound = boundByPrices(room, quantities, prices.slice(0, quantities.length));
        const layouts = everyCounts(room);
        for (const a of layouts.slice(0, 40)) {
          for (const b of layouts.slice(-40)) {
            for (let first = 0; first <= 12; first++) {
              const rest = Math.max(...quantities.map((quantity, d) => (quantity - a[d]! * first <= 0 ? 0 : b[d] === 0 ? Infinity : Math.ceil((quantity - a[d]! * first) / b[d]!))));
              expect(first + rest).toBeGreaterThanOrEqual(bound - 1e-6);
            }
          }
        }
      }),
      { seed: 53, numRuns: 25 },
    );
  });
});

describe('whole pressings', () => {
  const jobs = fc.integer({ min: 1, max: 3 }).chain((designs) =>
    fc.record({
      offered: fc.array(fc.array(fc.integer({ min: 0, max: 5 }), { minLength: designs, maxLength: designs }), { minLength: 1, maxLength: 3 }),
      least: fc.array(fc.integer({ min: 1, max: 500 }), { minLength: designs, maxLength: designs }),
      over: fc.option(fc.integer({ min: 0, max: 40 }), { nil: Infinity }),
      real: fc.array(fc.double({ min: 0, max: 120, noNaN: true }), { minLength: 3, maxLength: 3 }),
    }),
  );

  test('enough of every design, never more than allowed, no more ups than offered', () => {
    fc.assert(
      fc.property(jobs, ({ offered, least, over, real }) => {
        const whole = wholeRuns(offered, real.slice(0, offered.length), { least, most: least.map((quantity) => quantity + over) });
        if (!whole) return;
        least.forEach((quantity, d) => {
          const made = whole.counts.reduce((sum, counts, form) => sum + counts[d]! * whole.runs[form]!, 0);
          expect(made).toBeGreaterThanOrEqual(quantity);
          expect(made).toBeLessThanOrEqual(quantity + over);
        });
        whole.counts.forEach((counts, form) => counts.forEach((count, d) => expect(count).toBeLessThanOrEqual(offered[form]![d]!)));
        for (const run of whole.runs) expect(Number.isInteger(run) && run >= 0).toBe(true);
      }),
      { seed: 54, numRuns: 300 },
    );
  });

  test('one form: pressed until the last design is enough, ups that make too much left off', () => {
    expect(wholeRuns([[4, 2]], [30], { least: [100, 70], most: [Infinity, Infinity] })).toEqual({ counts: [[3, 2]], runs: [35] });
    // 3 × 35 = 105 is too much of the first; 3 × 34 = 102 leaves too few of the second.
    expect(wholeRuns([[4, 2]], [30], { least: [100, 70], most: [102, Infinity] })).toEqual({ counts: [[2, 2]], runs: [50] });
    expect(wholeRuns([[4, 2]], [30], { least: [100, 60], most: [102, Infinity] })).toEqual({ counts: [[3, 2]], runs: [34] });
    // One up needs 101 or 102 pressings for the first and 103 or 104 for the second, two ups 51 and 52.
    expect(wholeRuns([[2, 2]], [52], { least: [101, 103], most: [102, 104] })).toBeUndefined();
  });
});
