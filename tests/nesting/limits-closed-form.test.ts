import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BoundName, Limit, Problem } from '../../src/layout/problem.ts';
import { closedFormLimits } from '../../src/nesting/limits/closed-form.ts';
import { grownAreaBelow } from '../../src/nesting/limits/area-limit.ts';
import { grant } from '../../src/nesting/limits/granted.ts';
import { hexagonLimit } from '../../src/nesting/limits/hexagon-limit.ts';
import { leastHexagonBelow } from '../../src/nesting/limits/least-hexagon.ts';
import { ovalsLimit } from '../../src/nesting/limits/ovals-limit.ts';
import { problemOf, rectangle, ringOf, roundOutline, type PointMm } from '../support/problems.ts';

function by(name: BoundName, problem: Problem): Limit | undefined {
  return closedFormLimits(problem).find((limit) => limit.by === name);
}

const TEE: PointMm[] = [[40, 0], [80, 0], [80, 80], [120, 80], [120, 120], [0, 120], [0, 80], [40, 80]];

describe('area', () => {
  test('of a grown square is its own, its sides and the round corners', () => {
    const area = grownAreaBelow(ringOf(rectangle(100, 100)), 2000) / 1e6;
    const exact = 100 * 100 + 4 * 100 * 2 + Math.PI * 4;
    expect(area).toBeLessThanOrEqual(exact);
    expect(area).toBeGreaterThan(exact * 0.9999);
  });

  test('of a grown T fills its inner corners only once', () => {
    // Sides times 2, six quarter discs at outer corners, less the squares that two sides share at the two inner corners.
    const exact = 120 * 40 + 40 * 80 + 480 * 2 + 6 * Math.PI - 2 * 4;
    const area = grownAreaBelow(ringOf(TEE), 2000) / 1e6;
    expect(area).toBeLessThanOrEqual(exact);
    expect(area).toBeGreaterThan(exact * 0.9999);
  });

  test('a keep-out takes its area off', () => {
    const bar = { kind: 'colour-bar', ring: ringOf([[0, 0], [300, 0], [300, 20], [0, 20]]), clearance: 2000 };
    const free = by('area', problemOf(rectangle(30, 30), [300, 200], 4, [0]))!;
    const barred = by('area', problemOf(rectangle(30, 30), [300, 200], 4, [0], { keepOuts: [bar] }))!;
    expect(free.value - barred.value).toBeCloseTo((300 * 20) / (34 * 34 - 4 * 4 + Math.PI * 4), 1);
  });

  test('on either side of a bar across the sheet blanks are counted by themselves', () => {
    // 4.4 squares of 90 would go up a sheet without the bar; 1.9 and 2.4 beside it.
    const bar = { kind: 'colour-bar', ring: ringOf([[-1, 180], [101, 180], [101, 186], [-1, 186]]), clearance: 2000 };
    const limits = closedFormLimits(problemOf(rectangle(90, 90), [100, 410], 4, [0], { keepOuts: [bar] }));
    expect(limits.map(({ by, ups }) => [by, ups])).toEqual([['rectangles', 3], ['area', 4]]);
    const short = { ...bar, ring: ringOf([[0, 180], [100, 180], [100, 186], [0, 186]]) };
    expect(closedFormLimits(problemOf(rectangle(90, 90), [100, 410], 4, [0], { keepOuts: [short] }))[0]!.ups).toBe(4);
  });

  test('of several designs the smallest counts', () => {
    const small = problemOf(rectangle(20, 20), [200, 200], 4, [0]);
    const both = { ...small, parts: [{ id: 'large', outline: ringOf(rectangle(90, 90)), openings: [], turns: [0] as const }, ...small.parts] };
    expect(closedFormLimits(both)).toEqual([by('area', small)]);
  });
});

describe('hexagons around a body', () => {
  test('a regular hexagon is its own', () => {
    const ring = ringOf([[2, 0], [6, 0], [8, 3.464], [6, 6.928], [2, 6.928], [0, 3.464]]);
    expect(leastHexagonBelow(ring) / 1e6).toBeCloseTo(6 * 6.928, 6);
  });

  test('a disc has the regular one, 2 √3 r²', () => {
    const area = leastHexagonBelow(ringOf(roundOutline(100, 96))) / 1e6;
    expect(area).toBeGreaterThan(2 * Math.sqrt(3) * 2500 * 0.9999);
    expect(area).toBeLessThan(2 * Math.sqrt(3) * 2500 * 1.001);
  });

  test('a regular octagon gives its packing density, (4 + 4 √2) / (5 + 4 √2)', () => {
    const ring = ringOf(Array.from({ length: 8 }, (_, k): PointMm => [500 * Math.cos((k * Math.PI) / 4), 500 * Math.sin((k * Math.PI) / 4)]));
    const area = 2 * Math.SQRT2 * 250_000;
    expect(area / (leastHexagonBelow(ring) / 1e6)).toBeCloseTo((4 + 4 * Math.SQRT2) / (5 + 4 * Math.SQRT2), 5);
  });

  test('no hexagon found by trying is smaller', () => {
    const angles = fc.uniqueArray(fc.integer({ min: 0, max: 359 }), { minLength: 5, maxLength: 20 }).map((list) => list.sort((a, b) => a - b));
    fc.assert(
      fc.property(angles, fc.array(fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), { minLength: 6, maxLength: 6 }), (corners, sides) => {
        const ring = corners.map((degrees) => ({ x: Math.round(1e6 * Math.cos((degrees * Math.PI) / 180)), y: Math.round(7e5 * Math.sin((degrees * Math.PI) / 180)) }));
        expect(leastHexagonBelow(ring)).toBeLessThanOrEqual(areaAround(ring, sides.sort((a, b) => a - b)));
      }),
      { numRuns: 30, seed: 7 },
    );
  });
});

