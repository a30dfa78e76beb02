import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate, tokensOf } from '../../src/estimate/formula.ts';
import { figure } from '../../src/estimate/figure.ts';
import { quoteQuantity, type QuoteTerms } from '../../src/estimate/quote.ts';
import { sheetsNeeded, type Route } from '../../src/estimate/sheets-needed.ts';
import { DEMO_RATES } from '../../src/press/demo-rates.ts';
import type { Rates } from '../../src/press/rates.ts';
import { STAGES } from '../../src/press/stages.ts';
import { GERMAN_TABLE } from '../../src/press/waste-table.ts';

const terms = (route: Partial<Route> = {}, rates: Rates = DEMO_RATES): QuoteTerms => ({
  route: { ups: 12, colours: 4, varnishUnits: 1, stages: ['die-cutting', 'gluing'], ...route },
  board: { widthMm: 1020, heightMm: 720, grammage: 300 },
  pricePerTonne: 900,
  currency: 'EUR',
  waste: GERMAN_TABLE,
  rates,
  ownDie: false,
});
const routes = fc.record({ ups: fc.integer({ min: 1, max: 200 }), colours: fc.integer({ min: 0, max: 8 }), varnishUnits: fc.integer({ min: 0, max: 2 }), stages: fc.subarray([...STAGES]) });
const quantities = fc.integer({ min: 1, max: 1e9 });

describe('formulas', () => {
  test.each([
    ['2 + 3 × 4', 14],
    ['(2 + 3) × 4', 20],
    ['7 − 2 − 1', 4],
    ['12 ÷ 3 ÷ 2', 2],
    ['⌈7 ÷ 2⌉ + 1', 5],
    ['⌊7 ÷ 2⌋ + 1', 4],
    ['⌊0.3 ÷ 0.1⌋', 3],
    ['die-cutter rate × 2.5', 225],
  ])('%s', (formula, value) => expect(evaluate(formula, { 'die-cutter rate': 90 })).toBe(value));

  test.each(['2 +', '(2', '2 3', 'a', '2 & 3'])('%s is none', (formula) => expect(() => evaluate(formula, {})).toThrow(/formula/));

  test('a missing input leaves the figure open and says what is missing', () => {
    const hours = figure('hours', 'h', 'sheets ÷ speed', { sheets: 10, speed: { missing: 'press speed' } });
    expect(figure('cost', 'EUR', 'hours × rate', { hours, rate: { missing: 'press rate' } })).toMatchObject({ value: null, missing: ['press speed', 'press rate'] });
  });

  // Another reader of the same text: names put in as numbers, the rest left to the engine.
  test('every figure of a quote can be replayed from its formula and inputs', () => {
    const packing = { isGlued: true, caliperMm: 0.45, caseLengthMm: 690, rows: 1, casesPerLayer: 6, caseHeightMm: 180, palletHeightMm: 1200, deckMm: 144, caseKg: 0.45, palletKg: 25, blankM2: 0.0215, grammage: 300 };
    const quote = quoteQuantity(50_000, { ...terms({ stages: [...STAGES] }), packing });
    const shown = [quote.boardWeight, quote.boardCostPerThousand, ...quote.hours, ...quote.materials, ...quote.packed!.figures, ...quote.costs, quote.cost, quote.costPerThousand, quote.pricePerThousand!];
    expect(shown.length).toBeGreaterThan(30);
    for (const { formula, inputs, value } of shown) {
      const script = tokensOf(formula).map((token) => ({ '×': '*', '÷': '/', '−': '-', '⌈': 'Math.ceil(', '⌊': 'Math.floor(', '⌉': ')', '⌋': ')' })[token] ?? inputs[token] ?? token).join(' ');
      expect(Function(`return ${script}`)()).toBeCloseTo(value!, 9);
    }
  });
});

