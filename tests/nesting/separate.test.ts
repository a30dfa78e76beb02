import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { boxOf } from '../../src/geometry/point.ts';
import type { Turn } from '../../src/geometry/turn.ts';
import type { KeepOut, Placement } from '../../src/layout/problem.ts';
import { separate } from '../../src/nesting/finish/separate.ts';
import { prepareLinearPrograms } from '../../src/nesting/linear-program.ts';
import { layoutIsValid } from '../../src/nesting/valid.ts';
import { bareProblem, boxGrid, rectangleRing, shaken } from '../support/packing.ts';
import { cartonRing, starRing } from '../support/rings.ts';

beforeAll(() => prepareLinearPrograms());

const round = starRing(Array.from({ length: 64 }, () => 20_000), { x: 20_000, y: 20_000 });

describe('separating', () => {
  test('brings a shaken exact fit back, nothing to spare in width or height', () => {
    for (const gap of [0, 3000]) {
      const outline = rectangleRing(50_123, 30_457);
      const problem = bareProblem([outline], 6 * 50_123 + 5 * gap, 5 * 30_457 + 4 * gap, gap);
      for (let seed = 0; seed < 3; seed++) {
        const found = separate(problem, shaken(boxGrid(outline, 6, 5, gap), 40, seed));
        expect(found).toEqual(boxGrid(outline, 6, 5, gap));
      }
    }
  });

  test('parts rounds in staggered rows', () => {
    const gap = 2000;
    const rowStep = Math.ceil((42_000 * Math.sqrt(3)) / 2) + 15;
    const staggered = Array.from({ length: 20 }, (_, k): Placement => {
      const row = Math.floor(k / 5);
      return { part: 0, turn: 0, x: (k % 5) * 42_010 + (row % 2) * 21_005, y: row * rowStep };
    });
    const box = boxOf(round);
    const problem = bareProblem([round], 4 * 42_010 + 21_005 + box.maxX + 20, 3 * rowStep + box.maxY + 20, gap);
    for (let seed = 0; seed < 3; seed++) {
      const start = shaken(staggered, 150, seed);
      expect(layoutIsValid(problem, start)).toBe(false);
      const found = separate(problem, start)!;
      expect(found).toBeDefined();
      expect(layoutIsValid(problem, found)).toBe(true);
      found.forEach((p, i) => expect(Math.max(Math.abs(p.x - start[i].x), Math.abs(p.y - start[i].y))).toBeLessThan(1500));
    }
  });

  test('parts cartons, keeps locked ones and keeps clear of keep-outs', () => {
    const carton = cartonRing(5);
    const { maxX, maxY } = boxOf(carton);
    const gap = 5000;
    const stepX = maxX + gap + 60;
    const stepY = maxY + gap + 60;
    const at = (column: number, row: number, turn: Turn): Placement => ({ part: 0, turn, x: column * stepX + (turn === 2 ? maxX : 0), y: row * stepY + (turn === 2 ? maxY : 0) });
    const locked = [at(1, 0, 0)];
    const spot: KeepOut = { kind: 'spoiled', ring: [{ x: 2 * stepX - 20, y: 0 }, { x: 2 * stepX + 4000, y: 0 }, { x: 2 * stepX, y: 90_000 }], clearance: 1000 };
    const problem = bareProblem([carton], 2 * stepX + 2000, 2 * stepY + 200, gap, { keepOuts: [spot], locked });
    for (let seed = 0; seed < 3; seed++) {
      const found = separate(problem, [...locked, ...shaken([at(0, 0, 2), at(0, 1, 0), at(1, 1, 2)], 120, seed)])!;
      expect(found).toBeDefined();
      expect(found[0]).toEqual(locked[0]);
      expect(layoutIsValid(problem, found)).toBe(true);
    }
  });

  test('parts several designs', () => {
    const outlines = [rectangleRing(60_000, 20_000), round];
    const placements: Placement[] = [
      { part: 0, turn: 0, x: 0, y: 0 },
      { part: 1, turn: 0, x: 62_900, y: 0 },
      { part: 0, turn: 1, x: 20_000, y: 22_900 },
      { part: 1, turn: 3, x: 30_000, y: 83_000 },
    ];
    const problem = bareProblem(outlines, 120_000, 90_000, 3000);
    const found = separate(problem, placements)!;
    expect(found).toBeDefined();
    expect(layoutIsValid(problem, found)).toBe(true);
    expect(found.map(({ part, turn }) => [part, turn])).toEqual(placements.map(({ part, turn }) => [part, turn]));
  });

  test('leaves a valid layout alone and gives up where there is no room', () => {
    const outline = rectangleRing(50_000, 30_000);
    const valid = boxGrid(outline, 2, 2, 1000);
    expect(separate(bareProblem([outline], 101_000, 61_000, 1000), valid)).toEqual(valid);
    expect(separate(bareProblem([outline], 100_990, 61_000, 1000), valid)).toBeUndefined();
    expect(separate(bareProblem([outline], 40_000, 61_000, 1000), valid)).toBeUndefined();
  });

  test('whatever comes back keeps every rule and is the same again', () => {
    const outlines = [cartonRing(3), rectangleRing(30_000, 20_000)];
    const problem = bareProblem(outlines, 700_000, 600_000, 2000);
    const places = fc.record({ part: fc.constantFrom(0, 1), turn: fc.constantFrom<Turn>(0, 1, 2, 3), x: fc.integer({ min: 0, max: 700_000 }), y: fc.integer({ min: 0, max: 600_000 }) });
    let parted = 0;
    fc.assert(
      fc.property(fc.array(places, { minLength: 2, maxLength: 6 }), (placements) => {
        const found = separate(problem, placements);
        if (!found) return;
        parted++;
        expect(layoutIsValid(problem, found)).toBe(true);
        expect(separate(problem, placements)).toEqual(found);
      }),
      { seed: 81, numRuns: 60 },
    );
    expect(parted).toBeGreaterThan(5);
  });
});
