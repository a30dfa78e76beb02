import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { createRandom } from '../../src/base/random.ts';
import type { Ring } from '../../src/geometry/point.ts';
import { boxOf } from '../../src/geometry/point.ts';
import type { Turn } from '../../src/geometry/turn.ts';
import { turnBox } from '../../src/geometry/turn.ts';
import type { KeepOut, Placement, Problem } from '../../src/layout/problem.ts';
import { separate } from '../../src/nesting/finish/separate.ts';
import { prepareLinearPrograms } from '../../src/nesting/linear-program.ts';
import { layoutIsValid } from '../../src/nesting/valid.ts';
import { cartonRing, starRing } from '../support/rings.ts';

beforeAll(() => prepareLinearPrograms());

const rectangle = (width: number, height: number): Ring => [{ x: 0, y: 0 }, { x: width, y: 0 }, { x: width, y: height }, { x: 0, y: height }];
const round = starRing(Array.from({ length: 64 }, () => 20_000), { x: 20_000, y: 20_000 });

interface Sheet {
  readonly outlines: readonly Ring[];
  readonly width: number;
  readonly height: number;
  readonly gap: number;
  readonly keepOuts?: readonly KeepOut[];
  readonly locked?: readonly Placement[];
}

function problemOf({ outlines, width, height, gap, keepOuts = [], locked = [] }: Sheet): Problem {
  const sheet = { minX: 0, minY: 0, maxX: width, maxY: height };
  return {
    sheet: { width, height },
    usable: sheet,
    printable: sheet,
    lay: 'left',
    keepOuts,
    rules: { gap, bleed: 0, bleedMeeting: 'apart', commonKnife: false },
    parts: outlines.map((outline, i) => ({ id: `${i}`, outline, openings: [], turns: [0, 1, 2, 3] })),
    demand: { kind: 'most' },
    locked,
    symmetry: 'none',
  };
}

/** The layout shaken: every free coordinate by at most `by`. */
function shaken(placements: readonly Placement[], by: number, seed: number): Placement[] {
  const random = createRandom(seed);
  return placements.map((p) => ({ ...p, x: p.x + random.below(2 * by + 1) - by, y: p.y + random.below(2 * by + 1) - by }));
}

function grid(outline: Ring, columns: number, rows: number, gap: number, turn: Turn = 0): Placement[] {
  const box = turnBox(boxOf(outline), turn);
  const stepX = box.maxX - box.minX + gap;
  const stepY = box.maxY - box.minY + gap;
  return Array.from({ length: columns * rows }, (_, k) => ({ part: 0, turn, x: (k % columns) * stepX - box.minX, y: Math.floor(k / columns) * stepY - box.minY }));
}

describe('separating', () => {
  test('brings a shaken exact fit back, nothing to spare in width or height', () => {
    for (const gap of [0, 3000]) {
      const outline = rectangle(50_123, 30_457);
      const problem = problemOf({ outlines: [outline], width: 6 * 50_123 + 5 * gap, height: 5 * 30_457 + 4 * gap, gap });
      for (let seed = 0; seed < 3; seed++) {
        const found = separate(problem, shaken(grid(outline, 6, 5, gap), 40, seed));
        expect(found).toEqual(grid(outline, 6, 5, gap));
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
    const problem = problemOf({ outlines: [round], width: 4 * 42_010 + 21_005 + box.maxX + 20, height: 3 * rowStep + box.maxY + 20, gap });
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
    const problem = problemOf({ outlines: [carton], width: 2 * stepX + 2000, height: 2 * stepY + 200, gap, keepOuts: [spot], locked });
    for (let seed = 0; seed < 3; seed++) {
      const found = separate(problem, [...locked, ...shaken([at(0, 0, 2), at(0, 1, 0), at(1, 1, 2)], 120, seed)])!;
      expect(found).toBeDefined();
      expect(found[0]).toEqual(locked[0]);
      expect(layoutIsValid(problem, found)).toBe(true);
    }
  });

  test('parts several designs', () => {
    const outlines = [rectangle(60_000, 20_000), round];
    const placements: Placement[] = [
      { part: 0, turn: 0, x: 0, y: 0 },
      { part: 1, turn: 0, x: 62_900, y: 0 },
      { part: 0, turn: 1, x: 20_000, y: 22_900 },
      { part: 1, turn: 3, x: 30_000, y: 83_000 },
    ];
    const problem = problemOf({ outlines, width: 120_000, height: 90_000, gap: 3000 });
    const found = separate(problem, placements)!;
    expect(found).toBeDefined();
    expect(layoutIsValid(problem, found)).toBe(true);
    expect(found.map(({ part, turn }) => [part, turn])).toEqual(placements.map(({ part, turn }) => [part, turn]));
  });

  test('leaves a valid layout alone and gives up where there is no room', () => {
    const outline = rectangle(50_000, 30_000);
    const valid = grid(outline, 2, 2, 1000);
    expect(separate(problemOf({ outlines: [outline], width: 101_000, height: 61_000, gap: 1000 }), valid)).toEqual(valid);
    expect(separate(problemOf({ outlines: [outline], width: 100_990, height: 61_000, gap: 1000 }), valid)).toBeUndefined();
    expect(separate(problemOf({ outlines: [outline], width: 40_000, height: 61_000, gap: 1000 }), valid)).toBeUndefined();
  });

  test('whatever comes back keeps every rule and is the same again', () => {
    const outlines = [cartonRing(3), rectangle(30_000, 20_000)];
    const problem = problemOf({ outlines, width: 700_000, height: 600_000, gap: 2000 });
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
