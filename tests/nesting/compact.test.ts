import { beforeAll, describe, expect, test } from 'vitest';
import { boxOf } from '../../src/geometry/point.ts';
import type { Placement, Problem } from '../../src/layout/problem.ts';
import { compact } from '../../src/nesting/finish/compact.ts';
import { prepareLinearPrograms } from '../../src/nesting/linear-program.ts';
import { placedBox } from '../../src/nesting/rank.ts';
import { layoutIsValid } from '../../src/nesting/valid.ts';
import { bareProblem, boxGrid, rectangleRing, shaken } from '../support/packing.ts';
import { cartonRing, starRing } from '../support/rings.ts';

beforeAll(() => prepareLinearPrograms());

const top = (problem: Problem, placements: readonly Placement[]) => Math.max(...placements.map((p) => placedBox(problem, p).maxY));
const right = (problem: Problem, placements: readonly Placement[]) => Math.max(...placements.map((p) => placedBox(problem, p).maxX));

describe('compacting', () => {
  test('brings a loose grid to exact contact, then to the lay on either side', () => {
    const outline = rectangleRing(50_000, 30_000);
    const loose = boxGrid(outline, 3, 4, 9000).map((p) => ({ ...p, x: p.x + 12_345, y: p.y + 4321 }));
    const tight = boxGrid(outline, 3, 4, 5000);
    const problem = bareProblem([outline], 250_000, 220_000, 5000);
    const down = compact(problem, loose, 'gripper');
    expect(down.map((p) => p.y)).toEqual(tight.map((p) => p.y));
    expect(down.map((p) => p.x)).toEqual(loose.map((p) => p.x));
    expect(compact(problem, down, 'lay')).toEqual(tight);
    const mirrored = compact({ ...problem, lay: 'right' }, down, 'lay');
    expect(mirrored.map((p) => 250_000 - 50_000 - p.x)).toEqual([2, 1, 0].flatMap((k) => [k]).concat([2, 1, 0, 2, 1, 0, 2, 1, 0]).map((k) => k * 55_000));
  });

  test('moves neighbours aside where that frees the rear edge', () => {
    // Two rounds side by side with a third above them: it sinks between them when they part.
    const round = starRing(Array.from({ length: 64 }, () => 20_000), { x: 20_000, y: 20_000 });
    const problem = bareProblem([round], 110_000, 110_000, 0);
    const start: Placement[] = [
      { part: 0, turn: 0, x: 20_000, y: 0 },
      { part: 0, turn: 0, x: 60_000, y: 0 },
      { part: 0, turn: 0, x: 40_000, y: 36_000 },
    ];
    expect(layoutIsValid(problem, start)).toBe(true);
    const found = compact(problem, start, 'gripper');
    expect(layoutIsValid(problem, found)).toBe(true);
    // Parted to the sheet's width, 70 mm between their centres, the third stands √(40² − 35²) mm above.
    const box = boxOf(round);
    expect(top(problem, found)).toBeLessThan(box.maxY + Math.sqrt(40_000 ** 2 - 35_000 ** 2) + 300);
  });

  test('keeps every rule and never reaches further, locked blanks and keep-outs in place', () => {
    const carton = cartonRing(5);
    const { maxX, maxY } = boxOf(carton);
    const grid = boxGrid(carton, 3, 2, 12_000).map((p, i): Placement => (i % 2 === 0 ? p : { ...p, turn: 2, x: p.x + maxX, y: p.y + maxY }));
    const keepOuts = [{ kind: 'used', ring: [{ x: 0, y: 0 }, { x: 30_000, y: 0 }, { x: 0, y: 30_000 }], clearance: 2000 }];
    for (let seed = 0; seed < 3; seed++) {
      const start = shaken(grid, 3000, seed).map((p) => ({ ...p, x: p.x + 40_000, y: p.y + 40_000 }));
      const problem = bareProblem([carton], 3 * maxX + 120_000, 2 * maxY + 80_000, 5000, { keepOuts, locked: [start[4]] });
      expect(layoutIsValid(problem, start)).toBe(true);
      const down = compact(problem, start, 'gripper');
      expect(layoutIsValid(problem, down)).toBe(true);
      expect(down[4]).toEqual(start[4]);
      expect(top(problem, down)).toBeLessThanOrEqual(top(problem, start));
      const left = compact(problem, down, 'lay');
      expect(layoutIsValid(problem, left)).toBe(true);
      expect(right(problem, left)).toBeLessThan(right(problem, down));
      expect(compact(problem, start, 'gripper')).toEqual(down);
    }
  });
});
