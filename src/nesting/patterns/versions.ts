import { boxOf, shiftRing, type Point, type Ring } from '../../geometry/point.ts';
import { turnRing, type Turn } from '../../geometry/turn.ts';
import type { Part } from '../../layout/problem.ts';

/** The part's outline in one allowed rotation. */
export interface Version {
  readonly turn: Turn;
  /** Lower left corner of the box at the origin. */
  readonly ring: Ring;
  readonly width: number;
  readonly height: number;
  /** Lower left corner of the box when the design's origin is at the origin. */
  readonly offset: Point;
}

/** Outlines are taken for the same when no corner of one is farther than this from the other's, µm: a knife's accuracy. */
const SAME_WITHIN = 20;

/** The allowed rotations that look different, in the part's order of preference. A round has one, an oval two at most. */
export function differentVersions(part: Part): Version[] {
  const versions: Version[] = [];
  for (const turn of part.turns) {
    const version = versionOf(part, turn);
    if (!versions.some((known) => looksLike(known, version))) versions.push(version);
  }
  return versions;
}

function versionOf(part: Part, turn: Turn): Version {
  const ring = turnRing(part.outline, turn);
  const { minX, minY, maxX, maxY } = boxOf(ring);
  return { turn, ring: shiftRing(ring, { x: -minX, y: -minY }), width: maxX - minX, height: maxY - minY, offset: { x: minX, y: minY } };
}

function looksLike(a: Version, b: Version): boolean {
  if (Math.abs(a.width - b.width) > SAME_WITHIN || Math.abs(a.height - b.height) > SAME_WITHIN) return false;
  return liesOn(a.ring, b.ring) && liesOn(b.ring, a.ring);
}

function liesOn(points: Ring, ring: Ring): boolean {
  return points.every((p) => ring.some((q, i) => squareFromSegment(p, q, ring[(i + 1) % ring.length]) <= SAME_WITHIN * SAME_WITHIN));
}

function squareFromSegment(p: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
  const ex = a.x + t * dx - p.x;
  const ey = a.y + t * dy - p.y;
  return ex * ex + ey * ey;
}
