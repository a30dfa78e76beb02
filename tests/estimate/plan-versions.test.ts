import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planVersions, stationsThatChange, type VersionsTask } from '../../src/estimate/gang/plan-versions.ts';

const tasks = fc
  .record({ stations: fc.integer({ min: 1, max: 5 }), quantities: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 4 }), forms: fc.integer({ min: 1, max: 2 }) })
  .filter(({ stations, quantities, forms }) => quantities.length <= stations * forms);

/** Quantities and least overs together. */
const LONGEST = 12;

interface Known {
  pressings: number;
  forms: number;
  copies: number;
}

/** Slow and obvious: every pair of run lengths, every way to deal stations; least by pressings, forms, copies. */
function tryEverything({ stations, quantities, forms, oversLimits }: VersionsTask): Known {
  let best: Known = { pressings: Infinity, forms: Infinity, copies: Infinity };
  const enough = (v: number, made: number) => made >= quantities[v]! + (oversLimits?.[v]?.least ?? 0) && made <= quantities[v]! + (oversLimits?.[v]?.greatest ?? Infinity);
  const better = (a: Known) => a.pressings - best.pressings || a.forms - best.forms || a.copies - best.copies;
  for (let first = 1; first <= LONGEST; first++) {
    for (let second = 0; second <= (forms === 2 ? first : 0); second++) {
      const deal = (v: number, left: number, right: number, copies: number): void => {
        if (v === quantities.length) {
          const found = { pressings: first + second, forms: second > 0 ? 2 : 1, copies };
          if (better(found) < 0) best = found;
          return;
        }
        for (let a = 0; a <= left; a++) {
          for (let b = 0; b <= (second > 0 ? right : 0); b++) if (enough(v, a * first + b * second)) deal(v + 1, left - a, right - b, copies + a * first + b * second);
        }
      };
      if (first + second <= best.pressings) deal(0, stations, stations, 0);
    }
  }
  return best;
}

describe('plans for versions', () => {
  test('fewest pressings, then fewer forms, then fewer overs, as trying everything finds', () => {
    fc.assert(
      fc.property(tasks, (task) => {
        const plan = planVersions(task);
        const known = tryEverything(task);
        const copies = plan.overs.reduce((sum, over, v) => sum + over + task.quantities[v]!, 0);
        expect({ pressings: plan.pressings, forms: plan.forms.length, copies }).toEqual(known);
        expect(plan).toMatchObject({ optimal: true, lowerBound: known.pressings });
      }),
      { seed: 31, numRuns: 60 },
    );
  });

  test('least and greatest overs are kept, as trying everything finds; where nothing keeps them that is said', () => {
    const limits = fc.record({ least: fc.integer({ min: 0, max: 3 }), more: fc.option(fc.integer({ min: 0, max: 3 }), { nil: Infinity }) }).map(({ least, more }) => ({ least, greatest: least + more }));
    const limited = tasks.chain((task) => fc.array(limits, { minLength: task.quantities.length, maxLength: task.quantities.length }).map((oversLimits): VersionsTask => ({ ...task, oversLimits })));
    let refused = 0;
    fc.assert(
      fc.property(limited, (task) => {
        const known = tryEverything(task);
        if (known.pressings === Infinity) {
          refused++;
          expect(() => planVersions(task)).toThrowError(expect.objectContaining({ issues: [expect.objectContaining({ code: 'gang-overs-impossible' })] }));
          return;
        }
        const plan = planVersions(task);
        const copies = plan.overs.reduce((sum, over, v) => sum + over + task.quantities[v]!, 0);
        expect({ pressings: plan.pressings, forms: plan.forms.length, copies }).toEqual(known);
        expect(plan).toMatchObject({ optimal: true, lowerBound: known.pressings });
        plan.overs.forEach((over, v) => {
          expect(over).toBeGreaterThanOrEqual(task.oversLimits![v]!.least);
          expect(over).toBeLessThanOrEqual(task.oversLimits![v]!.greatest);
        });
      }),
      { seed: 33, numRuns: 120 },
    );
    expect(refused).toBeGreaterThan(5);
  });

  test('limits that no plan breaks change nothing', () => {
    const task = { stations: 9, quantities: [250, 255, 260, 500, 500, 800, 1100], forms: 2 };
    const free = planVersions(task);
    expect(planVersions({ ...task, oversLimits: free.overs.map((over) => ({ least: 0, greatest: over })) }).pressings).toBe(free.pressings);
  });

  test('tight limits on long runs', () => {
    const task = { stations: 12, quantities: [50_000, 20_000, 7000], forms: 2 };
    const plan = planVersions({ ...task, oversLimits: task.quantities.map(() => ({ least: 0, greatest: 500 })) });
    expect(Math.max(...plan.overs)).toBeLessThanOrEqual(500);
    expect(plan).toMatchObject({ pressings: 6420, optimal: true });
  });

  test('stations, quantities and the bound hold at any size and number of forms', () => {
    const any = fc.record({ stations: fc.integer({ min: 1, max: 16 }), quantities: fc.array(fc.integer({ min: 1, max: 1e6 }), { minLength: 1, maxLength: 8 }), forms: fc.constantFrom(1, 2, 9) });
    fc.assert(
      fc.property(any.filter(({ stations, quantities, forms }) => quantities.length <= stations * forms && (forms < 3 || stations ** 2 <= quantities.length)), fc.option(fc.record({ form: fc.integer({ min: 0, max: 9e5 }), pressing: fc.integer({ min: 0, max: 9 }) }), { nil: undefined }), (task, costs) => {
        const plan = planVersions({ ...task, costs });
        expect(plan.forms.length).toBeLessThanOrEqual(task.forms);
        for (const { counts } of plan.forms) expect(counts.reduce((sum, count) => sum + count, 0)).toBeLessThanOrEqual(task.stations);
        for (const over of plan.overs) expect(over).toBeGreaterThanOrEqual(0);
        expect(plan.lowerBound).toBeLessThanOrEqual(costs ? plan.cost! : plan.pressings);
      }),
      { seed: 32, numRuns: 10 },
    );
  });

  test('four orders of two up each: 513 sheets, overs 1, 51, 101, 151 (CIP4 gang sample)', () => {
    const plan = planVersions({ stations: 8, quantities: [1025, 975, 925, 875], forms: 1 });
    expect(plan.pressings).toBe(513);
    expect(plan.overs).toEqual([1, 51, 101, 151]);
  });

  test('stations that change: what both forms share stays', () => {
    expect(stationsThatChange({ counts: [8, 3, 1], pressings: 1 }, { counts: [1, 7, 4], pressings: 1 })).toBe(7);
  });
});
