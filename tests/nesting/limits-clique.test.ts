import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { forbids, noFitPolygon } from '../../src/geometry/no-fit.ts';
import { boxOf } from '../../src/geometry/point.ts';
import type { Limit, Problem } from '../../src/layout/problem.ts';
import { boxTable, isInside } from '../../src/nesting/limits/box-table.ts';
import { cliqueLimit } from '../../src/nesting/limits/clique-limit.ts';
import type { CoverDepth } from '../../src/nesting/limits/piece-cover.ts';
import { closedFormLimits } from '../../src/nesting/limits/closed-form.ts';
import { forbiddenSet } from '../../src/nesting/limits/forbidden-set.ts';
import { innerOutline } from '../../src/nesting/limits/inner-outline.ts';
import { checkLimit } from '../../src/proof/check.ts';
import { mostOnLattice, polyominoOutline, type Cells } from '../support/exhaustive.ts';
import { problemOf, rectangle, ringOf, roundOutline, type PointMm } from '../support/problems.ts';
import { starRings } from '../support/rings.ts';
import { statedProblem } from '../support/stated.ts';

const TEE: PointMm[] = [[40, 0], [80, 0], [80, 80], [120, 80], [120, 120], [0, 120], [0, 80], [40, 80]];

const SMALL: CoverDepth = { grids: [{ cells: 160 }], halvings: 1, mostCells: 4000 };

/** The last limit of a run, checked. */
async function proved(problem: Problem, best: number, depth: CoverDepth = SMALL, steps = Infinity): Promise<Limit | undefined> {
  let last: Limit | undefined;
  let step = 0;
  for await (const { limit } of cliqueLimit(problem, { best, seed: 1, depth })) {
    if (limit) last = limit;
    if (++step >= steps) break;
  }
  if (last) expect(checkLimit(last.certificate, statedProblem(problem))).toEqual({ ok: true, ups: last.ups });
  return last;
}

describe('boxes of differences', () => {
  test('a box called forbidden holds no shift that is allowed', () => {
    fc.assert(
      fc.property(starRings(12), starRings(12), fc.integer({ min: -10, max: 20_000 }), fc.double({ min: 0, max: 1, noNaN: true }), (a, b, gap, share) => {
        const table = boxTable(forbiddenSet(a, b, gap), 11_003, 9_007);
        const noFit = noFitPolygon(a, b, Math.max(0, gap));
        let forbidden = 0;
        for (let i = -table.reachI; i <= table.reachI; i++) {
          for (let j = -table.reachJ; j <= table.reachJ; j++) {
            if (!isInside(table, i, j)) continue;
            forbidden++;
            const x = Math.round((i - 1 + 2 * share) * 11_003);
            const y = Math.round((j - 1 + 2 * ((share * 7) % 1)) * 9_007);
            expect(forbids(noFit, x, y)).toBe(true);
          }
        }
        expect(forbidden).toBeGreaterThan(0);
      }),
      { numRuns: 40, seed: 5 },
    );
  });

  test('two squares forbid the square of twice their side, less half a box all round', () => {
    const square = ringOf(rectangle(10, 10));
    const table = boxTable(forbiddenSet(square, square, 0), 2_000, 3_000);
    for (let i = -6; i <= 6; i++) for (let j = -6; j <= 6; j++) expect(isInside(table, i, j)).toBe((Math.abs(i) + 1) * 2_000 < 10_000 && (Math.abs(j) + 1) * 3_000 < 10_000);
  });
});

test('a simplified outline stays inside and keeps within the tolerance', () => {
  const round = ringOf(roundOutline(60, 96));
  const inner = innerOutline(round, 100);
  expect(inner.length).toBeLessThan(60);
  const radius = (ring: typeof inner) => Math.min(...ring.map((p, i) => { const q = ring[(i + 1) % ring.length]!; return Math.hypot((p.x + q.x) / 2 - 30_000, (p.y + q.y) / 2 - 30_000); }));
  expect(radius(inner)).toBeGreaterThan(30_000 - 101);
  // Inner corners are never cut off.
  expect(innerOutline(ringOf(TEE), 1e6).length).toBeGreaterThanOrEqual(4);
  expect(boxOf(innerOutline(ringOf(TEE), 10))).toEqual(boxOf(ringOf(TEE)));
});

