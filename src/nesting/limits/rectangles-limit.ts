import type { Point, Ring } from '../../geometry/point.ts';
import { boxOf } from '../../geometry/point.ts';
import { turnRing } from '../../geometry/turn.ts';
import type { Limit, Problem } from '../../layout/problem.ts';
import type { Granted } from './granted.ts';
import { onlyOutline } from './granted.ts';
import { innerHeight } from './inner-rectangles.ts';
import { limitOf } from './limit-of.ts';
import { alignedCount, turnedCount } from './rectangle-packing.ts';

/** Widths tried between half the blank's width and the whole. */
const EVEN_WIDTHS = 12;

/**
 * Theorem. If the outline holds a rectangle a × b, the rectangles (a + gap) × (b + gap) that stand on the lower left corners of the copies' inner
 * rectangles have disjoint interiors and lie in the usable rectangle made longer by the gap; so limits for rectangles hold for the blanks.
 *
 * All inner rectangles count, not only the largest: those are tried whose width is just over a whole part of the sheet.
 */
export function rectanglesLimit(problem: Problem, granted: Granted): Limit | undefined {
  const outline = onlyOutline(problem);
  if (!outline) return undefined;
  const turns = problem.parts[0]!.turns;
  const upright = turnRing(outline, turns[0]!);
  const turned = turns.some((turn) => (turn - turns[0]!) % 2 !== 0);
  const count = turned ? turnedCount : alignedCount;
  const width = granted.width + granted.gap;
  const height = granted.height + granted.gap;
  let least = Infinity;
  for (const { a, b } of innerRectangles(upright, granted.gap, [width, height])) {
    least = Math.min(least, count(width, height, a + granted.gap, b + granted.gap));
  }
  return Number.isFinite(least) ? limitOf('rectangles', least) : undefined;
}

/** Rectangles inside the ring whose width or height is the whole box, a whole part of a length just passed, or one of some even steps. */
function innerRectangles(ring: Ring, gap: number, lengths: readonly number[]): { a: number; b: number }[] {
  const flipped = mirrored(ring);
  const found = [
    ...[...widths(ring, gap, lengths)].map((a) => ({ a, b: innerHeight(ring, a) })),
    ...[...widths(flipped, gap, lengths)].map((b) => ({ a: innerHeight(flipped, b), b })),
  ];
  return found.filter(({ a, b }) => Math.min(a, b) + gap > 0 && Math.min(a, b) > 0);
}

function widths(ring: Ring, gap: number, lengths: readonly number[]): Set<number> {
  const { minX, maxX } = boxOf(ring);
  const whole = maxX - minX;
  const least = Math.ceil(whole / 2);
  const found = new Set([whole]);
  for (let k = 0; k < EVEN_WIDTHS; k++) found.add(least + Math.round(((whole - least) * k) / EVEN_WIDTHS));
  for (const length of lengths) {
    for (let parts = Math.floor(length / (whole + gap)) + 1; ; parts++) {
      const a = Math.floor(length / parts) + 1 - gap;
      if (a < least) break;
      found.add(a);
    }
  }
  return found;
}

/** x and y exchanged, counter-clockwise again. */
function mirrored(ring: Ring): Ring {
  return ring.map(({ x, y }): Point => ({ x: y, y: x })).toReversed();
}
