import { describe, expect, test } from 'vitest';
import { packRectangles } from '../../src/nesting/patterns/rectangles/pack-rectangles.ts';
import type { PackedBox } from '../../src/nesting/patterns/rectangles/five-blocks.ts';

/**
 * Sheet, piece, most pieces, area bound. All optima computed and proved by five-block recursion, L-shaped recursion and
 * exhaustive skyline search. The hard ones are of the kind in Birgin, Lobato and Morabito, JORS 61 (2010) 306–320;
 * (49,28,8,3) is one that five blocks alone leave at 56. (74,46,7,5), 97, takes longest and is in bench/patterns.ts.
 */
const OPTIMA: readonly (readonly number[])[] = [
  [22, 16, 5, 3, 23], [30, 22, 7, 4, 23], [1000, 1000, 205, 159, 30], [43, 26, 7, 3, 53], [49, 28, 8, 3, 57],
  [57, 34, 7, 4, 69], [61, 35, 10, 3, 71], [61, 38, 6, 5, 77], [67, 40, 11, 3, 81], [93, 46, 13, 4, 82],
  [34, 23, 5, 4, 38], [32, 27, 5, 4, 42], [53, 26, 7, 4, 48], [37, 30, 8, 3, 45],
  [1020, 720, 210, 148, 23], [1020, 720, 297, 105, 22], [1060, 760, 240, 170, 19], [740, 520, 111, 67, 50],
  [900, 640, 148, 105, 36], [1020, 720, 101, 73, 98], [450, 320, 85, 54, 29], [1020, 720, 95, 65, 117],
  [1040, 740, 148, 105, 49], [1200, 800, 400, 300, 8],
];

/** Exercises of the trade with published or verified counts: sheet, piece, most pieces (hundredths of an inch or of a centimetre). */
const EXERCISES: readonly (readonly [string, readonly number[]])[] = [
  ['88 × 62 cm in 15 × 10 with strip, mediencommunity.de "Nutzenberechnung"', [88, 62, 15, 10, 34]],
  ['13 × 8 in 3 × 2, Ask Dr. Math 51791', [13, 8, 3, 2, 17]],
  ['100 × 70 cm in 15 × 12; published 32', [100, 70, 15, 12, 37]],
  ['50 × 70 cm in 14.8 × 21, mediencommunity 3.3', [500, 700, 148, 210, 9]],
  ['46 × 66 in 12 × 16 without grain', [46, 66, 12, 16, 14]],
  ['28 × 40 in 4.25 × 6.25; published 18', [2800, 4000, 425, 625, 41]],
  ['28 × 40 in 5 × 7', [28, 40, 5, 7, 32]],
  ['25 × 35.5 in 5 × 8', [250, 355, 50, 80, 21]],
  ['31 × 43 in 14 × 18; the area would allow 5', [31, 43, 14, 18, 4]],
  ['635 × 901.7 in 145 × 205', [6350, 9017, 1450, 2050, 18]],
  ['24 × 34 in 4.75 × 5.75; "30 up" in an exam paper is impossible', [2400, 3400, 475, 575, 29]],
  ['30 × 40 in 14 × 18', [30, 40, 14, 18, 4]],
];

function bestPacking([width, height, a, b]: readonly number[], enough = Infinity): readonly PackedBox[] {
  let best: readonly PackedBox[] = [];
  for (const { boxes } of packRectangles(width, height, a, b, enough)) if (boxes && boxes.length > best.length) best = boxes;
  return best;
}

function faultsOf(boxes: readonly PackedBox[], [width, height, a, b]: readonly number[]): number {
  const placed = boxes.map(({ x, y, turned }) => ({ x, y, right: x + (turned ? b : a), top: y + (turned ? a : b) }));
  const outside = placed.filter(({ x, y, right, top }) => x < 0 || y < 0 || right > width || top > height).length;
  const meeting = placed.filter((p, i) => placed.some((q, j) => j > i && p.x < q.right && q.x < p.right && p.y < q.top && q.y < p.top)).length;
  return outside + meeting;
}

describe('identical rectangles', () => {
  test.each(OPTIMA.map((row) => ({ row })))('%o', ({ row }) => {
    const boxes = bestPacking(row, row[4]);
    expect(faultsOf(boxes, row)).toBe(0);
    expect(boxes.length).toBe(row[4]);
  });

  test.each(EXERCISES)('%s', (_, row) => {
    const boxes = bestPacking(row, row[4]);
    expect(faultsOf(boxes, row)).toBe(0);
    expect(boxes.length).toBe(row[4]);
  });

  test('nothing beyond a proved optimum is found where the area would allow it', () => {
    for (const row of [[34, 23, 5, 4, 38], [32, 27, 5, 4, 42]]) expect(bestPacking(row).length).toBe(row[4]);
  });
});
