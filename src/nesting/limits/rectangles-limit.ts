import type { Point, Ring } from '../../geometry/point.ts';
import { boxOf, ringArea } from '../../geometry/point.ts';
import { turnRing } from '../../geometry/turn.ts';
import type { Limit, Part, Problem } from '../../layout/problem.ts';
import { keptAtGap } from '../kept-at-gap.ts';
import { remembered } from '../remembered.ts';
import type { Granted } from './granted.ts';
import { onlyPart } from './granted.ts';
import { innerHeight } from './inner-rectangles.ts';
import { limitOf } from './limit-of.ts';
import { alignedCount, turnedCount } from './rectangle-packing.ts';

/** Rectangles of a smaller share of the blank's area are passed over: the area itself limits better. */
const WORTHWHILE = 0.6;

/** Widths tried between half the blank's width and the whole, and ways of sharing the gap between width and height. */
const EVEN_STEPS = 12;

/**
 * Theorem. Let the outline hold a rectangle a × b. Grown by half the gap the copies have disjoint interiors, lie in the usable rectangle grown
 * likewise, and hold rectangles (a + x) × (b + y) for all x² + y² ≤ gap²; so limits for such rectangles hold for the blanks.
 *
 * The gap may not be added to both sides: two blanks that lie corner to corner keep it along the diagonal, and then come nearer than it in both
 * directions. All rectangles count, not only the largest: tried are those that are just too long for a whole part of the sheet.
 */
export function rectanglesLimit(problem: Problem, granted: Granted): Limit | undefined {
  const part = onlyPart(problem);
  if (!part) return undefined;
  const { turns } = part;
  const { upright, sideways } = roomsOf(part, granted.gap);
  const turned = turns.some((turn) => (turn - turns[0]!) % 2 !== 0);
  const count = turned ? turnedCount : alignedCount;
  const width = granted.width + granted.gap;
  const height = granted.height + granted.gap;
  const upper = leastCount(upright, [width, height], (a, b) => count(width, height, a, b), Infinity);
  const least = leastCount(sideways, [width, height], (b, a) => count(width, height, a, b), upper);
  return Number.isFinite(least) ? limitOf('rectangles', least) : undefined;
}

/**
 * The least count, below `least`, for a rectangle inside the grown ring: as wide as it, just over a whole part of one of the lengths, or of some even
 * width, each as high as it can be.
 */
function leastCount(room: Room, lengths: readonly number[], count: (width: number, height: number) => number, least: number): number {
  const worthwhile = WORTHWHILE * room.area;
  for (const width of sizes(room, lengths)) {
    // Both gains at once are more than any share of the gap gives: most widths are out of the question by that alone.
    if (count(width, room.boxHeight) >= least) continue;
    const most = room.mostHeight(width);
    if (width * most < worthwhile || count(width, most) >= least) continue;
    const height = room.height(width);
    if (width * height >= worthwhile) least = Math.min(least, count(width, height));
  }
  return least;
}

/** What rectangles one outline holds, looked at one way. */
interface Room {
  readonly area: number;
  /** Of the grown outline. */
  readonly width: number;
  readonly boxHeight: number;
  /** Of a rectangle of so much width inside the grown outline, and a number that it does not exceed. */
  readonly height: (width: number) => number;
  readonly mostHeight: (width: number) => number;
}

const roomsOf = keptAtGap(({ outline, turns }: Part, gap) => {
  const upright = turnRing(outline, turns[0]!);
  return { upright: roomOf(upright, gap), sideways: roomOf(mirrored(upright), gap) };
});

function roomOf(ring: Ring, gap: number): Room {
  const { minX, maxX, minY, maxY } = boxOf(ring);
  const height = remembered((width) => grownHeight(ring, gap, width));
  const mostHeight = remembered((width) => innerHeight(ring, width - Math.max(0, gap)) + Math.abs(gap));
  return { area: ringArea(ring), width: maxX - minX + gap, boxHeight: maxY - minY + Math.abs(gap), height, mostHeight };
}

/** Height of a rectangle of the given width inside the grown ring; 0 if none was found. */
function grownHeight(ring: Ring, gap: number, width: number): number {
  return Math.max(
    ...sharedGap(gap).map(({ x, y }) => {
      const height = innerHeight(ring, width - x);
      return height > 0 ? height + y : 0;
    }),
  );
}

/** What width and height may gain together; the rim itself where the gap is negative. */
function sharedGap(gap: number): Point[] {
  if (gap <= 0) return [{ x: gap, y: gap }];
  return Array.from({ length: EVEN_STEPS + 1 }, (_, k) => Math.floor((gap * k) / EVEN_STEPS)).map((x) => ({ x, y: Math.floor(Math.sqrt(gap * gap - x * x)) }));
}

function sizes({ width: whole }: Room, lengths: readonly number[]): number[] {
  const least = Math.ceil(whole / 2);
  const found = new Set([whole]);
  for (let k = 0; k < EVEN_STEPS; k++) found.add(least + Math.round(((whole - least) * k) / EVEN_STEPS));
  for (const length of lengths) {
    for (let parts = Math.floor(length / whole) + 1; ; parts++) {
      const size = Math.floor(length / parts) + 1;
      if (size < least) break;
      found.add(size);
    }
  }
  return [...found];
}

/** x and y exchanged, counter-clockwise again. */
function mirrored(ring: Ring): Ring {
  return ring.map(({ x, y }): Point => ({ x: y, y: x })).toReversed();
}
