import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changesBetween, inksKept, minutesOf, unitsFor, type PressState } from '../../src/estimate/day/changeover.ts';
import { nearOrder } from '../../src/estimate/day/near-order.ts';
import { compareWorth, worthOf, type OrderProblem } from '../../src/estimate/day/order.ts';
import { changeoverBound, leastTree } from '../../src/estimate/day/order-bound.ts';
import { planOrder } from '../../src/estimate/day/plan-day.ts';
import { INVENTED_CHANGEOVER } from '../../src/press/changeover.ts';

function* everyOrder(forms: readonly number[]): Generator<number[]> {
  if (forms.length === 0) yield [];
  for (const form of forms) for (const rest of everyOrder(forms.filter((other) => other !== form))) yield [form, ...rest];
}

function problems(most: number, dueAt: fc.Arbitrary<number | undefined>): fc.Arbitrary<OrderProblem> {
  return fc.integer({ min: 1, max: most }).chain((n) => {
    const row = fc.array(fc.integer({ min: 0, max: 60 }), { minLength: n, maxLength: n });
    return fc.record({ first: row, between: fc.array(row, { minLength: n, maxLength: n }), busy: row, due: fc.array(dueAt, { minLength: n, maxLength: n }) });
  });
}

const anyTime = fc.constant(undefined);
const sometimesDue = fc.option(fc.integer({ min: 0, max: 250 }), { nil: undefined, freq: 2 });

const INKS = ['black', 'cyan', 'magenta', 'yellow', 'green', 'gold'];
const states: fc.Arbitrary<PressState> = fc.record({
  inks: fc.uniqueArray(fc.constantFrom(...INKS), { maxLength: 5 }),
  inkFamily: fc.constantFrom(undefined, 'UV'),
  coating: fc.constantFrom(undefined, 'gloss', 'matt'),
  widthMm: fc.constantFrom(1020, 720),
  heightMm: fc.constantFrom(720, 500),
  caliperClass: fc.constantFrom(0, 1, 2),
  die: fc.constantFrom(undefined, 'D-1', 'D-2'),
});

describe('the order of forms', () => {
  test('as trying every order finds, with due times and without', () => {
    fc.assert(
      fc.property(fc.oneof(problems(6, anyTime), problems(6, sometimesDue)), (problem) => {
        const forms = problem.first.map((_, form) => form);
        const best = [...everyOrder(forms)].map((order) => worthOf(problem, order)).reduce((a, b) => (compareWorth(b, a) < 0 ? b : a));
        const plan = planOrder(problem);
        expect({ late: plan.late, changeover: plan.changeover, optimal: plan.optimal }).toEqual({ ...best, optimal: true });
        expect(worthOf(problem, plan.order)).toEqual(best);
        expect(plan.order.toSorted((a, b) => a - b)).toEqual(forms);
        expect(plan.lowerBound).toBeLessThanOrEqual(plan.changeover);
      }),
      { seed: 41, numRuns: 150 },
    );
  });

  test('fifteen forms are proved; the search alone and the bound agree with the proof', () => {
    const [problem] = fc.sample(problems(15, anyTime).filter(({ first }) => first.length === 15), { seed: 42, numRuns: 1 });
    const plan = planOrder(problem!);
    expect(plan.optimal).toBe(true);
    expect(nearOrder(problem!).worth.changeover).toBe(plan.changeover);
    expect(changeoverBound(problem!.first, problem!.between, plan.changeover)).toBeLessThanOrEqual(plan.changeover);
  });

  test('beyond sixteen forms: every form once, never under the bound, never worse than as given', () => {
    fc.assert(
      fc.property(problems(24, sometimesDue).filter(({ first }) => first.length > 16), (problem) => {
        const plan = planOrder(problem);
        expect(plan.order.toSorted((a, b) => a - b)).toEqual(problem.first.map((_, form) => form));
        expect(plan.lowerBound).toBeLessThanOrEqual(plan.changeover);
        expect(compareWorth(plan, plan.given)).toBeLessThanOrEqual(0);
      }),
      { seed: 43, numRuns: 4 },
    );
  });

  test('many forms of few kinds are proved by the bound', () => {
    // Forms of one kind follow one another for nothing; three kinds, ten minutes from one to another.
    const kinds = Array.from({ length: 24 }, (_, i) => i % 3);
    const problem = { first: kinds.map(() => 5), between: kinds.map((a) => kinds.map((b) => (a === b ? 0 : 10))), busy: kinds.map(() => 1), due: kinds.map(() => undefined) };
    expect(planOrder(problem)).toMatchObject({ changeover: 25, lowerBound: 25, optimal: true });
  });

  test('the least tree costs no more than any tree', () => {
    const square = fc.integer({ min: 2, max: 5 }).chain((n) => fc.array(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: n, maxLength: n }), { minLength: n, maxLength: n }));
    fc.assert(
      fc.property(square, (raw) => {
        const cost = raw.map((row, to) => row.map((minutes, from) => (to === from ? Infinity : minutes)));
        const costOf = (parents: readonly number[]) => parents.reduce((sum, parent, to) => sum + (to === 0 ? 0 : cost[to]![parent]!), 0);
        const found = leastTree(cost);
        expect(reachesAll(found)).toBe(true);
        expect(costOf(found)).toBe(Math.min(...everyTree(cost.length).map(costOf)));
      }),
      { seed: 44, numRuns: 200 },
    );
  });
});

