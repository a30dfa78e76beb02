import { describe, expect, test } from 'vitest';
import type { Turn } from '../../src/geometry/turn.ts';
import { solveStrip, stripLowerBound } from '../../src/nesting/strip.ts';
import { inlineRunner } from '../../src/nesting/tasks.ts';
import { layoutIsValid } from '../../src/nesting/valid.ts';
import { problemOf, rectangle, ringOf, type PointMm } from '../support/problems.ts';

const settings = { effort: 'quick', seed: 1, stop: () => undefined } as const;

/** Blanks on a reel, `width` wide; the longest cut-off is a metre. */
function reel(width: number, gap: number, turns: readonly Turn[], designs: readonly (readonly [outline: readonly PointMm[], ups: number])[]) {
  return problemOf(designs[0][0], [1000, width], gap, turns, {
    parts: designs.map(([outline], k) => ({ id: String(k), outline: ringOf(outline), openings: [], turns })),
    demand: { kind: 'counts', counts: designs.map(([, ups]) => ups) },
  });
}

describe('the shortest strip', () => {
  test('places exactly the counts wanted, as short as the closed form allows', async () => {
    const problem = reel(100, 0, [0], [[rectangle(50, 60), 2], [rectangle(50, 40), 2]]);
    const { best, length, lowerBound, stopped } = await solveStrip(problem, { ...settings, runner: inlineRunner() });
    expect(length).toBe(100_000);
    expect(lowerBound).toBe(100_000);
    expect(stopped).toBe('limit-met');
    expect(best!.placements.map(({ part }) => part).toSorted()).toEqual([0, 0, 1, 1]);
    expect(layoutIsValid(problem, best!.placements)).toBe(true);
  });

  test('keeps the gap between blanks and needs none at the edges', async () => {
    const problem = reel(100, 4, [0], [[rectangle(50, 48), 4]]);
    const { length } = await solveStrip(problem, { ...settings, runner: inlineRunner() });
    expect(length).toBe(104_000);
  });

  test('gives the same bytes however many lanes run at once', async () => {
    const problem = reel(90, 2, [0, 2], [[[[0, 0], [40, 0], [40, 15], [15, 15], [15, 50], [0, 50]], 3], [rectangle(20, 30), 3]]);
    const [one, four] = await Promise.all([1, 4].map((width) => solveStrip(problem, { ...settings, runner: inlineRunner(width) })));
    expect(JSON.stringify(four)).toBe(JSON.stringify(one));
    expect(layoutIsValid(problem, one.best!.placements)).toBe(true);
    expect(one.length).toBeGreaterThanOrEqual(one.lowerBound);
    expect(one.history.map(({ length }) => length)).toEqual(one.history.map(({ length }) => length).toSorted((a, b) => b - a));
  });

  test('is bounded by the longest blank where area says less', () => {
    expect(stripLowerBound(reel(100, 0, [0], [[rectangle(200, 10), 1]]), [0])).toBe(200_000);
  });
});
