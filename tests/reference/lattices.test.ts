import { describe, expect, test } from 'vitest';
import { createRandom } from '../../src/base/random.ts';
import { boxOf, shiftRing, type Point, type Ring } from '../../src/geometry/point.ts';
import type { Turn } from '../../src/geometry/turn.ts';
import type { Cell, Problem } from '../../src/layout/problem.ts';
import { latticeSearch } from '../../src/nesting/searches/lattice.ts';
import { noFitTable } from '../../src/nesting/no-fit-table.ts';

/**
 * Published densities of endless packings, reached within 0.01 %. Sources: pentagon (0/180) and crosses Atkinson, Jiao and
 * Torquato, Phys. Rev. E 86 (2012) 031302, read; heptagon Kallus, Geom. Topol. 19 (2015) 343–363, formula from memory;
 * octagon formula from memory; 9-, 11- and 13-gon and all lattices computed by the Kuperberg construction; triangle and
 * circle classical; half-disc as in the first paper, read.
 */
const POLYGONS: readonly (readonly [corners: number, doubleLattice: number, lattice: number])[] = [
  [3, 1, 2 / 3],
  [5, (5 - Math.sqrt(5)) / 3, 0.817256002],
  [7, 0.892690686, 0.860191024],
  [8, (4 + 4 * Math.SQRT2) / (5 + 4 * Math.SQRT2), (4 + 4 * Math.SQRT2) / (5 + 4 * Math.SQRT2)],
  [9, 0.901030078, 0.887735427],
  [11, 0.907664882, 0.889127998],
  [13, 0.904370624, 0.89383635],
];
const CROSSES: readonly (readonly [width: number, density: number])[] = [
  [0.3, 204 / 205],
  [0.48, 912 / 925],
  [0.6, 21 / 23],
  [0.8, 48 / 49],
  [1 / 3, 1],
  [0.5, 1],
  [0.1, 76 / 125],
];
const WITHIN = 1e-4;

const RADIUS = 400_000;

function ringOf(points: readonly Point[]): Ring {
  const whole = points.map(({ x, y }) => ({ x: Math.round(x), y: Math.round(y) }));
  const { minX, minY } = boxOf(whole);
  return shiftRing(whole, { x: -minX, y: -minY });
}

/** Tilted, so that no side is upright by chance. */
const polygon = (corners: number): Ring =>
  ringOf(Array.from({ length: corners }, (_, i) => (2 * Math.PI * i) / corners + 0.1).map((angle) => ({ x: RADIUS * Math.cos(angle), y: RADIUS * Math.sin(angle) })));

/** Around the true half-disc: the flat side, and tangents at equal angles on the round one. */
function halfDisc(pieces: number): Ring {
  const outer = RADIUS / Math.cos(Math.PI / (2 * pieces));
  const tangents = Array.from({ length: pieces }, (_, i) => ((i + 0.5) * Math.PI) / pieces).map((angle) => ({ x: outer * Math.cos(angle), y: outer * Math.sin(angle) }));
  return ringOf([{ x: -RADIUS, y: 0 }, { x: RADIUS, y: 0 }, ...tangents]);
}

function cross(width: number): Ring {
  const length = 300_000;
  const low = Math.round((length * (1 - width)) / 2);
  const high = length - low;
  const corners = [[low, 0], [high, 0], [high, low], [length, low], [length, high], [high, high], [high, length], [low, length], [low, high], [0, high], [0, low], [low, low]];
  return ringOf(corners.map(([x, y]) => ({ x, y })));
}

function problemOf(outline: Ring, turns: readonly Turn[]): Problem {
  const usable = { minX: 0, minY: 0, maxX: 3_000_000, maxY: 3_000_000 };
  return {
    sheet: { width: 3_000_000, height: 3_000_000 },
    usable,
    printable: usable,
    lay: 'left',
    keepOuts: [],
    rules: { gap: 0, bleed: 0, bleedMeeting: 'apart', commonKnife: false },
    parts: [{ id: 'shape', outline, openings: [], turns }],
    demand: { kind: 'most' },
    locked: [],
    symmetry: 'none',
  };
}

function densestCell(problem: Problem): Cell {
  const steps = latticeSearch.run({ problem, random: createRandom(3), limit: Infinity, known: { best: undefined, cells: [] } });
  let best: Cell | undefined;
  for (let step = steps.next(); !step.done; step = steps.next()) {
    if (step.value.cell && step.value.cell.density > (best?.density ?? 0)) best = step.value.cell;
    if (step.value.candidate) break;
  }
  return best!;
}

/** Asks the no-fit polygons about every copy within eight steps either way: far beyond any outline's reach. */
function isPacking(problem: Problem, { vectors: [u, v], blanks }: Cell): boolean {
  const table = noFitTable(problem);
  for (let m = -8; m <= 8; m++) {
    for (let n = -8; n <= 8; n++) {
      for (const a of blanks) {
        for (const b of blanks) {
          if (m === 0 && n === 0 && a === b) continue;
          if (table.forbidsPair(a, { ...b, x: b.x + m * u.x + n * v.x, y: b.y + m * u.y + n * v.y })) return false;
        }
      }
    }
  }
  return true;
}

describe('densest cells', () => {
  test.each(POLYGONS)('regular %i-gon', (corners, doubleLattice, lattice) => {
    for (const [turns, published] of [[[0, 2], doubleLattice], [[0], lattice]] as const) {
      const problem = problemOf(polygon(corners), turns);
      const cell = densestCell(problem);
      expect(cell.density).toBeGreaterThan(published * (1 - WITHIN));
      expect(cell.density).toBeLessThan(published * (1 + WITHIN));
      expect(isPacking(problem, cell)).toBe(true);
    }
  });

  test.each(CROSSES)('cross of width %d', (width, published) => {
    const problem = problemOf(cross(width), [0, 2]);
    const cell = densestCell(problem);
    expect(cell.density).toBeGreaterThan(published * (1 - WITHIN));
    expect(isPacking(problem, cell)).toBe(true);
  });

  test('half-disc', () => {
    const problem = problemOf(halfDisc(120), [0, 2]);
    const cell = densestCell(problem);
    expect(cell.density).toBeGreaterThan(0.935931 * (1 - WITHIN));
    expect(isPacking(problem, cell)).toBe(true);
  });

  test('circle', () => {
    const problem = problemOf(polygon(240), [0, 2]);
    const cell = densestCell(problem);
    expect(cell.density).toBeGreaterThan((Math.PI / Math.sqrt(12)) * (1 - WITHIN));
    expect(isPacking(problem, cell)).toBe(true);
  });

  test('a convex outline is packed to √3/2 at least (Kuperberg and Kuperberg 1990)', () => {
    const cell = densestCell(problemOf(ringOf([{ x: 0, y: 0 }, { x: 70_000, y: 9000 }, { x: 96_000, y: 61_000 }, { x: 40_000, y: 99_000 }, { x: 3000, y: 70_000 }]), [0, 2]));
    expect(cell.density).toBeGreaterThan(Math.sqrt(3) / 2);
  });
});