function everyTree(nodes: number): number[][] {
  let trees = [[-1]];
  for (let node = 1; node < nodes; node++) trees = trees.flatMap((tree) => Array.from({ length: nodes }, (_, parent) => [...tree, parent]));
  return trees.filter(reachesAll);
}

function reachesAll(parents: readonly number[]): boolean {
  return parents.every((_, start) => {
    let node = start;
    for (let step = 0; step < parents.length && node > 0; step++) node = parents[node]!;
    return node === 0;
  });
}

describe('minutes from one form to the next', () => {
  const table = INVENTED_CHANGEOVER;

  test('a label form and a carton form: every cause by hand', () => {
    const label: PressState = { inks: ['black', 'green', 'gold'], inkFamily: 'conventional', widthMm: 720, heightMm: 510, caliperClass: 0 };
    const carton: PressState = { inks: ['black', 'cyan', 'magenta', 'yellow'], inkFamily: 'conventional', coating: 'gloss', widthMm: 1020, heightMm: 720, caliperClass: 2 };
    expect(changesBetween(label, carton, table)).toEqual([
      { cause: 'washUp', count: 2, minutes: 2 * table.washUp },
      { cause: 'inkingUp', count: 3, minutes: 3 * table.inkingUp },
      { cause: 'coating', count: 1, minutes: table.coating },
      { cause: 'sheetSize', count: 1, minutes: table.sheetSize },
      { cause: 'caliperClass', count: 2, minutes: 2 * table.caliperClass },
    ]);
  });

  test('another ink family washes every unit, inks of the same name as well', () => {
    const [a, b] = [{ inks: ['black', 'cyan'] }, { inks: ['black', 'cyan'], inkFamily: 'low migration' }];
    expect(inksKept(a, b)).toEqual([]);
    expect(changesBetween(a, b, table).map(({ cause, count }) => [cause, count])).toEqual([['washUp', 2], ['inkingUp', 2], ['inkFamily', 1]]);
  });

  test('a form after itself costs nothing; a clean press is only filled', () => {
    fc.assert(
      fc.property(states, (state) => {
        expect(changesBetween(state, state, table)).toEqual([]);
        expect(minutesOf(changesBetween(undefined, state, table))).toBe(state.inks.length * table.inkingUp);
      }),
      { seed: 45 },
    );
  });

  test('units: kept inks stay, every ink has its unit, nothing else is in', () => {
    fc.assert(
      fc.property(fc.array(states, { minLength: 1, maxLength: 6 }), (forms) => {
        let units: (string | undefined)[] = new Array(5).fill(undefined);
        forms.forEach((form, i) => {
          const kept = inksKept(forms[i - 1], form);
          const next = unitsFor(units, kept, form.inks);
          expect(next).toHaveLength(5);
          expect(next.filter((ink) => ink !== undefined).toSorted()).toEqual(form.inks.toSorted());
          for (const ink of kept) expect(next.indexOf(ink)).toBe(units.indexOf(ink));
          units = next;
        });
      }),
      { seed: 46 },
    );
  });
});
