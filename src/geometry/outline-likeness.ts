import { boxOf, reverseRing, shiftRing, type Box, type Point, type Ring } from './point.ts';
import { turnRing, TURNS, type Turn } from './turn.ts';
import { between, distanceBetween, dot, minus } from './vector.ts';

/** How near one outline comes to another when it is laid on it as well as it can be. */
export interface Likeness {
  /**
   * Hausdorff distance, µm: no point of either outline is farther from the other outline. Reached by the pose found; a
   * better pose may exist between those tried, but not by more than `STEP` in each direction of a smooth valley.
   */
  readonly distance: number;
  /** How the second outline was turned, after it was mirrored. */
  readonly turn: Turn;
  readonly mirrored: boolean;
}

/** Shifts are searched down to this, µm. */
const STEP = 10;
/** Distances are found to this, µm. */
const RESOLUTION = 5;

/**
 * The least distance over quarter turns, mirror and shifts; undefined where it is above `within`. Outlines turned by other
 * angles are not looked for.
 */
export function outlineLikeness(a: Ring, b: Ring, within: number): Likeness | undefined {
  const target = centred(a);
  let best: Likeness | undefined;
  for (const mirrored of [false, true]) {
    const seen = mirrored ? reverseRing(b.map(({ x, y }) => ({ x: -x, y }))) : b;
    for (const turn of TURNS) {
      const posed = centred(turnRing(seen, turn));
      const reach = Math.min(within, best?.distance ?? Infinity);
      if (!sidesWithin(boxOf(target), boxOf(posed), 2 * reach)) continue;
      const distance = leastDistance(target, posed, reach);
      if (distance <= within && distance < (best?.distance ?? Infinity)) best = { distance, turn, mirrored };
    }
  }
  return best;
}

/** The middle of the box at the origin. */
function centred(ring: Ring): Ring {
  const { minX, minY, maxX, maxY } = boxOf(ring);
  return shiftRing(ring, { x: -(minX + maxX) / 2, y: -(minY + maxY) / 2 });
}

/** Where outlines are within d, each side of a box differs by at most 2d. */
function sidesWithin(a: Box, b: Box, most: number): boolean {
  return Math.abs(a.maxX - a.minX - (b.maxX - b.minX)) <= most && Math.abs(a.maxY - a.minY - (b.maxY - b.minY)) <= most;
}

/**
 * Shifts from the middle downhill. The best shift lies within `within` of it along each axis, since the boxes' sides then
 * are, so an outline farther than (1 + √2) · within there is given up at once.
 */
function leastDistance(a: Ring, b: Ring, within: number): number {
  const at = (shift: Point, cap: number) => outlineDistance(a, shiftRing(b, shift), cap);
  let shift: Point = { x: 0, y: 0 };
  let least = at(shift, (1 + Math.SQRT2) * within);
  if (least === Infinity) return Infinity;
  for (let step = Math.max(STEP, within / 2); step >= STEP; ) {
    const steps = [-1, 0, 1].flatMap((i) => [-1, 0, 1].map((j) => ({ x: shift.x + i * step, y: shift.y + j * step })));
    const better = steps.map((place) => ({ place, distance: at(place, least) })).reduce((one, other) => (other.distance < one.distance ? other : one));
    if (better.distance < least) [shift, least] = [better.place, better.distance];
    else step /= 2;
  }
  return least;
}

/** Hausdorff distance of two outlines as they lie, µm; infinity where it is above `cap`. */
export function outlineDistance(a: Ring, b: Ring, cap: number): number {
  const one = farthest(a, b, 0, cap);
  return one === Infinity ? Infinity : farthest(b, a, one, cap);
}

interface Seen {
  readonly point: Point;
  readonly distance: number;
  /** The edge of the other outline that is nearest. */
  readonly edge: number;
}

/**
 * How far the farthest point of one outline is from the other, at least `floor`. The distance to one edge is convex along a
 * straight piece, so at its ends it is largest: a piece whose ends are near to a common edge needs no further look, others
 * are halved.
 */
function farthest(from: Ring, to: Ring, floor: number, cap: number): number {
  let most = floor;
  const look = (point: Point): Seen => {
    const seen = nearestEdge(point, to);
    most = Math.max(most, seen.distance);
    return seen;
  };
  const starts = from.map(look);
  const open = starts.map((start, i): [Seen, Seen] => [start, starts[(i + 1) % starts.length]]);
  while (open.length > 0) {
    if (most > cap) return Infinity;
    const [p, q] = open.pop()!;
    const bound = Math.min(Math.max(p.distance, toEdge(q.point, to, p.edge)), Math.max(q.distance, toEdge(p.point, to, q.edge)));
    if (bound <= most + RESOLUTION || distanceBetween(p.point, q.point) <= RESOLUTION) continue;
    const middle = look(between(p.point, q.point, 0.5));
    open.push([p, middle], [middle, q]);
  }
  return most > cap ? Infinity : most;
}

function nearestEdge(point: Point, ring: Ring): Seen {
  let [edge, distance] = [0, Infinity];
  for (let i = 0; i < ring.length; i++) {
    const own = toEdge(point, ring, i);
    if (own < distance) [edge, distance] = [i, own];
  }
  return { point, distance, edge };
}

function toEdge(point: Point, ring: Ring, edge: number): number {
  const start = ring[edge];
  const along = minus(ring[(edge + 1) % ring.length], start);
  const length = dot(along, along);
  const t = length === 0 ? 0 : Math.max(0, Math.min(1, dot(minus(point, start), along) / length));
  return distanceBetween(point, { x: start.x + t * along.x, y: start.y + t * along.y });
}
