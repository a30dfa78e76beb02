import { createRandom } from '../../src/base/random.ts';
import type { Ring } from '../../src/geometry/point.ts';
import { boxOf } from '../../src/geometry/point.ts';
import type { Turn } from '../../src/geometry/turn.ts';
import { turnBox } from '../../src/geometry/turn.ts';
import type { Placement, Problem } from '../../src/layout/problem.ts';

/** Outlines in µm on a bare sheet in µm: no margins, no bleed, all quarter turns. */
export function bareProblem(outlines: readonly Ring[], width: number, height: number, gap: number, more: Partial<Problem> = {}): Problem {
  const sheet = { minX: 0, minY: 0, maxX: width, maxY: height };
  return {
    sheet: { width, height },
    usable: sheet,
    printable: sheet,
    lay: 'left',
    keepOuts: [],
    rules: { gap, bleed: 0, bleedMeeting: 'apart', commonKnife: false },
    parts: outlines.map((outline, i) => ({ id: `${i}`, outline, openings: [], turns: [0, 1, 2, 3] })),
    demand: { kind: 'most' },
    locked: [],
    symmetry: 'none',
    ...more,
  };
}

/** The layout shaken: every coordinate by at most `by`. */
export function shaken(placements: readonly Placement[], by: number, seed: number): Placement[] {
  const random = createRandom(seed);
  return placements.map((p) => ({ ...p, x: p.x + random.below(2 * by + 1) - by, y: p.y + random.below(2 * by + 1) - by }));
}

/** Part 0 in columns and rows, boxes `gap` apart, the first in the sheet's lower left corner. */
export function boxGrid(outline: Ring, columns: number, rows: number, gap: number, turn: Turn = 0): Placement[] {
  const box = turnBox(boxOf(outline), turn);
  const stepX = box.maxX - box.minX + gap;
  const stepY = box.maxY - box.minY + gap;
  return Array.from({ length: columns * rows }, (_, k) => ({ part: 0, turn, x: (k % columns) * stepX - box.minX, y: Math.floor(k / columns) * stepY - box.minY }));
}

export const rectangleRing = (width: number, height: number): Ring => [{ x: 0, y: 0 }, { x: width, y: 0 }, { x: width, y: height }, { x: 0, y: height }];