describe('sheets', () => {
  test('never fall as the quantity grows, nor under the net', () => {
    fc.assert(
      fc.property(routes, quantities, quantities, (route, a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)].map((quantity) => sheetsNeeded(quantity, route, GERMAN_TABLE));
        expect(less!.sheets).toBeLessThanOrEqual(more!.sheets);
        expect(more!.sheets).toBeGreaterThanOrEqual(more!.netSheets);
      }),
      { seed: 21, numRuns: 300 },
    );
  });

  test('each stage delivers what the next one needs, and no sheet more is asked than that', () => {
    fc.assert(
      fc.property(routes, quantities, (route, quantity) => {
        for (const { into, out, setUp, runningPercent } of sheetsNeeded(quantity, route, GERMAN_TABLE).chain) {
          // In whole millionths, beyond what a double holds.
          const good = (sheets: number) => BigInt(sheets - setUp) * (1_000_000n - BigInt(Math.round(runningPercent * 10_000)));
          expect(good(into) >= BigInt(out) * 1_000_000n).toBe(true);
          expect(good(into - 1) < BigInt(out) * 1_000_000n).toBe(true);
        }
      }),
      { seed: 22, numRuns: 300 },
    );
  });

  test('splitting a quantity is never cheaper than its sum where there is set-up', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 50 }), (a, b, ups) => {
        const cost = (quantity: number) => quoteQuantity(quantity, terms({ ups })).cost.value!;
        expect(cost(a) + cost(b)).toBeGreaterThan(cost(a + b));
      }),
      { seed: 23, numRuns: 100 },
    );
  });
});

test('a rate that rises never makes a job cheaper', () => {
  const keys = ['platePrice', 'diePrice', 'inkPricePerKg', 'inkCoverage', 'coatingPricePerKg', 'packingPerThousand', 'freightPerTonne', 'marginPercent'] as const;
  fc.assert(
    fc.property(fc.constantFrom(...keys), fc.double({ min: 1, max: 3, noNaN: true }), fc.integer({ min: 1, max: 1e6 }), (key, factor, quantity) => {
      const price = (rates: Rates) => quoteQuantity(quantity, terms({}, rates)).pricePerThousand!.value!;
      expect(price({ ...DEMO_RATES, [key]: DEMO_RATES[key]! * factor })).toBeGreaterThanOrEqual(price(DEMO_RATES));
    }),
    { seed: 24, numRuns: 100 },
  );
});

test('nor does a rate of packing and freight, by weight or by the pallet', () => {
  const packing = { isGlued: true, caliperMm: 0.45, caseLengthMm: 690, rows: 1, casesPerPallet: 30, deckMm: 144, caseKg: 0.45, palletKg: 25, blankM2: 0.0215, grammage: 300 };
  const base: Rates = { ...DEMO_RATES, packingPerThousand: undefined, casePrice: 0.8, palletPrice: 9 };
  fc.assert(
    fc.property(fc.constantFrom('casePrice', 'palletPrice', 'freightPerTonne', 'freightPerPallet'), fc.boolean(), fc.double({ min: 1, max: 3, noNaN: true }), fc.integer({ min: 1, max: 1e6 }), (key, byPallet, factor, quantity) => {
      const rates: Rates = { ...base, ...(byPallet && { freightPerPallet: 60 }) };
      const price = (of: Rates) => quoteQuantity(quantity, { ...terms({}, of), packing }).pricePerThousand!.value!;
      fc.pre(rates[key] !== undefined);
      expect(price({ ...rates, [key]: rates[key]! * factor })).toBeGreaterThanOrEqual(price(rates));
      expect(price(rates)).toBeLessThanOrEqual(price({ ...rates, marginPercent: 20 }));
    }),
    { seed: 25, numRuns: 100 },
  );
});

test('what nobody gave is null and named, what is known stays', () => {
  const quote = quoteQuantity(5000, terms({}, {}));
  expect(quote.boardCostPerThousand.value).toBeCloseTo(26.65, 2);
  expect(quote.pressHours!.value).toBeNull();
  expect(quote.cost.value).toBeNull();
  expect(quote.cost.missing).toEqual(expect.arrayContaining(['press rate', 'die-cutter rate', 'gluer rate', 'plate price', 'die price']));
  expect(quote.pricePerThousand).toBeUndefined();
});
