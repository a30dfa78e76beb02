import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { roundedShares } from '../../src/render/shares.ts';

describe('shares in print', () => {
  test('three equal parts add up', () => {
    expect(roundedShares([1, 1, 1], 1)).toEqual([0.334, 0.333, 0.333]);
  });

  test('always add up to one, each within one step of the true share', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 1e12 }), { minLength: 1, maxLength: 12 }).filter((parts) => parts.some((part) => part > 0)), (parts) => {
        const total = parts.reduce((sum, part) => sum + part, 0);
        const shares = roundedShares(parts, 1);
        expect(shares.reduce((sum, share) => sum + Math.round(share * 1000), 0)).toBe(1000);
        shares.forEach((share, i) => expect(Math.abs(share - parts[i]! / total)).toBeLessThanOrEqual(0.001 + 1e-12));
      }),
      { seed: 1 },
    );
  });
});
