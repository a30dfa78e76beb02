import { describe, expect, test } from 'vitest';
import { closedFormLimits } from '../../src/nesting/limits/closed-form.ts';
import { problemOf, rectangle, roundOutline } from '../support/problems.ts';

const TURNS = [0, 1, 2, 3] as const;

/**
 * Sheet, rectangle, optimum, area bound. Optima proved by five-block and L-shaped recursion and exhaustive skyline search; (49, 28, 8, 3) also Lobato,
 * Birgin and Morabito. In the rows marked `open` the optimum lies under every limit of closed form.
 */
const RECTANGLES = [
  [22, 16, 5, 3, 23], [30, 22, 7, 4, 23], [1000, 1000, 205, 159, 30], [43, 26, 7, 3, 53], [49, 28, 8, 3, 57], [57, 34, 7, 4, 69], [61, 35, 10, 3, 71],
  [61, 38, 6, 5, 77], [67, 40, 11, 3, 81], [93, 46, 13, 4, 82], [74, 46, 7, 5, 97], [1020, 720, 210, 148, 23], [1020, 720, 297, 105, 22],
  [1060, 760, 240, 170, 19], [740, 520, 111, 67, 50], [900, 640, 148, 105, 36], [1020, 720, 101, 73, 98], [450, 320, 85, 54, 29],
  [1020, 720, 95, 65, 117], [1040, 740, 148, 105, 49], [1200, 800, 400, 300, 8],
] as const;
const OPEN = [[34, 23, 5, 4, 38], [32, 27, 5, 4, 42], [53, 26, 7, 4, 48], [37, 30, 8, 3, 45]] as const;

describe('rectangles in both orientations', () => {
  test.each(RECTANGLES)('%i × %i of %i × %i: %i and not one more', (width, height, a, b, optimum) => {
    expect(closedFormLimits(problemOf(rectangle(a, b), [width, height], 0, TURNS))[0]!.ups).toBe(optimum);
  });

  test.each(OPEN)('%i × %i of %i × %i: never under %i', (width, height, a, b, optimum) => {
    expect(closedFormLimits(problemOf(rectangle(a, b), [width, height], 0, TURNS))[0]!.ups).toBe(optimum + 1);
  });
});

/**
 * Sheet, diameter, what must be reachable, what Oler's inequality (1961) for the true circle allows. Squares: Specht, packomania.com, radii of n circles in a unit square.
 */
const ROUNDS = [
  [800, 800, 100, 68, 71], [700, 1000, 50, 312, 318], [720, 1020, 63, 202, 209], [320, 450, 30, 175, 180],
  [350, 350, 100, 10, 13], [470, 470, 100, 21, 24], [550, 550, 100, 30, 33], [615, 615, 100, 39, 41], [660, 660, 100, 44, 48], [700, 700, 100, 49, 54],
] as const;

test.each(ROUNDS)('rounds: %i × %i of %i: between %i and %i', (width, height, diameter, reached, most) => {
  const limit = closedFormLimits(problemOf(roundOutline(diameter), [width, height], 0, [0, 2]))[0]!;
  expect(limit.by).toBe('ovals');
  expect(limit.ups).toBeGreaterThanOrEqual(reached);
  expect(limit.ups).toBeLessThanOrEqual(most);
});
