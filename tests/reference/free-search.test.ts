import { describe, expect, test } from 'vitest';
import { standardMethods } from '../../src/nesting/methods.ts';
import { solveWith } from '../../src/nesting/solve.ts';
import { solveStrip } from '../../src/nesting/strip.ts';
import { inlineRunner } from '../../src/nesting/tasks.ts';
import { polyominoes, rounds, strips, trapezoids, type MustReach } from '../support/must-reach.ts';

/** Ups of a run that ends as soon as the published number is there. `patterns` false: the free search from nothing. */
async function reach({ problem, ups }: MustReach, patterns: boolean): Promise<number> {
  let best = 0;
  const methods = { ...standardMethods, budgetOf: () => ({ patterns: 4e6, free: 6e7, laneWork: 4e5, pushes: false }), ...(patterns ? {} : { patterns: [] }) };
  await solveWith(methods, problem, {
    effort: 'quick',
    seed: 1,
    runner: inlineRunner(),
    stop: () => (best >= ups ? 'interrupted' : undefined),
    onImprovement: (event) => {
      if (event.kind === 'layout') best = event.ups;
    },
  });
  return best;
}

describe('polyominoes in a square, not mirrored', () => {
  // The others: bench/must-reach.ts.
  const small = polyominoes().filter(({ name }) => /in [68]/.test(name));
  // Beside the numbers: integer programming; OEIS A256535 and A214294 for two of the rows.
  test.each(small.map((item) => [item.name, item] as const))('%s', async (_, item) => {
    expect(await reach(item, false)).toBe(item.ups);
  });
});

test.each(trapezoids().slice(0, 1).map((item) => [item.name, item] as const))('%s', async (_, item) => {
  // Longfield, Sheet Metal Drafting, 1921, p. 25; with quarter turns computed.
  expect(await reach(item, true)).toBeGreaterThanOrEqual(item.ups);
});

const fewRounds = rounds().filter(({ ups }) => ups <= 21);
test.each(fewRounds.map((item) => [item.name, item] as const))('%s', async (_, item) => {
  // Specht, packomania: largest radius of n circles in a unit square.
  expect(await reach(item, true)).toBeGreaterThanOrEqual(item.ups);
});

// At normal effort, as the lengths are asked for; a run ends as soon as the length is met.
describe('strips of proved length', () => {
  // Lengths end on whole micrometres; slanted contacts and the rounding of each blank cost a few of them.
  const ROUNDING_MM = 0.01;
  const soon = ['three twice, quarter turns', 'three twice on 9, half turns', 'three twice, half turns, gap 0.7', 'six of fu, gap 3.8', 'eight of fu'];
  const few = strips().filter(({ name }) => soon.includes(name));
  test.each(few.map((item) => [item.name, item] as const))('%s', async (_, { problem, length }) => {
    let best = Infinity;
    const solution = await solveStrip(problem, {
      effort: 'normal',
      seed: 1,
      runner: inlineRunner(),
      stop: () => (best <= length + ROUNDING_MM ? 'interrupted' : undefined),
      onImprovement: (event) => {
        best = event.length / 1000;
      },
    });
    // With a gap the published pieces are grown with sharp corners; a true distance may do with less.
    if (problem.rules.gap === 0) expect(solution.length / 1000).toBeGreaterThan(length - ROUNDING_MM);
    expect(best).toBeLessThanOrEqual(length + ROUNDING_MM);
  });
});
