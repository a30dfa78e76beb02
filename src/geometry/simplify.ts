import type { Box, Point, Ring } from './point.ts';
import { boxOf } from './point.ts';
import { determinant } from './predicates.ts';
import { between, distanceBetween, dot, minus } from './vector.ts';

export interface Simplified {
  /** Holds the given ring; simple; its box is the given ring's box. */
  readonly ring: Ring;
  /** No point of the new outline is further than this from the given outline, µm; at most the tolerance. */
  readonly deviationMicrons: number;
}

/**
 * The ring with fewer corners, grown nowhere by more than the tolerance. Two changes, cheapest first: a reflex or flat
 * corner is left out, and a convex edge is left out by running its neighbours on to where they meet, rounded outward to
 * whole micrometres. A change that would touch another edge, or leave the box, is not made.
 *
 * The ring must be simple and counter-clockwise. Time O(n²) at worst.
 */
export function simplifyOutward(ring: Ring, toleranceMicrons: number): Simplified {
  const outline = new Outline(ring);
  const changes = new Map<Corner, Change>();
  const propose = (corner: Corner) => {
    const change = cheapest(outline.box, corner);
    if (change && change.deviation <= toleranceMicrons) changes.set(corner, change);
    else changes.delete(corner);
  };
  for (const corner of outline.corners()) propose(corner);
  while (outline.size > 3 && changes.size > 0) {
    const [corner, change] = least(changes);
    changes.delete(corner);
    if (!outline.allows(change)) continue;
    const joined = outline.make(change);
    change.removed.forEach((gone) => changes.delete(gone));
    for (let k = 0, near = joined.before.before.before; k < 7; k++, near = near.after) propose(near);
  }
  const corners = [...outline.corners()];
  return {
    ring: corners.map(({ at }) => at),
    deviationMicrons: corners.reduce((most, { deviation }) => Math.max(most, deviation), 0),
  };
}

interface Corner {
  readonly at: Point;
  before: Corner;
  after: Corner;
  /** How far the edge that leaves this corner may be from the given outline. */
  deviation: number;
}

/** Replaces the corners `removed`, neighbours of one another, by `place`, or by nothing. */
interface Change {
  readonly from: Corner;
  readonly to: Corner;
  readonly removed: readonly Corner[];
  readonly place: Point | undefined;
  readonly deviation: number;
}

function least(changes: ReadonlyMap<Corner, Change>): [Corner, Change] {
  let best: [Corner, Change] | undefined;
  for (const entry of changes) if (!best || entry[1].deviation < best[1].deviation) best = entry;
  return best!;
}

/** The cheaper of leaving this corner out and leaving out the edge that leaves it. */
function cheapest(box: Box, corner: Corner): Change | undefined {
  const { before, after } = corner;
  if (determinant(before.at, corner.at, after.at) <= 0) {
    const moved = distance(corner.at, before.at, after.at);
    return { from: before, to: after, removed: [corner], place: undefined, deviation: Math.max(before.deviation, corner.deviation) + moved };
  }
  const end = after.after;
  if (determinant(corner.at, after.at, end.at) <= 0) return undefined;
  const place = meeting(box, before.at, corner.at, after.at, end.at);
  if (!place) return undefined;
  const moved = Math.max(distance(place, corner.at, after.at), distance(corner.at, before.at, place), distance(after.at, place, end.at));
  const deviation = Math.max(before.deviation, corner.deviation, after.deviation) + moved;
  return { from: before, to: end, removed: [corner, after], place, deviation };
}

/**
 * The whole point nearest to edge bc, in the box, from which b stays on the left of the line from a and c on the left of
 * the line to d: beside the place where ab and dc meet beyond bc, when they do.
 */
