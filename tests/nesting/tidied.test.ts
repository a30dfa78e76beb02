import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Ring } from '../../src/geometry/point.ts';
import { boxOf } from '../../src/geometry/point.ts';
import type { Placement, Problem } from '../../src/layout/problem.ts';
import { tidied } from '../../src/nesting/finish/tidied.ts';
import { placedBox } from '../../src/nesting/rank.ts';
import { layoutIsValid } from '../../src/nesting/valid.ts';
import { bareProblem, rectangleRing } from '../support/packing.ts';
import { cartonRing } from '../support/rings.ts';

const GAP = 6000;
const CARD = rectangleRing(100_000, 60_000);

/** Cards on a sheet of 660 × 400, given by their lower left corners in mm. */
function cards(places: readonly (readonly [number, number])[], more: Partial<Problem> = {}): { problem: Problem; placements: Placement[] } {
  return { problem: bareProblem([CARD], 660_000, 400_000, GAP, more), placements: places.map(([x, y]) => ({ part: 0, turn: 0, x: x * 1000, y: y * 1000 })) };
}
const places = (placements: readonly Placement[]) => placements.map(({ x, y }) => [x / 1000, y / 1000]);

describe('tidying', () => {
  test('a hole in a grid is closed towards the lay, columns stay columns', () => {
    const { problem, placements } = cards([[0, 0], [106, 0], [212, 0], [0, 66], [212, 66], [0, 132], [106, 132], [212, 132]]);
    expect(places(tidied(problem, placements))).toEqual([[0, 0], [106, 0], [212, 0], [0, 66], [106, 66], [0, 132], [106, 132], [212, 132]]);
  });

  test('a loose grid comes together as one, though a locked blank holds the middle of one row up', () => {
    const { problem, placements } = cards([[10, 8], [120, 8], [230, 8], [10, 80], [120, 80], [230, 80]]);
    expect(places(tidied(problem, placements))).toEqual([[0, 0], [106, 0], [212, 0], [0, 66], [106, 66], [212, 66]]);
    const held = tidied({ ...problem, locked: [placements[4]] }, placements);
    // Its row stays level with it, its column in line, and the steps of both rows equal: 110 mm.
    expect(places(held)).toEqual([[10, 0], [120, 0], [230, 0], [10, 80], [120, 80], [230, 80]]);
  });

  test('rows that stand apart slide to the lay whole, from a lay on the right as well', () => {
    const shifted = [[0, 0], [106, 0], [53, 66], [159, 66], [0, 132], [106, 132]] as const;
    const { problem, placements } = cards(shifted);
    expect(places(tidied(problem, placements))).toEqual([[0, 0], [106, 0], [0, 66], [106, 66], [0, 132], [106, 132]]);
    const mirrored = { ...problem, lay: 'right' as const };
    const right = tidied(mirrored, placements.map((placement) => ({ ...placement, x: 560_000 - placement.x })));
    expect(places(right)).toEqual([[560, 0], [454, 0], [560, 66], [454, 66], [560, 132], [454, 132]]);
  });

  test('never away from gripper or lay, rows level, no less regular, valid, and done at once', () => {
    fc.assert(
      fc.property(sheets(), ({ problem, placements }) => {
        expect(layoutIsValid(problem, placements)).toBe(true);
        const after = tidied(problem, placements);
        expect(layoutIsValid(problem, after)).toBe(true);
        const sign = problem.lay === 'left' ? 1 : -1;
        after.forEach(({ part, turn, x, y }, i) => {
          const before = placements[i];
          expect([part, turn]).toEqual([before.part, before.turn]);
          expect(y).toBeLessThanOrEqual(before.y);
          expect(sign * (x - before.x)).toBeLessThanOrEqual(0);
        });
        for (const kept of problem.locked) expect(after).toContainEqual(kept);
        expect(broken(problem, placements, after)).toBe(0);
        const [old, now] = [lines(problem, placements), lines(problem, after)];
        expect(now.size).toBeLessThanOrEqual(old.size);
        expect(aligned(now)).toBeGreaterThanOrEqual(aligned(old));
        expect(tidied(problem, after)).toEqual(after);
      }),
      { numRuns: 120 },
    );
  }, 120_000);
});

/** Pairs of blanks that were level and no longer are. */
function broken(problem: Problem, before: readonly Placement[], after: readonly Placement[]): number {
  const level = (all: readonly Placement[], i: number, j: number) => placedBox(problem, all[i]).minY === placedBox(problem, all[j]).minY;
  return before.flatMap((_, i) => before.slice(0, i).map((__, j) => [i, j] as const)).filter(([i, j]) => level(before, i, j) && !level(after, i, j)).length;
}

/** How many blanks stand on each line of sides towards the lay. */
function lines(problem: Problem, placements: readonly Placement[]): Map<number, number> {
  const counts = new Map<number, number>();
  for (const placement of placements) {
    const { minX, maxX } = placedBox(problem, placement);
    const at = problem.lay === 'left' ? minX : maxX;
    counts.set(at, (counts.get(at) ?? 0) + 1);
  }
  return counts;
}

function aligned(counts: ReadonlyMap<number, number>): number {
  return [...counts.values()].reduce((sum, count) => sum + (count * (count - 1)) / 2, 0);
}

/** Loose rows of cards or cartons, some shifted, some turned head to tail, some blanks missing, lifted out of line or locked. */
function sheets(): fc.Arbitrary<{ problem: Problem; placements: Placement[] }> {
  return fc
    .record({
      ring: fc.constantFrom<Ring>(CARD, cartonRing(3)),
      loose: fc.integer({ min: 0, max: 15_000 }),
      shifts: fc.array(fc.constantFrom(0, 0, 30_000, 55_000), { minLength: 3, maxLength: 3 }),
      fates: fc.array(fc.record({ there: fc.integer({ min: 0, max: 3 }).map((n) => n > 0), up: fc.constantFrom(0, 0, 0, 2500), along: fc.constantFrom(0, 0, 0, 4000), head: fc.boolean(), locked: fc.integer({ min: 0, max: 9 }).map((n) => n === 0) }), { minLength: 9, maxLength: 9 }),
      lay: fc.constantFrom('left' as const, 'right' as const),
    })
    .map(({ ring, loose, shifts, fates, lay }) => {
      const { minX, minY, maxX, maxY } = boxOf(ring);
      const [wide, high] = [maxX - minX, maxY - minY];
      const [stepX, stepY] = [wide + GAP + 4000 + loose, high + GAP + 2500 + loose];
      const all = fates.flatMap(({ there, up, along, head, locked }, i) => {
        if (!there) return [];
        const corner = { x: (i % 3) * stepX + along + shifts[Math.floor(i / 3)] + 9000, y: Math.floor(i / 3) * stepY + up + 5000 };
        const placement: Placement = head ? { part: 0, turn: 2, x: corner.x + maxX, y: corner.y + maxY } : { part: 0, turn: 0, x: corner.x - minX, y: corner.y - minY };
        return [{ placement, locked }];
      });
      const placements = all.map(({ placement }) => placement);
      const problem = bareProblem([ring], 3 * stepX + 90_000, 3 * stepY + 20_000, GAP, { lay, locked: all.filter(({ locked }) => locked).map(({ placement }) => placement) });
      return { problem, placements };
    });
}
