import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Ring } from '../../src/geometry/point.ts';
import { shiftRing } from '../../src/geometry/point.ts';
import { turnRing } from '../../src/geometry/turn.ts';
import type { Placement, Problem } from '../../src/layout/problem.ts';
import { layoutIsValid, nearPairs } from '../../src/nesting/valid.ts';
import { outlinesNearer, sharedArea } from '../support/slow-overlap.ts';

const square: Ring = [{ x: 0, y: 0 }, { x: 100, y: 0 }, { x: 100, y: 100 }, { x: 0, y: 100 }];
const angle: Ring = [{ x: 0, y: 0 }, { x: 100, y: 0 }, { x: 100, y: 40 }, { x: 40, y: 40 }, { x: 40, y: 100 }, { x: 0, y: 100 }];

function problemOf(outline: Ring, changes: Partial<Problem> = {}): Problem {
  return {
    sheet: { width: 1000, height: 1000 },
    usable: { minX: 10, minY: 10, maxX: 990, maxY: 990 },
    printable: { minX: 5, minY: 5, maxX: 995, maxY: 995 },
    lay: 'left',
    keepOuts: [],
    rules: { gap: 20, bleed: 5, bleedMeeting: 'apart', commonKnife: false },
    parts: [{ id: 'one', outline, openings: [], turns: [0, 1, 2] }],
    demand: { kind: 'most' },
    locked: [],
    symmetry: 'none',
    ...changes,
  };
}
const at = (x: number, y: number, turn: 0 | 1 | 2 | 3 = 0): Placement => ({ part: 0, turn, x, y });

describe('a valid layout', () => {
  test('keeps the gap to the micrometre, straight and round corners', () => {
    const problem = problemOf(square);
    expect(layoutIsValid(problem, [at(10, 10), at(130, 10), at(10, 130)])).toBe(true);
    expect(layoutIsValid(problem, [at(10, 10), at(129, 10)])).toBe(false);
    expect(layoutIsValid(problem, [at(10, 10), at(122, 126)])).toBe(true);
    expect(layoutIsValid(problem, [at(10, 10), at(122, 125)])).toBe(false);
    expect(layoutIsValid(problem, [at(10, 10), at(10, 10)])).toBe(false);
  });

  test('keeps to the usable area, the rotations and whole micrometres', () => {
    const problem = problemOf(square);
    expect(layoutIsValid(problem, [at(890, 890)])).toBe(true);
    expect(layoutIsValid(problem, [at(891, 890)])).toBe(false);
    expect(layoutIsValid(problem, [at(9, 10)])).toBe(false);
    expect(layoutIsValid(problem, [at(110, 10, 1)])).toBe(true);
    expect(layoutIsValid(problem, [at(109, 10, 1)])).toBe(false);
    expect(layoutIsValid(problem, [at(10, 110, 3)])).toBe(false);
    expect(layoutIsValid(problem, [at(10.5, 10)])).toBe(false);
  });

  test('keeps its bleed printable', () => {
    const rules = { gap: 20, bleed: 6, bleedMeeting: 'apart', commonKnife: false } as const;
    expect(layoutIsValid(problemOf(square, { rules }), [at(11, 11)])).toBe(true);
    expect(layoutIsValid(problemOf(square, { rules }), [at(10, 11)])).toBe(false);
  });

  test('stays clear of keep-outs of any shape and direction', () => {
    const spot: Ring = [{ x: 300, y: 300 }, { x: 350, y: 350 }, { x: 250, y: 350 }];
    for (const ring of [spot, spot.toReversed()]) {
      const problem = problemOf(angle, { keepOuts: [{ kind: 'spoiled', ring, clearance: 10 }] });
      expect(layoutIsValid(problem, [at(200, 200)])).toBe(true);
      expect(layoutIsValid(problem, [at(230, 240)])).toBe(false);
    }
  });

  test('keeps locked blanks', () => {
    const problem = problemOf(square, { locked: [at(500, 500)] });
    expect(layoutIsValid(problem, [at(10, 10), at(500, 500)])).toBe(true);
    expect(layoutIsValid(problem, [at(10, 10), at(501, 500)])).toBe(false);
  });

  test('agrees with every corner against every edge on random layouts', () => {
    const problem = problemOf(angle);
    const places = fc.record({ part: fc.constant(0), turn: fc.constantFrom(0 as const, 1 as const, 2 as const), x: fc.integer({ min: 110, max: 500 }), y: fc.integer({ min: 110, max: 500 }) });
    const seen = { valid: 0, faulty: 0 };
    fc.assert(
      fc.property(fc.array(places, { minLength: 2, maxLength: 4 }), (placements) => {
        const rings = placements.map((p) => shiftRing(turnRing(angle, p.turn), p));
        const expected = rings.every((a, i) => rings.every((b, j) => j <= i || (sharedArea(a, b) === 0 && !outlinesNearer(a, b, 20))));
        seen[expected ? 'valid' : 'faulty']++;
        expect(layoutIsValid(problem, placements)).toBe(expected);
      }),
      { seed: 41, numRuns: 300 },
    );
    expect(Math.min(seen.valid, seen.faulty)).toBeGreaterThan(30);
  });
});

test('near pairs are those of all pairs', () => {
  const boxes = fc.array(fc.record({ x: fc.integer({ min: 0, max: 60 }), y: fc.integer({ min: 0, max: 60 }), w: fc.integer({ min: 1, max: 20 }), h: fc.integer({ min: 1, max: 20 }) }), { maxLength: 12 });
  fc.assert(
    fc.property(boxes, fc.integer({ min: 0, max: 10 }), (specs, reach) => {
      const all = specs.map(({ x, y, w, h }) => ({ minX: x, minY: y, maxX: x + w, maxY: y + h }));
      const expected: string[] = [];
      all.forEach((a, i) => all.forEach((b, j) => {
        if (i < j && b.minX < a.maxX + reach && a.minX < b.maxX + reach && b.minY < a.maxY + reach && a.minY < b.maxY + reach) expected.push(`${i},${j}`);
      }));
      expect(nearPairs(all, reach).map(String).sort()).toEqual(expected.sort());
    }),
    { seed: 42, numRuns: 200 },
  );
});
