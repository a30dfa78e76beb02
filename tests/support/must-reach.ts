import type { Turn } from '../../src/geometry/turn.ts';
import type { Problem } from '../../src/layout/problem.ts';
import { problemOf, rectangle, ringOf, roundOutline, type PointMm } from './problems.ts';

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

export interface MustReachLength {
  readonly name: string;
  readonly problem: Problem;
  /** Proved least length, mm. */
  readonly length: number;
}

/** Pieces of the instance THREE and the first eight of FU (ESICUP data sets, CC0-1.0), in their own units. */
const THREE: readonly (readonly PointMm[])[] = [[[0, 0], [2, -2], [4, 0], [2, 2]], [[0, 0], [3, 0], [3, 3], [0, 3]], [[0, 0], [4, 0], [2, 3]]];
const FU: readonly (readonly PointMm[])[] = [
  rectangle(10, 10), rectangle(10, 10), rectangle(14, 9), [[0, 0], [14, 0], [7, 7]], [[0, 9], [0, 0], [14, 9]], rectangle(14, 14),
  [[0, 0], [10, 4], [10, 9], [0, 9]], rectangle(5, 9),
];

const STRAIGHT: readonly Turn[] = [0];
const HALF: readonly Turn[] = [0, 2];

/** Proved lengths: Pantoja-Benavides, Álvarez-Martínez and Parreño Torres, Mathematics 12 (2024) 2414. */
const STRIPS: readonly (readonly [name: string, pieces: readonly (readonly PointMm[])[], copies: number, width: number, turns: readonly Turn[], gap: number, length: number])[] = [
  ['three', THREE, 1, 7, STRAIGHT, 0, 6],
  ['three, quarter turns', THREE, 1, 7, ALL, 0, 5.4],
  ['three twice', THREE, 2, 7, STRAIGHT, 0, 28 / 3],
  ['three twice, half turns', THREE, 2, 7, HALF, 0, 83 / 9],
  ['three twice, quarter turns', THREE, 2, 7, ALL, 0, 82 / 9],
  ['three twice on 9', THREE, 2, 9, STRAIGHT, 0, 8],
  ['three twice on 9, half turns', THREE, 2, 9, HALF, 0, 7.5],
  ['three twice on 9, quarter turns', THREE, 2, 9, ALL, 0, 85 / 12],
  ['three twice, half turns, gap 0.07', THREE, 2, 7, HALF, 0.07, 9.52955],
  ['three twice, half turns, gap 0.7', THREE, 2, 7, HALF, 0.7, 12.1392],
  ['six of fu', FU.slice(0, 6), 1, 38, STRAIGHT, 0, 23],
  ['six of fu, quarter turns', FU.slice(0, 6), 1, 38, ALL, 0, 19],
  ['six of fu, gap 0.38', FU.slice(0, 6), 1, 38, STRAIGHT, 0.38, 24.38],
  ['six of fu, gap 3.8', FU.slice(0, 6), 1, 38, STRAIGHT, 3.8, 27.8],
  ['eight of fu', FU, 1, 38, STRAIGHT, 0, 24],
  ['eight of fu, quarter turns', FU, 1, 38, ALL, 0, 155.5 / 7],
];

/** Millimetres a unit of the strips is drawn as. */
const STRIP_SCALE = 100;

export function strips(): MustReachLength[] {
  return STRIPS.map(([name, pieces, copies, width, turns, gap, length]) => {
    const outlines = pieces.map((piece) => ringOf(piece.map(([x, y]) => [x * STRIP_SCALE, y * STRIP_SCALE])));
    const low = outlines.map((outline) => Math.min(...outline.map((p) => p.y)));
    const problem = problemOf(pieces[0], [60 * STRIP_SCALE, width * STRIP_SCALE], gap * STRIP_SCALE, turns, {
      parts: outlines.map((outline, k) => ({ id: String(k), outline: outline.map((p) => ({ x: p.x, y: p.y - low[k] })), openings: [], turns })),
      demand: { kind: 'counts', counts: pieces.map(() => copies) },
    });
    return { name, problem, length: length * STRIP_SCALE };
  });
}
