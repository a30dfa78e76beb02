import type { Turn } from '../../src/geometry/turn.ts';
import type { Problem } from '../../src/layout/problem.ts';
import { problemOf, rectangle, roundOutline, type PointMm } from './problems.ts';

/** Published or proved counts that a run has to reach, each with its source. */
export interface MustReach {
  readonly name: string;
  readonly problem: Problem;
  readonly ups: number;
  readonly source: string;
}

const ALL: readonly Turn[] = [0, 1, 2, 3];

/**
 * Polyominoes in a square of n × n cells, not mirrored, quarter turns allowed: largest numbers proved by integer
 * programming; the T-tetromino agrees with OEIS A256535, the V-pentomino with A214294. By n = 5 … 10.
 */
const POLYOMINOES: readonly (readonly [name: string, cells: readonly PointMm[], ups: readonly number[]])[] = [
  ['L-tromino', [[0, 0], [2, 0], [2, 1], [1, 1], [1, 2], [0, 2]], [8, 12, 16, 21, 27, 33]],
  ['T-tetromino', [[0, 0], [3, 0], [3, 1], [2, 1], [2, 2], [1, 2], [1, 1], [0, 1]], [5, 8, 11, 16, 19, 24]],
  ['S-tetromino', [[0, 0], [2, 0], [2, 1], [3, 1], [3, 2], [1, 2], [1, 1], [0, 1]], [4, 7, 9, 13, 16, 22]],
  ['V-pentomino', [[0, 0], [3, 0], [3, 1], [1, 1], [1, 3], [0, 3]], [4, 6, 8, 12, 14, 18]],
  ['U-pentomino', [[0, 0], [3, 0], [3, 2], [2, 2], [2, 1], [1, 1], [1, 2], [0, 2]], [4, 6, 8, 11, 14, 18]],
  ['W-pentomino', [[0, 0], [2, 0], [2, 1], [3, 1], [3, 3], [2, 3], [2, 2], [1, 2], [1, 1], [0, 1]], [3, 6, 8, 12, 14, 18]],
  ['N-pentomino', [[0, 0], [2, 0], [2, 1], [4, 1], [4, 2], [1, 2], [1, 1], [0, 1]], [4, 6, 8, 11, 14, 18]],
];

/** Side of a cell, mm. */
const CELL = 20;

export function polyominoes(): MustReach[] {
  return POLYOMINOES.flatMap(([name, cells, ups]) =>
    ups.map((most, k) => {
      const n = k + 5;
      const outline = cells.map(([x, y]): PointMm => [x * CELL, y * CELL]);
      return { name: `${name} in ${n} × ${n}`, problem: problemOf(outline, [n * CELL, n * CELL], 0, ALL), ups: most, source: 'integer program, exact' };
    }),
  );
}

/** Circles of diameter d: hexagonal rows mixed with square steps, computed; and Specht, packomania (2023) for the squares. */
export function rounds(): MustReach[] {
  const sheets = [[8, 8, 1, 68], [700, 1000, 50, 312], [720, 1020, 63, 202], [320, 450, 30, 175]] as const;
  const squares = [[3.5, 10], [4.7, 21], [5.5, 30], [6.15, 39], [6.6, 44], [7, 49]] as const;
  return [
    ...sheets.map(([width, height, diameter, ups]) => ({ width, height, diameter, ups, source: 'rows of two kinds, computed' })),
    ...squares.map(([side, ups]) => ({ width: side, height: side, diameter: 1, ups, source: 'Specht, packomania' })),
  ].map(({ width, height, diameter, ups, source }) => {
    // A sheet of a few units is drawn a hundred times larger, so that a micrometre is small against it.
    const scale = diameter === 1 ? 100 : 1;
    const problem = problemOf(roundOutline(diameter * scale, 360), [width * scale, height * scale], 0, [0]);
    return { name: `rounds ${diameter} on ${width} × ${height}`, problem, ups, source };
  });
}

/** Trapezoids on 30 × 96, bases 4.5 and 3.5, height 2.5 (Longfield, Sheet Metal Drafting, 1921, p. 25): inches as centimetres. */
export function trapezoids(): MustReach[] {
  const outline: PointMm[] = [[0, 0], [45, 0], [40, 25], [5, 25]];
  return [
    { name: 'trapezoids, quarter turns', problem: problemOf(outline, [300, 960], 0, ALL), ups: 283, source: 'turned rows with a filler column, computed' },
    { name: 'trapezoids, half turns', problem: problemOf(outline, [300, 960], 0, [0, 2]), ups: 266, source: 'Longfield 1921' },
  ];
}

/** Equal rectangles, both orientations: sheet, blank, largest number (all proved). */
const RECTANGLES = [
  [22, 16, 5, 3, 23], [30, 22, 7, 4, 23], [1000, 1000, 205, 159, 30], [43, 26, 7, 3, 53], [49, 28, 8, 3, 57], [57, 34, 7, 4, 69],
  [61, 35, 10, 3, 71], [61, 38, 6, 5, 77], [67, 40, 11, 3, 81], [93, 46, 13, 4, 82], [74, 46, 7, 5, 97], [34, 23, 5, 4, 38],
  [32, 27, 5, 4, 42], [53, 26, 7, 4, 48], [37, 30, 8, 3, 45], [1020, 720, 210, 148, 23], [1020, 720, 297, 105, 22],
  [1060, 760, 240, 170, 19], [740, 520, 111, 67, 50], [900, 640, 148, 105, 36], [1020, 720, 101, 73, 98], [450, 320, 85, 54, 29],
  [1020, 720, 95, 65, 117], [1040, 740, 148, 105, 49], [1200, 800, 400, 300, 8],
  // Trade exercises with published or verified counts.
  [880, 620, 150, 100, 34], [13, 8, 3, 2, 17], [1000, 700, 150, 120, 37], [28, 40, 4.25, 6.25, 41], [46, 66, 12, 16, 14],
] as const;

export function rectangles(): MustReach[] {
  return RECTANGLES.map(([length, width, l, w, ups]) => {
    const scale = length < 100 ? 10 : 1;
    const problem = problemOf(rectangle(l * scale, w * scale), [length * scale, width * scale], 0, [0, 1]);
    return { name: `${l} × ${w} on ${length} × ${width}`, problem, ups, source: 'five-block and L-shaped recursion, exhaustive search' };
  });
}
