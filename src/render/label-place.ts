import { boxOf, type Point } from '../geometry/point.ts';
import { locatePoint } from '../geometry/predicates.ts';

export interface LabelPlace {
  readonly at: Point;
  /** Distance to the nearest line, same unit as the points. */
  readonly clearance: number;
}

export type Segment = readonly [Point, Point];

/** Places tried along each side of the box; the finest grid at which 400 different designs still take under a second. */
const STEPS = 32;

/**
 * The place for a number within a blank: among places at least `wanted` away from all lines the one nearest to the
 * middle of the box; where there is none, the one with the most room, and on a sliver that the grid misses the middle. Places on a grid only: it is a label, not a knife.
 * @param rings the outline, then its openings
 * @param lines further lines to stay clear of
 */
export function labelPlace(rings: readonly (readonly Point[])[], lines: readonly Segment[], wanted: number): LabelPlace {
  const [outer, ...holes] = rings;
  const { minX: left, maxX: right, minY: low, maxY: high } = boxOf(outer!);
  const middle = { x: (left + right) / 2, y: (low + high) / 2 };
  const edges = rings.flatMap((ring) => ring.map((from, i): Segment => [from, ring[(i + 1) % ring.length]!]));
  const all = [...edges, ...lines];

  let best: LabelPlace = { at: middle, clearance: 0 };
  let bestMerit = -Infinity;
  for (let i = 0; i <= STEPS; i++) {
    for (let j = 0; j <= STEPS; j++) {
      const at = { x: left + ((right - left) * i) / STEPS, y: low + ((high - low) * j) / STEPS };
      if (locatePoint(at, outer!) !== 'inside' || holes.some((hole) => locatePoint(at, hole) !== 'outside')) continue;
      let nearest = Infinity;
      for (const segment of all) nearest = Math.min(nearest, squaredDistance(at, segment));
      const clearance = Math.sqrt(nearest);
      const offCentre = Math.sqrt((at.x - middle.x) ** 2 + (at.y - middle.y) ** 2);
      // Enough room beats any place with less; then nearness, or room, decides.
      const merit = clearance >= wanted ? 1 / (1 + offCentre) : clearance - wanted;
      if (merit > bestMerit) [best, bestMerit] = [{ at, clearance }, merit];
    }
  }
  return best;
}

export function squaredDistance(p: Point, [a, b]: Segment): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const along = ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy || 1);
  const t = Math.min(1, Math.max(0, along));
  return (a.x + t * dx - p.x) ** 2 + (a.y + t * dy - p.y) ** 2;
}
