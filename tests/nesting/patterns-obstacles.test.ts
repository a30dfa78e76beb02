import { describe, expect, test } from 'vitest';
import type { Ring } from '../../src/geometry/point.ts';
import type { Candidate, KeepOut, Placement, Problem } from '../../src/layout/problem.ts';
import { patternSearches } from '../../src/nesting/searches/patterns.ts';
import { layoutIsValid } from '../../src/nesting/valid.ts';
import { generatedJob } from '../support/carton-generator.ts';
import { runSearches } from '../support/run-patterns.ts';

const candidatesOf = (problem: Problem): Candidate[] => runSearches(patternSearches, problem).candidates;

function bestOf(problem: Problem): readonly Placement[] {
  const candidates = candidatesOf(problem);
  for (const { placements } of candidates) expect(layoutIsValid(problem, placements)).toBe(true);
  return candidates.map(({ placements }) => placements).reduce((best, placements) => (placements.length > best.length ? placements : best), []);
}

const box = (minX: number, minY: number, maxX: number, maxY: number): Ring => [
  { x: minX, y: minY },
  { x: maxX, y: minY },
  { x: maxX, y: maxY },
  { x: minX, y: maxY },
];

/** Rectangles 100 × 60 mm with a gap of 4 on 1000 × 700 mm. */
function labels(keepOuts: readonly KeepOut[] = [], more: Partial<Problem> = {}): Problem {
  const usable = { minX: 0, minY: 0, maxX: 1_000_000, maxY: 700_000 };
  return {
    sheet: { width: 1_000_000, height: 700_000 },
    usable,
    printable: usable,
    lay: 'left',
    keepOuts,
    rules: { gap: 4000, bleed: 0, bleedMeeting: 'apart', commonKnife: false },
    parts: [{ id: 'label', outline: box(0, 0, 100_000, 60_000), openings: [], turns: [0, 2] }],
    demand: { kind: 'most' },
    locked: [],
    symmetry: 'none',
    ...more,
  };
}

describe('patterns around what stands on the sheet', () => {
  test('without anything the grid is full', () => {
    expect(bestOf(labels()).length).toBe(9 * 11);
  });

  test('a bar at the centre leaves whole rows on either side of it', () => {
    const bar: KeepOut = { kind: 'colour-bar', clearance: 3000, ring: box(0, 345_000, 1_000_000, 355_000) };
    expect(bestOf(labels([bar])).length).toBe(9 * (5 + 5));
  });

  test('a bar off the centre leaves rows of different numbers', () => {
    const bar: KeepOut = { kind: 'colour-bar', clearance: 3000, ring: box(0, 195_000, 1_000_000, 205_000) };
    expect(bestOf(labels([bar])).length).toBe(9 * (3 + 7));
  });

  test('a spoiled corner costs only the blanks in it', () => {
    const corner: KeepOut = { kind: 'spoiled', clearance: 0, ring: box(900_000, 600_000, 1_000_000, 700_000) };
    expect(bestOf(labels([corner])).length).toBeGreaterThanOrEqual(9 * 11 - 2);
  });

  test('locked blanks stay and the others keep clear of them', () => {
    const locked: Placement[] = [{ part: 0, turn: 0, x: 431_000, y: 322_000 }];
    const best = bestOf(labels([], { locked }));
    expect(best).toContainEqual(locked[0]);
    expect(best.length).toBeGreaterThanOrEqual(9 * 11 - 4 + 1);
  });

  test('cartons with bars and spoiled corners keep every rule', () => {
    for (const seed of [4, 7, 13]) expect(bestOf(generatedJob(seed).problem).length).toBeGreaterThan(0);
  });
});

describe('a given number of rows and columns', () => {
  test('exactly so many, as tight as they go', () => {
    const problem = labels([], { grid: { rows: 4, columns: 3 } });
    const candidates = candidatesOf(problem);
    expect(candidates.length).toBeGreaterThan(0);
    for (const { placements } of candidates) expect(placements.length).toBe(12);
    const plain = candidates.find(({ source }) => source === 'plain rows')!;
    expect(Math.max(...plain.placements.map(({ x }) => x))).toBe(2 * 104_000);
    expect(Math.max(...plain.placements.map(({ y }) => y))).toBe(3 * 64_000);
  });

  test('nothing where they do not fit', () => {
    expect(candidatesOf(labels([], { grid: { rows: 4, columns: 10 } }))).toEqual([]);
  });

  test('cartons head-to-tail where that is what fits', () => {
    const { problem } = generatedJob(1);
    const candidates = candidatesOf({ ...problem, grid: { rows: 3, columns: 3 } });
    for (const { placements } of candidates) {
      expect(placements.length).toBe(9);
      expect(layoutIsValid(problem, placements)).toBe(true);
    }
  });
});

test('given counts on a reel are left to other searches', () => {
  expect(candidatesOf(labels([], { demand: { kind: 'counts', counts: [5] } }))).toEqual([]);
});

test('the same problem and seed give the same candidates', () => {
  const { problem } = generatedJob(8);
  expect(runSearches(patternSearches.slice(0, 3), { ...problem })).toEqual(runSearches(patternSearches.slice(0, 3), { ...problem }));
});
