import { describe, expect, test } from 'vitest';
import type { Candidate, Limit, Placement, Problem } from '../../src/layout/problem.ts';
import type { Methods } from '../../src/nesting/driver.ts';
import type { Improvement } from '../../src/nesting/incumbents.ts';
import type { Search, SearchStep } from '../../src/nesting/search.ts';
import { solveWith } from '../../src/nesting/solve.ts';

const side = 10_000;
const square = [{ x: 0, y: 0 }, { x: side, y: 0 }, { x: side, y: side }, { x: 0, y: side }];
const usable = { minX: 0, minY: 0, maxX: 100_000, maxY: 100_000 };
const problem: Problem = {
  sheet: { width: 100_000, height: 100_000 },
  usable,
  printable: usable,
  lay: 'left',
  keepOuts: [],
  rules: { gap: 0, bleed: 0, bleedMeeting: 'cut', commonKnife: false },
  parts: [{ id: 'square', outline: square, openings: [], turns: [0] }],
  demand: { kind: 'most' },
  locked: [],
  symmetry: 'none',
};

const row = (count: number, step = side): Candidate => ({
  source: `row of ${count}`,
  placements: Array.from({ length: count }, (_, i): Placement => ({ part: 0, turn: 0, x: i * step, y: 0 })),
});
const search = (...steps: SearchStep[]): Search => ({ name: 'given steps', run: () => steps[Symbol.iterator]() as Iterator<SearchStep, void, void> });
const methods = (patterns: Search[], limit = 100, isValid: Methods['isValid'] = () => true): Methods => ({
  budgetOf: () => ({ patterns: 1e6, free: 0, laneWork: 0, pushes: false }),
  patterns,
  closedFormLimits: (): Limit[] => [{ ups: limit, value: limit + 0.5, by: 'area' }],
  isValid,
  pushTogether: async (_, candidate) => candidate,
});
const settings = { effort: 'quick', seed: 1, runner: { breathe: async () => {}, run: async () => [] }, stop: () => undefined } as const;

describe('the driver', () => {
  test('keeps the best layout and announces improvements that never get worse', async () => {
    const events: Improvement[] = [];
    const patterns = [search({ work: 1, candidate: row(3) }, { work: 1, candidate: row(2) }, { work: 1, candidate: row(5) })];
    const solution = await solveWith(methods(patterns), problem, { ...settings, onImprovement: (event) => events.push(event) });
    expect(solution.best?.placements).toHaveLength(5);
    expect(solution.stopped).toBe('effort');
    expect(solution.work).toBe(3);
    expect(events.map((event) => (event.kind === 'layout' ? event.ups : event.limit.by))).toEqual(['area', 3, 5]);
    expect(solution.history).toEqual(events);
  });

  test('stops at once when the limit is met', async () => {
    let later = 0;
    const greedy: Search = {
      name: 'counts its steps',
      *run() {
        later++;
        yield { work: 1 };
      },
    };
    const solution = await solveWith(methods([search({ work: 1, candidate: row(4) }, { work: 1 }), greedy], 4), problem, settings);
    expect(solution.stopped).toBe('limit-met');
    expect(later).toBe(0);
    expect(solution.work).toBe(1);
  });

  test('an invalid candidate is never taken', async () => {
    const patterns = [search({ work: 1, candidate: row(9) }, { work: 1, candidate: row(2) })];
    const solution = await solveWith(methods(patterns, 100, (_, candidate) => candidate.placements.length < 5), problem, settings);
    expect(solution.best?.placements).toHaveLength(2);
  });

  test('a stop keeps the best so far and gives its reason', async () => {
    let asked = 0;
    const patterns = [search({ work: 1, candidate: row(2) }, { work: 1, candidate: row(3) }, { work: 1, candidate: row(4) })];
    const solution = await solveWith(methods(patterns), problem, { ...settings, stop: () => (++asked > 1 ? 'seconds' : undefined) });
    expect(solution.stopped).toBe('seconds');
    expect(solution.best?.placements.length).toBeGreaterThan(0);
    expect(solution.best?.placements.length).toBeLessThan(4);
  });

  test('a search that never ends is held to its share of the counted work', async () => {
    const endless: Search = {
      name: 'endless',
      *run() {
        for (;;) yield { work: 50_000 };
      },
    };
    const solution = await solveWith(methods([endless, search({ work: 1, candidate: row(7) })]), problem, settings);
    expect(solution.best?.placements).toHaveLength(7);
  });

  test('among equal ups the regular layout comes first, and variants of one layout are no alternatives', async () => {
    const uneven = { ...row(4), placements: row(4).placements.map((p, i) => ({ ...p, x: p.x + i * i * 1000 })) };
    const shifted = { ...row(4), placements: row(4).placements.map((p) => ({ ...p, y: 5000 })) };
    const column = { ...row(4), source: 'column', placements: row(4).placements.map((p) => ({ ...p, x: 0, y: p.x })) };
    const patterns = [search({ work: 1, candidate: uneven }, { work: 1, candidate: row(4) }, { work: 1, candidate: shifted }, { work: 1, candidate: column })];
    const { best, alternatives } = await solveWith(methods(patterns), problem, { ...settings, layouts: 3 });
    expect(best?.figures.steps).toBe(1);
    expect(alternatives[0]).toBe(best);
    expect(alternatives.map((layout) => layout.figures.steps)).toEqual([1, 1, 3]);
    expect(alternatives.filter((layout) => layout.source === 'column')).toHaveLength(1);
  });
});
