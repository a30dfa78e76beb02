import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cheapestByQuantity, type Priced } from '../../src/estimate/cheapest.ts';

const MOST = 1e7;
const linear = (fixed: number, each: number): Priced => ({ ups: 1, costAt: (quantity) => fixed + each * quantity });
/** Whole sheets: the cost goes up in stairs. */
const stairs = (fixed: number, each: number, ups: number): Priced => ({ ups, costAt: (quantity) => fixed + each * ups * Math.ceil(quantity / ups) });
const winnerAt = (winners: ReturnType<typeof cheapestByQuantity>, quantity: number) => winners.findLast(({ fromQuantity }) => fromQuantity <= quantity)?.candidate;

describe('which costs least, by quantity', () => {
  // pmcalculators: fixed 2000 and 1500, each 0.03 and 0.035: equal at 100 000; at 125 000 they cost 5 750 and 5 875.
  test('break-even of 2000 and 0.03 against 1500 and 0.035', () => {
    const winners = cheapestByQuantity([linear(2000, 0.03), linear(1500, 0.035)], MOST);
    expect(winners).toEqual([{ fromQuantity: 0, candidate: 1 }, { fromQuantity: 100_001, candidate: 0 }]);
  });

  test('three in turn; equal costs: the first stays', () => {
    const winners = cheapestByQuantity([linear(0, 0.1), linear(0, 0.1), linear(1000, 0.05), linear(10_000, 0.01)], MOST);
    expect(winners.map(({ candidate }) => candidate)).toEqual([0, 2, 3]);
  });

  test('what cannot be had in small lots wins only from its minimum on', () => {
    const made: Priced = { ups: 1, costAt: (quantity) => (quantity < 155_443 ? undefined : 0.01 * quantity) };
    expect(cheapestByQuantity([linear(0, 0.1), made], MOST)).toEqual([{ fromQuantity: 0, candidate: 0 }, { fromQuantity: 155_443, candidate: 1 }]);
  });

  test('nothing to be had at all', () => expect(cheapestByQuantity([{ ups: 1, costAt: () => undefined }], MOST)).toEqual([]));

  const sheets = fc.array(fc.record({ fixed: fc.integer({ min: 0, max: 3000 }), each: fc.integer({ min: 5, max: 100 }), ups: fc.integer({ min: 1, max: 40 }) }), { minLength: 1, maxLength: 6 });

  test('away from where stairs cross, the winner is the cheapest; from its quantity on it beats the one before it', () => {
    fc.assert(
      fc.property(sheets, fc.integer({ min: 1, max: 1e6 }), (rows, quantity) => {
        const all = rows.map(({ fixed, each, ups }) => stairs(1000 * fixed, each, ups));
        const winners = cheapestByQuantity(all, MOST);
        expect(winners[0]!.fromQuantity).toBe(0);
        const cost = (candidate: number, at: number) => all[candidate]!.costAt(at)!;
        const best = Math.min(...all.map((_, candidate) => cost(candidate, quantity)));
        const oneSheet = Math.max(...rows.map(({ each, ups }) => each * ups));
        expect(cost(winnerAt(winners, quantity)!, quantity)).toBeLessThanOrEqual(best + 12 * oneSheet + 1e-6);
        winners.slice(1).forEach(({ fromQuantity, candidate }, i) => {
          const before = winners[i]!.candidate;
          const until = Math.min(winners[i + 2]?.fromQuantity ?? MOST, fromQuantity + 3000);
          for (let at = fromQuantity; at < until; at += 7) expect(cost(candidate, at)).toBeLessThan(cost(before, at));
        });
      }),
      { numRuns: 60, seed: 4 },
    );
  });
});