/** Area of the polygon around the ring whose sides have the given outward normals, by angle; Infinity where it is not closed. */
function areaAround(ring: readonly { x: number; y: number }[], normals: readonly number[]): number {
  const lines = normals.map((angle) => ({ x: Math.cos(angle), y: Math.sin(angle) })).map((n) => ({ ...n, reach: Math.max(...ring.map((p) => p.x * n.x + p.y * n.y)) }));
  let doubled = 0;
  const corners = lines.map((a, i) => {
    const b = lines[(i + 1) % lines.length]!;
    const turn = a.x * b.y - a.y * b.x;
    return turn <= 1e-6 ? undefined : { x: (a.reach * b.y - b.reach * a.y) / turn, y: (a.x * b.reach - b.x * a.reach) / turn };
  });
  for (const [i, p] of corners.entries()) {
    const q = corners[(i + 1) % corners.length];
    if (!p || !q) return Infinity;
    doubled += p.x * q.y - p.y * q.x;
  }
  return doubled / 2;
}

describe('inner rectangles', () => {
  test('a label with round corners is held by rows and columns', () => {
    // 90 × 60, corners of radius 4, on 743 × 552: 82 × 60 lies inside, grown 83.1 × 63.8, of which 8 × 8 fit; by area 69.
    const corner = (x: number, y: number, from: number) => [0, 30, 60, 90].map((d): PointMm => [x + 4 * Math.cos(((from + d) * Math.PI) / 180), y + 4 * Math.sin(((from + d) * Math.PI) / 180)]);
    const label = [...corner(86, 4, 270), ...corner(86, 56, 0), ...corner(4, 56, 90), ...corner(4, 4, 180)];
    expect(by('rectangles', problemOf(label, [743, 552], 4, [0, 2]))!.ups).toBe(64);
  });

  test('two squares may lie corner to corner, nearer than the gap in both directions', () => {
    // Each side 203: the corners are 3 mm apart in x and in y, so 4.24 mm apart.
    expect(closedFormLimits(problemOf(rectangle(100, 100), [203, 203], 4, [0]))[0]!.ups).toBeGreaterThanOrEqual(2);
    expect(closedFormLimits(problemOf(rectangle(100, 100), [203, 102], 4, [0]))[0]!.ups).toBe(1);
  });

  test('turned by 90° columns and rows change places', () => {
    expect(by('rectangles', problemOf(rectangle(50, 20), [205, 100], 0, [0, 2]))!.ups).toBe(20);
    expect(by('rectangles', problemOf(rectangle(50, 20), [205, 100], 0, [1, 3]))!.ups).toBe(20);
    expect(by('rectangles', problemOf(rectangle(50, 20), [199, 100], 0, [1, 3]))!.ups).toBe(18);
  });
});

describe('all closed forms', () => {
  test('grant the judge its tolerance', () => {
    // Ten columns of 100 with gaps of 4 − 0.002 between sides 0.002 further out on either edge.
    const need = 10 * 100 + 9 * (4 - 0.002) - 2 * 0.002;
    expect(closedFormLimits(problemOf(rectangle(100, 50), [need, 60], 4, [0]))[0]!.ups).toBe(10);
    expect(closedFormLimits(problemOf(rectangle(100, 50), [need - 0.001, 60], 4, [0]))[0]!.ups).toBe(9);
  });

  test('a common knife needs no gap', () => {
    const problem = problemOf(rectangle(100, 50), [1000, 50], 4, [0]);
    expect(closedFormLimits(problem)[0]!.ups).toBe(9);
    expect(closedFormLimits({ ...problem, rules: { ...problem.rules, commonKnife: true } })[0]!.ups).toBe(10);
  });

  test('never fall as the sheet grows, nor rise with the gap', () => {
    const sides = fc.integer({ min: 100, max: 900 });
    fc.assert(
      fc.property(sides, sides, fc.integer({ min: 0, max: 8 }), fc.constantFrom(TEE, rectangle(90, 40), roundOutline(80, 24)), (width, height, gap, outline) => {
        const least = (w: number, h: number, g: number) => closedFormLimits(problemOf(outline, [w, h], g, [0, 2]))[0]!.ups;
        const here = least(width, height, gap);
        expect(least(width + 10, height, gap)).toBeGreaterThanOrEqual(here);
        expect(least(width, height, gap + 1)).toBeLessThanOrEqual(here);
      }),
      { numRuns: 10, seed: 3 },
    );
  });

  test('leave out hexagons and ovals only where they are not the tightest', () => {
    const sides = fc.integer({ min: 60, max: 700 });
    const outlines = [rectangle(90, 40), rectangle(61, 60), roundOutline(80, 24), ...[2, 12].map((cut): PointMm[] => [[cut, 0], [90 - cut, 0], [90, cut], [90, 60], [0, 60], [0, cut]])];
    fc.assert(
      fc.property(sides, sides, fc.integer({ min: 0, max: 8 }), fc.constantFrom(...outlines), fc.constantFrom([0] as const, [0, 2] as const, [0, 1, 2, 3] as const), (width, height, gap, outline, turns) => {
        const problem = problemOf(outline, [width, height], gap, turns);
        const tightest = closedFormLimits(problem)[0]!;
        for (const limit of [hexagonLimit, ovalsLimit]) {
          const value = limit(problem, grant(problem))?.value ?? Infinity;
          if (tightest.ups > 0) expect(Math.floor(value)).toBeGreaterThanOrEqual(tightest.ups);
        }
      }),
      { numRuns: 60, seed: 14 },
    );
  });
});
