import { expect, test } from 'vitest';
import { boardChart, costChart, looksOf } from '../../src/render/compare-charts.ts';
import type { CompareFacts, ComparedSheetFacts } from '../../src/render/compare-facts.ts';
import { createFormat } from '../../src/render/format.ts';
import { englishCompare } from '../../src/render/messages/english-compare.ts';

/** A sheet whose cost per thousand is `fixed` shared out over the quantity plus `running`. */
function sheet(width: number, fixed: number, running: number, boardM2PerThousand: number): ComparedSheetFacts {
  const curve = [2500, 20_000, 200_000].map((quantity) => ({ quantity, cost: (1000 * fixed) / quantity + running }));
  return { sheet: { width, height: 700 }, grain: undefined, origin: { kind: 'stock' }, ups: 8, upperBound: 8, searched: 'full', boardM2PerThousand, die: undefined, curve } as unknown as ComparedSheetFacts;
}

const facts = {
  quantities: [5000, 100_000],
  currency: 'EUR',
  sheets: [sheet(1000, 900, 40, 90), sheet(900, 700, 60, 95), sheet(800, 1000, 30, 80), sheet(700, 2000, 90, 99)],
  winners: [
    { fromQuantity: 0, candidate: 1 },
    { fromQuantity: 20_000, candidate: 2 },
  ],
  leastBoard: 2,
} as unknown as CompareFacts;
const format = createFormat('en');

test('a sheet has one letter and one colour in all charts', () => {
  const looks = looksOf(facts);
  expect([...looks.keys()]).toEqual([0, 1, 2]);
  const charts = [costChart(facts, englishCompare, format)!, boardChart(facts, englishCompare, format)];
  for (const [index, { letter, colour }] of looks) {
    for (const chart of charts) {
      expect(chart).toContain(`${letter} · ${englishCompare.size(facts.sheets[index]!, format)}`);
      expect(chart).toContain(`"${colour}"`);
    }
  }
});

test('lines that coincide are drawn one inside the other', () => {
  const same = { ...facts, sheets: [facts.sheets[0]!, facts.sheets[0]!, facts.sheets[2]!] } as CompareFacts;
  const widths = [...costChart(same, englishCompare, format)!.matchAll(/stroke-width="([\d.]+)"/g)].map(([, width]) => Number(width));
  const drawn = widths.slice(0, 3);
  expect(drawn).toEqual(drawn.toSorted((a, b) => b - a));
  expect(new Set(drawn).size).toBe(3);
});

test('without costs the usual sheet and the one with least board are named', () => {
  const bare = { ...facts, sheets: facts.sheets.map((one) => ({ ...one, curve: [] })) };
  expect([...looksOf(bare).keys()]).toEqual([0, 2]);
  expect(costChart(bare, englishCompare, format)).toBeUndefined();
});
