import { describe, expect, test } from 'vitest';
import { boardWeight, pileHeight, reelLength, sheetArea } from '../../src/estimate/board.ts';
import { breakEven } from '../../src/estimate/die-choice.ts';
import { coatingWeight, inkWeight } from '../../src/estimate/ink.ts';
import { runningMinutes } from '../../src/estimate/machine-time.ts';
import { sheetsNeeded, type Route } from '../../src/estimate/sheets-needed.ts';
import { makeQuote } from '../../src/pipeline/quote.ts';
import { readQuoteJob } from '../../src/pipeline/quote-job.ts';
import { GERMAN_TABLE } from '../../src/press/waste-table.ts';

const route: Route = { ups: 12, colours: 4, varnishUnits: 1, stages: ['die-cutting', 'gluing'] };
const job = { ups: 12, sheet: '1020x720', grammage: 300, quantities: [5000, 20000, 50000, 100000], colours: 4, varnishUnits: 1, stages: ['die-cutting', 'gluing'], boardPricePerTonne: 900, currency: 'EUR' };
const quote = (more: object = {}) => makeQuote(readQuoteJob({ ...job, ...more }, 'job.json', () => ({})));
const board = { widthMm: 1020, heightMm: 720, grammage: 300 };

// Waste: print-assistant.de, "Papierzuschuss berechnen"; the chain and its results were computed from it by hand.
describe('the worked demonstration with the published German table', () => {
  test('50 000 cartons, stage by stage', () => {
    const { chain, sheets } = sheetsNeeded(50_000, route, GERMAN_TABLE);
    expect(chain.map(({ stage, out, into }) => [stage, out, into])).toEqual([
      ['printing', 4292, 4545],
      ['die-cutting', 4209, 4292],
      ['gluing', 50_000, 50_506],
    ]);
    expect(sheets).toBe(4545);
  });

  test('4 575 sheets when the varnish unit’s own 30 are charged', () => {
    const { printing } = GERMAN_TABLE;
    const table = { ...GERMAN_TABLE, printing: { ...printing, varnish: { ...printing.varnish, setUpPerUnit: 30 } } };
    expect(sheetsNeeded(50_000, route, table).sheets).toBe(4575);
  });

  test.each([
    [5000, 672, 148.06, 26.65, 61.2],
    [20_000, 1964, 432.71, 19.47, 17.8],
    [50_000, 4545, 1001.35, 18.02, 9.1],
    [100_000, 8848, 1949.39, 17.54, 6.2],
  ])('%i cartons: %i sheets, %f kg, %f per 1000, + %f %%', (quantity, sheets, kg, perThousand, overs) => {
    const found = quote().quantities.find((one) => one.quantity === quantity)!;
    expect(found.needed.sheets).toBe(sheets);
    expect(found.boardWeight.value).toBeCloseTo(kg, 2);
    expect(found.boardCostPerThousand.value).toBeCloseTo(perThousand, 2);
    expect((sheets / found.needed.netSheets - 1) * 100).toBeCloseTo(overs, 1);
  });
});

// All computed from published inputs and rates that are invented.
describe('figures of the desk', () => {
  test('a die of 12 up owned against 15 up new: saves 3.78 per 1000, paid for from about 476 000 cartons', () => {
    const { die } = quote({ ups: 15, existingDie: { ups: 12 }, rates: { press: { speed: 9000, hourlyRate: 140 }, cutter: { speed: 7000, hourlyRate: 90 }, diePrice: 1800 } });
    expect(die!.saving.value).toBeCloseTo(3.78, 2);
    expect(Math.round(die!.breakEven!.value! / 1000)).toBe(476);
  });
  test('3 t of a made-to-order sheet: first reached between 155 400 and 155 500 cartons', () => {
    const { cartons } = quote({ board: { minimumTonnes: 3 } }).millMinimum!;
    expect(cartons).toBeGreaterThan(155_400);
    expect(cartons).toBeLessThanOrEqual(155_500);
  });
  test('5 000 sheets cut 720 long from a reel of 1 020: 3 600 m, 1 101.6 kg', () => {
    expect(reelLength(5000, 720).value).toBe(3600);
    expect(boardWeight(5000, board).value).toBeCloseTo(1101.6, 6);
  });
  test('the reel of a quote is as wide as one side, the other is cut', () => {
    const [, , purchase] = quote({ board: { reelWidth: 1020 } }).purchases;
    expect(purchase!.reel!.metres.value).toBeCloseTo(4545 * 0.72, 6);
    expect(purchase!.reel!.kg.value).toBeCloseTo(purchase!.kg, 6);
  });
  test('minutes of 4 545 sheets', () => {
    expect(runningMinutes(4545, 16_500)).toBeCloseTo(16.5, 1);
    expect(runningMinutes(4545, 9000)).toBeCloseTo(30.3, 1);
    expect(runningMinutes(4545, 7000)).toBeCloseTo(39, 1);
  });
  test('a pile of 4 545 sheets at 0.5 mm; 500 cartons glued flat', () => {
    expect(pileHeight(4545, 0.5).value! / 1000).toBeCloseTo(2.27, 2);
    expect(pileHeight(500, 0.9).value).toBe(450);
    expect(pileHeight(500, 1.35).value).toBeCloseTo(675, 9);
  });
  test('ink and coating', () => {
    expect(inkWeight(4545, sheetArea(board), 0.3, 1.5).value).toBeCloseTo(1.5, 2);
    expect(coatingWeight(4545, sheetArea({ widthMm: 1008, heightMm: 700 }), 5).value).toBeCloseTo(16, 1);
  });
  // pmcalculators.
  test('break-even of 2000 and 0.03 against 1500 and 0.035', () => expect(breakEven({ fixed: 2000, each: 0.03 }, { fixed: 1500, each: 0.035 })).toBeCloseTo(100_000, 3));
});
