import { boxOf, shiftRing, type Point, type Ring } from '../../geometry/point.ts';
import { turnRing, type Turn } from '../../geometry/turn.ts';
import type { Part } from '../../layout/problem.ts';
import { distinctTurns } from '../distinct-turns.ts';

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

/** The allowed rotations that look different, in the part's order of preference. A round has one, an oval two at most. */
export function differentVersions(part: Part): Version[] {
  return distinctTurns(part.outline, part.turns).map((turn) => versionOf(part, turn));
}

function versionOf(part: Part, turn: Turn): Version {
  const ring = turnRing(part.outline, turn);
  const { minX, minY, maxX, maxY } = boxOf(ring);
  return { turn, ring: shiftRing(ring, { x: -minX, y: -minY }), width: maxX - minX, height: maxY - minY, offset: { x: minX, y: minY } };
}
