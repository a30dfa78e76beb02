import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cheapestAtQuantities, compareCosts, type CostTerms, type SheetToCost } from '../../src/pipeline/compare-costs.ts';
import { DEMO_RATES } from '../../src/press/demo-rates.ts';
import type { Rates } from '../../src/press/rates.ts';
import { squareMetres, type SheetCandidate } from '../../src/press/sheet-candidates.ts';
import { GERMAN_TABLE } from '../../src/press/waste-table.ts';

const terms = (more: Partial<CostTerms> = {}): CostTerms => ({
  quantities: [5000, 20_000, 100_000],
  route: { colours: 4, varnishUnits: 1, stages: ['die-cutting', 'gluing'] },
  grammage: 300,
  pricePerTonne: 900,
  currency: 'EUR',
  waste: GERMAN_TABLE,
  rates: DEMO_RATES,
  ...more,
});
const on = (width: number, height: number, ups: number, more: Partial<SheetCandidate & { ownDie: boolean }> = {}): SheetToCost => {
  const sheet = { width, height };
  return { candidate: { sheet, grain: 'x', origin: { kind: 'stock' }, boughtM2: squareMetres(sheet), ...more }, ups, ownDie: more.ownDie ?? false };
};

// German table (print-assistant.de), 12 up on 720 × 1020 of 300 g/m² at 900 a tonne (invented): figures computed from it by hand.
describe('one sheet as the desk counts it', () => {
  const [costs] = compareCosts([on(1020, 720, 12)], terms()).sheets;

  test('sheets and board per thousand', () => {
    expect(costs.sheets).toEqual([672, 1964, 8848]);
    [26.65, 19.47, 17.54].forEach((perThousand, i) => expect(costs.boardPerThousand[i]).toBeCloseTo(perThousand, 2));
  });

  test('220.32 kg a thousand sheets at 900 a tonne are 198.288 a thousand sheets: the same cost either way', () => {
    const [byThousand] = compareCosts([on(1020, 720, 12, { pricePerThousand: 198.288 })], terms({ pricePerTonne: undefined })).sheets;
    byThousand.perThousand.forEach((cost, i) => expect(cost).toBeCloseTo(costs.perThousand[i]!, 9));
  });

  test('a mill that makes from 3 t: first reached between 155 400 and 155 500 cartons', () => {
    const { sheets: [made], winners } = compareCosts([on(1020, 720, 12, { minimumTonnes: 3 })], terms());
    expect(made.fromCartons).toBeGreaterThan(155_400);
    expect(made.fromCartons).toBeLessThanOrEqual(155_500);
    expect(made.perThousand).toEqual([null, null, null]);
    expect(winners).toEqual([{ fromQuantity: made.fromCartons, candidate: 0 }]);
  });

  test('a die that stands saves the die and nothing else', () => {
    const [own] = compareCosts([on(1020, 720, 12, { ownDie: true })], terms()).sheets;
    [5000, 20_000, 100_000].forEach((quantity, i) => expect(((costs.perThousand[i]! - own.perThousand[i]!) * quantity) / 1000).toBeCloseTo(DEMO_RATES.diePrice!, 6));
  });

  test('without grammage or a rate the money is open and says why; board decides', () => {
    expect(compareCosts([on(1020, 720, 12)], terms({ grammage: undefined }))).toMatchObject({ measure: 'board', missing: ['grammage'] });
    const { diePrice: _, ...rest } = DEMO_RATES;
    expect(compareCosts([on(1020, 720, 12)], terms({ rates: rest }))).toMatchObject({ measure: 'board', missing: ['die price'] });
  });
});

const sheets = fc.array(
  fc.record({ width: fc.integer({ min: 400, max: 1400 }), height: fc.integer({ min: 300, max: 1000 }), ups: fc.integer({ min: 1, max: 60 }) }).map(({ width, height, ups }) => on(width, height, ups)),
  { minLength: 1, maxLength: 5 },
);

test('the winner at a quantity costs least there, or takes turns with the one that does', () => {
  fc.assert(
    fc.property(sheets, (all) => {
      const asked = terms();
      const { winners, sheets: costs } = compareCosts(all, asked);
      cheapestAtQuantities(all, asked).forEach((cheapest, i) => {
        const { candidate, turns = [candidate] } = winners.findLast(({ fromQuantity }) => fromQuantity <= asked.quantities[i])!;
        expect(Math.min(...turns.map((one) => costs[one].perThousand[i]!))).toBeCloseTo(costs[cheapest!].perThousand[i]!, 9);
      });
    }),
    { numRuns: 15, seed: 5 },
  );
});

test('no rate that rises makes any sheet cheaper', () => {
  const raised: readonly [string, (rates: Rates) => Rates][] = [
    ['press', (rates) => ({ ...rates, press: { ...rates.press, hourlyRate: 200 } })],
    ['cutter', (rates) => ({ ...rates, cutter: { ...rates.cutter, hourlyRate: 150 } })],
    ['plates', (rates) => ({ ...rates, platePrice: 40 })],
    ['die', (rates) => ({ ...rates, diePrice: 3000 })],
    ['ink', (rates) => ({ ...rates, inkPricePerKg: 30 })],
    ['freight', (rates) => ({ ...rates, freightPerTonne: 120 })],
  ];
  const all = [on(1020, 720, 12), on(720, 510, 5)];
  const before = compareCosts(all, terms()).sheets;
  for (const [name, raise] of raised) {
    const after = compareCosts(all, terms({ rates: raise(DEMO_RATES) })).sheets;
    after.forEach(({ perThousand }, s) => perThousand.forEach((cost, i) => expect(cost, name).toBeGreaterThan(before[s].perThousand[i]!)));
  }
  const dearer = compareCosts(all, terms({ pricePerTonne: 1000 })).sheets;
  dearer.forEach(({ perThousand }, s) => perThousand.forEach((cost, i) => expect(cost).toBeGreaterThan(before[s].perThousand[i]!)));
});
