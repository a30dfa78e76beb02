import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cheapestByQuantity } from '../../src/estimate/cheapest.ts';
import type { Priced } from '../../src/estimate/cost-line.ts';

const MOST = 1e7;
const linear = (fixed: number, each: number): Priced => ({ ups: 1, costAt: (quantity) => fixed + each * quantity });
/** Whole sheets: the cost goes up in stairs. */
const stairs = (fixed: number, each: number, ups: number): Priced => ({ ups, costAt: (quantity) => fixed + each * ups * Math.ceil(quantity / ups) });
const rangeAt = (winners: ReturnType<typeof cheapestByQuantity>, quantity: number) => winners.findLast(({ fromQuantity }) => fromQuantity <= quantity)!;

describe('which costs least, by quantity', () => {
  // pmcalculators: fixed 2000 and 1500, each 0.03 and 0.035: equal at 100 000; at 125 000 they cost 5 750 and 5 875.
  test('break-even of 2000 and 0.03 against 1500 and 0.035', () => {
    const winners = cheapestByQuantity([linear(2000, 0.03), linear(1500, 0.035)], MOST);
    expect(winners.map(({ candidate, turns }) => [candidate, turns])).toEqual([[1, undefined], [0, undefined]]);
    // Equal at 100 000: the first of them.
    expect([100_000, 100_001]).toContain(winners[1]!.fromQuantity);
  });

  test('three in turn; equal costs: the first stays', () => {
    const winners = cheapestByQuantity([linear(0, 0.1), linear(0, 0.1), linear(1000, 0.05), linear(10_000, 0.01)], MOST);
    expect(winners.map(({ candidate }) => candidate)).toEqual([0, 2, 3]);
  });

  test('what cannot be had in small lots wins only from its minimum on; what wears out wins up to its end', () => {
    const made: Priced = { ups: 1, costAt: (quantity) => (quantity < 155_443 ? undefined : 0.01 * quantity) };
    expect(cheapestByQuantity([linear(0, 0.1), made], MOST)).toEqual([{ fromQuantity: 0, candidate: 0 }, { fromQuantity: 155_443, candidate: 1 }]);
    const worn: Priced = { ups: 1, costAt: (quantity) => (quantity > 77_777 ? undefined : 0.01 * quantity) };
    expect(cheapestByQuantity([linear(0, 0.1), worn], MOST)).toEqual([{ fromQuantity: 0, candidate: 1 }, { fromQuantity: 77_778, candidate: 0 }]);
  });

  test('nothing to be had at all', () => expect(cheapestByQuantity([{ ups: 1, costAt: () => undefined }], MOST)).toEqual([]));

  // Ten ups of 1 m² against eleven of 1.1 m²: as much each, so whole sheets alone decide, for ever.
  test('two that differ by whole sheets alone take turns at every quantity', () => {
    const winners = cheapestByQuantity([stairs(0, 0.1, 10), stairs(0, 0.1, 11)], MOST);
    expect(winners).toEqual([{ fromQuantity: 0, candidate: expect.any(Number), turns: [0, 1] }]);
  });

  const sheets = fc.array(fc.record({ fixed: fc.integer({ min: 0, max: 300 }), each: fc.integer({ min: 60, max: 100 }), ups: fc.integer({ min: 1, max: 24 }) }), { minLength: 1, maxLength: 5 });

  test('at every quantity the least of all is the winner named, or one of those that take turns', () => {
    fc.assert(
      fc.property(sheets, (rows) => {
        const all = rows.map(({ fixed, each, ups }) => stairs(1000 * fixed, each, ups));
        const winners = cheapestByQuantity(all, MOST);
        expect(winners[0]!.fromQuantity).toBe(0);
        for (let quantity = 1; quantity <= 30_000; quantity += quantity < 3000 ? 1 : 7) {
          const costs = all.map(({ costAt }) => costAt(quantity)!);
          const { candidate, turns } = rangeAt(winners, quantity);
          if (turns) expect(turns.some((one) => costs[one] === Math.min(...costs)), `${quantity}`).toBe(true);
          else expect(costs[candidate], `${quantity}`).toBe(Math.min(...costs));
        }
      }),
      { numRuns: 20, seed: 4 },
    );
  });

  test('what takes turns does so in truth, and a long run of one winner is never hidden in it', () => {
    const all = [stairs(900_000, 80, 12), stairs(300_000, 100, 7)];
    const winners = cheapestByQuantity(all, MOST);
    expect(winners.map(({ turns }) => turns?.length ?? 1)).toEqual([1, 2, 1]);
    const [, zone, after] = winners;
    const least = (quantity: number) => (all[0]!.costAt(quantity)! <= all[1]!.costAt(quantity)! ? 0 : 1);
    expect(least(zone!.fromQuantity - 1)).toBe(1);
    expect(least(zone!.fromQuantity)).toBe(0);
    expect(least(after!.fromQuantity - 1)).toBe(1);
    expect(least(after!.fromQuantity)).toBe(0);
  });
});