describe('clique covers', () => {
  test('close a T on 600 × 420 where the area allows 28', async () => {
    const problem = problemOf(TEE, [600, 420], 4, [0, 2]);
    expect(closedFormLimits(problem)[0]!.ups).toBe(28);
    expect(await proved(problem, 24, { ...SMALL, grids: [{ cells: 600 }] })).toMatchObject({ ups: 24, by: 'pockets' });
  });

  test('see whole numbers of columns and rows', async () => {
    expect((await proved(problemOf(rectangle(95, 45), [400, 200], 4, [0]), 16, { ...SMALL, grids: [{ cells: 160 }, { cells: 160, aligned: true }] }))!.ups).toBe(16);
  });

  test('keep-outs of any shape take their part off', async () => {
    const square = rectangle(60, 60);
    const wedge = { kind: 'spoiled', ring: ringOf([[80, 0], [120, 0], [100, 70]]), clearance: 3000 };
    expect((await proved(problemOf(square, [200, 70], 4, [0]), 3))!.ups).toBe(3);
    expect((await proved(problemOf(square, [200, 70], 4, [0], { keepOuts: [wedge] }), 2))!.ups).toBe(2);
  });

  test('a bar across the sheet makes two sheets of it, each with whole numbers', async () => {
    // Side by side, every second one turned, they step by 84: a third would need 288.
    const bar = { kind: 'colour-bar', ring: ringOf([[-10, 157], [290, 157], [290, 163], [-10, 163]]), clearance: 3000 };
    const barred = problemOf(TEE, [280, 320], 4, [0, 2], { keepOuts: [bar] });
    const limit = (await proved(barred, 4))!;
    expect(limit.certificate).toMatchObject({ kind: 'pieces', ups: limit.ups });
    expect(limit.ups).toBe(4);
  });

  test('nothing fits where a keep-out bars every place', async () => {
    const all = { kind: 'spoiled', ring: ringOf(rectangle(400, 280)), clearance: 3000 };
    expect((await proved(problemOf(TEE, [400, 280], 4, [0, 2], { keepOuts: [all] }), 0))!.ups).toBe(0);
  });

  test('blanks equal to their half turn need one rotation only', async () => {
    const slanted: PointMm[] = [[0, 0], [90, 0], [120, 50], [30, 50]];
    const certificate = (await proved(problemOf(slanted, [400, 200], 4, [0, 2]), 1, SMALL, 3))!.certificate as { turns: number[]; symmetry: number };
    expect(certificate).toMatchObject({ turns: [0], symmetry: 2 });
  });

  test('the same seed gives the same certificate', async () => {
    const problem = problemOf(TEE, [400, 280], 4, [0, 2]);
    expect(await proved(problem, 1, SMALL, 4)).toEqual(await proved(problem, 1, SMALL, 4));
  });
});

describe('no limit is beaten by what exhaustive search finds', () => {
  const cell = fc.tuple(fc.integer({ min: 0, max: 2 }), fc.integer({ min: 0, max: 2 }));
  /** Cells grown from the middle of 3 × 3, each next to an earlier one, without holes or corners that touch. */
  const shapes = fc.array(cell, { minLength: 2, maxLength: 8 }).map((wishes) => {
    let shape: Cells = [[1, 1]];
    for (const [x, y] of wishes) if (!shape.some(([a, b]) => a === x && b === y) && shape.some(([a, b]) => Math.abs(a - x) + Math.abs(b - y) === 1)) shape = [...shape, [x, y]];
    return shape;
  }).filter((shape) => shape.length > 1 && shape.length < 8 && isPlain(shape));
  const turns = fc.constantFrom([0] as const, [0, 2] as const, [0, 1, 2, 3] as const);

  test('closed forms', () => {
    fc.assert(
      fc.property(shapes, fc.integer({ min: 3, max: 6 }), fc.integer({ min: 3, max: 5 }), turns, (shape, columns, rows, allowed) => {
        const found = mostOnLattice(shape, columns, rows, allowed);
        for (const limit of closedFormLimits(problemOf(polyominoOutline(shape, 20), [20 * columns, 20 * rows], 0, allowed))) expect(limit.ups).toBeGreaterThanOrEqual(found);
      }),
      { numRuns: 40, seed: 11 },
    );
  });

  test('closed forms of a sheet with a bar across it', () => {
    fc.assert(
      fc.property(shapes, fc.integer({ min: 3, max: 6 }), fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 }), turns, (shape, columns, below, above, allowed) => {
        const found = mostOnLattice(shape, columns, below, allowed) + mostOnLattice(shape, columns, above, allowed);
        const bar = { kind: 'colour-bar', ring: ringOf([[-5, 20 * below], [20 * columns + 5, 20 * below], [20 * columns + 5, 20 * below + 6], [-5, 20 * below + 6]]), clearance: 0 };
        const problem = problemOf(polyominoOutline(shape, 20), [20 * columns, 20 * (below + above) + 6], 0, allowed, { keepOuts: [bar] });
        for (const limit of closedFormLimits(problem)) expect(limit.ups).toBeGreaterThanOrEqual(found);
      }),
      { numRuns: 40, seed: 13 },
    );
  });

  test('clique covers', async () => {
    await fc.assert(
      fc.asyncProperty(shapes, fc.integer({ min: 3, max: 5 }), fc.integer({ min: 3, max: 5 }), turns, async (shape, columns, rows, allowed) => {
        const found = mostOnLattice(shape, columns, rows, allowed);
        const limit = await proved(problemOf(polyominoOutline(shape, 20), [20 * columns, 20 * rows], 0, allowed), found, { grids: [{ cells: 100 }], halvings: 1, mostCells: 1000 }, 4);
        if (limit) expect(limit.ups).toBeGreaterThanOrEqual(found);
      }),
      { numRuns: 6, seed: 12 },
    );
  });
});

/** No hole and no two cells that meet at a corner alone. */
function isPlain(shape: Cells): boolean {
  const has = (x: number, y: number) => shape.some(([a, b]) => a === x && b === y);
  const pinched = shape.some(([x, y]) => [-1, 1].some((dx) => has(x + dx, y + 1) && !has(x + dx, y) && !has(x, y + 1)));
  return !pinched && !(shape.length >= 7 && !has(1, 1));
}
