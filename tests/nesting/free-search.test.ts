import { describe, expect, test } from 'vitest';
import { standardMethods } from '../../src/nesting/methods.ts';
import { solveWith } from '../../src/nesting/solve.ts';
import { inlineRunner } from '../../src/nesting/tasks.ts';
import { layoutIsValid } from '../../src/nesting/valid.ts';
import { problemOf, ringOf } from '../support/problems.ts';

/** A corner card with legs of 45 and 50 mm. */
const corner = [[0, 0], [120, 0], [120, 45], [50, 45], [50, 130], [0, 130]] as const;

const methods = { ...standardMethods, budgetOf: () => ({ patterns: 0, free: 3_200_000, laneWork: 400_000, pushes: true }), patterns: [] };
const settings = { effort: 'quick', seed: 1, stop: () => undefined } as const;

describe('the free search', () => {
  const problem = problemOf(corner, [400, 300], 4, [0, 1, 2, 3]);

  test('interlocks corner cards and keeps every rule', async () => {
    const { best } = await solveWith(methods, problem, { ...settings, runner: inlineRunner() });
    expect(layoutIsValid(problem, best!.placements)).toBe(true);
    expect(best!.placements.length).toBeGreaterThanOrEqual(8);
  });

  test('gives the same bytes however many lanes run at once', async () => {
    const widths = await Promise.all([1, 2, 8].map((width) => solveWith(methods, problem, { ...settings, runner: inlineRunner(width) })));
    const [one, two, eight] = widths.map((solution) => JSON.stringify(solution));
    expect(two).toBe(one);
    expect(eight).toBe(one);
  });

  test('leaves keep-outs alone and builds around locked blanks', async () => {
    const locked = [{ part: 0, turn: 0 as const, x: 130_000, y: 80_000 }];
    const keepOuts = [{ kind: 'spoiled', ring: ringOf([[300, 200], [400, 200], [400, 300]]), clearance: 2000 }];
    const around = problemOf(corner, [400, 300], 4, [0, 1, 2, 3], { locked, keepOuts });
    const { best } = await solveWith(methods, around, { ...settings, runner: inlineRunner() });
    expect(best!.placements).toContainEqual(locked[0]);
    expect(layoutIsValid(around, best!.placements)).toBe(true);
    expect(best!.placements.length).toBeGreaterThanOrEqual(4);
  });

  test('ends soon with what it has when told to stop', async () => {
    const solution = await solveWith(methods, problem, { ...settings, runner: inlineRunner(), stop: () => 'interrupted' });
    expect(solution.stopped).toBe('interrupted');
    expect(solution.best?.placements.length).toBeGreaterThan(0);
    expect(solution.work).toBeLessThan(1.2e6);
  });
});
