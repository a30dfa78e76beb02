import { describe, expect, test } from 'vitest';
import { mixedStraightCuts } from '../../src/nesting/patterns/rectangles/mixed-straight-cuts.ts';
import { straightCuts } from '../../src/nesting/patterns/rectangles/straight-cuts.ts';

/**
 * Straight-through cuts of identical rectangles, both ways round. 15 × 12 on 100 × 70 and 4.25 × 6.25 in on 28 × 40 in:
 * best 36 and 40 against 37 and 41 die-cut (worked out by exhaustive recursion for the trade exercises of referate-max.de
 * and of two editions of a printing encyclopaedia). 88 × 62 with 15 × 10: 34 (mediencommunity.de, Nutzenberechnung);
 * 13 × 8 with 3 × 2: 17 (Ask Dr. Math 51791).
 */
test.each([
  [100, 70, 15, 12, 36],
  [2800, 4000, 425, 625, 40],
  [88, 62, 15, 10, 34],
  [13, 8, 3, 2, 17],
])('%d × %d, pieces %d × %d: %d', (width, height, a, b, count) => {
  const { boxes, exact } = straightCuts(width, height, a, b, true);
  expect({ count: boxes.length, exact }).toEqual({ count, exact: true });
});

describe('several sizes, each as often as one likes, not turned, worth their area', () => {
  /**
   * gcut1 of Beasley, Algorithms for unconstrained two-dimensional guillotine cutting, JORS 36 (1985) 297–306: published
   * optimum 56 460. The sizes are those of the OR-Library as remembered; that the optimum comes out to the unit confirms them.
   */
  test('gcut1: 56 460', () => {
    const sizes = [[167, 184], [114, 118], [167, 152], [83, 140], [70, 86], [143, 166], [120, 160], [66, 148], [87, 141], [69, 165]] as const;
    const found = mixedStraightCuts(250, 250, sizes.map(([width, height]) => ({ width, height, worth: width * height })))!;
    expect(found.worth).toBe(56_460);
    expect(found.placed.reduce((sum, { piece }) => sum + sizes[piece]![0] * sizes[piece]![1], 0)).toBe(56_460);
  });
});