function meeting(box: Box, a: Point, b: Point, c: Point, d: Point): Point | undefined {
  const ux = b.x - a.x;
  const uy = b.y - a.y;
  const vx = d.x - c.x;
  const vy = d.y - c.y;
  const cross = ux * vy - uy * vx;
  if (cross <= 0) return undefined;
  const t = ((c.x - b.x) * vy - (c.y - b.y) * vx) / cross;
  const x = Math.floor(b.x + t * ux);
  const y = Math.floor(b.y + t * uy);
  let best: Point | undefined;
  for (let dx = -1; dx <= 2; dx++) {
    for (let dy = -1; dy <= 2; dy++) {
      const p = { x: x + dx, y: y + dy };
      if (p.x < box.minX || p.x > box.maxX || p.y < box.minY || p.y > box.maxY) continue;
      if (determinant(a, p, b) < 0 || determinant(p, d, c) < 0 || determinant(b, p, c) <= 0) continue;
      if (!best || distance(p, b, c) < distance(best, b, c)) best = p;
    }
  }
  return best;
}

class Outline {
  readonly box: Box;
  size: number;
  private first: Corner;

  constructor(ring: Ring) {
    this.box = boxOf(ring);
    this.size = ring.length;
    const corners = ring.map((at) => ({ at, deviation: 0 }) as Corner);
    corners.forEach((corner, i) => {
      corner.before = corners[(i + corners.length - 1) % corners.length];
      corner.after = corners[(i + 1) % corners.length];
    });
    this.first = corners[0];
  }

  *corners(): Generator<Corner> {
    let corner = this.first;
    do {
      yield corner;
      corner = corner.after;
    } while (corner !== this.first);
  }

  /** Whether the new edges keep clear of all others, so that the outline stays simple. */
  allows({ from, to, removed, place }: Change): boolean {
    const stops = place ? [from.at, place, to.at] : [from.at, to.at];
    for (const corner of this.corners()) {
      if (corner === from || removed.includes(corner)) continue;
      const a = corner.at;
      const b = corner.after.at;
      for (let i = 0; i + 1 < stops.length; i++) {
        const shared = corner === to && i + 2 === stops.length ? b : corner.after === from && i === 0 ? a : undefined;
        if (shared ? foldsBack(shared, stops[i], stops[i + 1], corner === to ? to.at : from.at) : touches(a, b, stops[i], stops[i + 1])) return false;
      }
    }
    return true;
  }

  make({ from, to, removed, place, deviation }: Change): Corner {
    const next: Corner = place ? { at: place, before: from, after: to, deviation } : to;
    from.after = next;
    from.deviation = deviation;
    to.before = place ? next : from;
    this.size += (place ? 1 : 0) - removed.length;
    if (removed.includes(this.first)) this.first = from;
    return from;
  }
}

/** Whether the edge from the shared corner to `other` lies on the new edge, so that they overlap. */
function foldsBack(other: Point, start: Point, end: Point, shared: Point): boolean {
  const far = start === shared ? end : start;
  const along = (other.x - shared.x) * (far.x - shared.x) + (other.y - shared.y) * (far.y - shared.y);
  return determinant(shared, far, other) === 0 && along > 0;
}

/** Whether two closed segments share a point. */
function touches(a: Point, b: Point, c: Point, d: Point): boolean {
  if (Math.max(a.x, b.x) < Math.min(c.x, d.x) || Math.max(c.x, d.x) < Math.min(a.x, b.x)) return false;
  if (Math.max(a.y, b.y) < Math.min(c.y, d.y) || Math.max(c.y, d.y) < Math.min(a.y, b.y)) return false;
  return Math.sign(determinant(a, b, c)) * Math.sign(determinant(a, b, d)) <= 0 && Math.sign(determinant(c, d, a)) * Math.sign(determinant(c, d, b)) <= 0;
}

/** Distance from p to the segment from a to b. */
function distance(p: Point, a: Point, b: Point): number {
  const along = minus(b, a);
  const length = dot(along, along);
  const t = length === 0 ? 0 : Math.min(1, Math.max(0, dot(minus(p, a), along) / length));
  return distanceBetween(p, between(a, b, t));
}
