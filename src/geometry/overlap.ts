import { visitNearEdges } from './near-edges.ts';
import { counterClockwise, type Point, type Ring } from './point.ts';
import { crossing, locatePoint, onSegment } from './predicates.ts';
import { sectorAtEdge, sectorAtPoint, sectorsOverlap, type Sector } from './sector.ts';
import { samePoint } from './vector.ts';

/**
 * Whether the areas within two rings share more than lines and points; touching is no overlap. Exact for simple rings of
 * either orientation.
 *
 * Where edges cross properly, they do. Otherwise every contact is at a vertex of one of them: if the boundaries have a
 * contact, the areas overlap just when their sectors there do (walking along a boundary that enters the other area, one
 * comes to a contact, and there the sectors overlap). Without a contact one ring lies wholly inside or outside the other.
 */
export function ringsOverlap(a: Ring, b: Ring): boolean {
  const first = counterClockwise(a);
  const second = counterClockwise(b);
  let contact = false;
  let overlap = false;
  visitNearEdges(first, second, 0, (i, j) => {
    const [a0, a1] = edgeOf(first, i);
    const [b0, b1] = edgeOf(second, j);
    const meeting = crossing(a0, a1, b0, b1);
    if (meeting.kind === 'none') return 0;
    contact = true;
    overlap =
      meeting.kind === 'proper' ||
      [a0, a1, b0, b1].some(
        (p) => onSegment(p, a0, a1) && onSegment(p, b0, b1) && sectorsOverlap(sectorOn(first, i, p), sectorOn(second, j, p)),
      );
    return overlap ? -1 : 0;
  });
  if (contact) return overlap;
  return locatePoint(first[0], second) === 'inside' || locatePoint(second[0], first) === 'inside';
}

function edgeOf(ring: Ring, i: number): readonly [Point, Point] {
  return [ring[i], ring[(i + 1) % ring.length]];
}

/** The ring's inner side at a point of its edge i. */
function sectorOn(ring: Ring, i: number, p: Point): Sector {
  const [a, b] = edgeOf(ring, i);
  if (samePoint(p, a)) return sectorAtPoint(ring, i);
  return samePoint(p, b) ? sectorAtPoint(ring, (i + 1) % ring.length) : sectorAtEdge(a, b);
}
