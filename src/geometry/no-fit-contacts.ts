import { insideAny } from './minkowski.ts';
import type { NoFit } from './no-fit.ts';

/**
 * What keeps a shift from moving further: moved by a small m, it is at least `distance` + normal · m away from one contact
 * edge, for any m. `distance` is negative for a shift at which the interiors meet: then the normal is a way out and the
 * promise holds only roughly.
 */
export interface ShiftContact {
  readonly distance: number;
  /** Unit vector, doubles. */
  readonly normalX: number;
  readonly normalY: number;
}

/** A shift as near as this to a contact edge, µm, stands on it: its direction from the edge is noise, the edge's normal is not. */
const ON_EDGE = 2 ** -10;
/** Of contacts whose normals differ by less than about a quarter of a degree the nearest one speaks for all. */
const SAME_NORMAL = 0.99999;

/**
 * The contact edges within `reach` of the shift (x, y), nearest first. Constructed in doubles: a guide for moving blanks,
 * to be checked exactly afterwards. The shift need not be whole.
 *
 * From outside, each edge is a convex set, so that its distance is at least what the linear rule says wherever the shift is
 * moved (see ShiftContact).
 */
export function contactsAt(noFit: NoFit, x: number, y: number, reach: number): ShiftContact[] {
  if (insideAny(noFit.sums, x, y)) return [nearestExit(noFit, x, y)];
  const { count, x0, y0, x1, y1 } = noFit.edges;
  const found: ShiftContact[] = [];
  const atCorner: ShiftContact[] = [];
  for (let k = 0; k < count; k++) {
    const ax = x0[k];
    const ay = y0[k];
    const bx = x1[k];
    const by = y1[k];
    if ((ax < bx ? ax : bx) > x + reach || (ax > bx ? ax : bx) < x - reach || (ay < by ? ay : by) > y + reach || (ay > by ? ay : by) < y - reach) continue;
    const dx = bx - ax;
    const dy = by - ay;
    const along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy);
    const t = along < 0 ? 0 : along > 1 ? 1 : along;
    const gapX = x - ax - t * dx;
    const gapY = y - ay - t * dy;
    const distance = Math.sqrt(gapX * gapX + gapY * gapY);
    if (distance > reach) continue;
    if (distance > ON_EDGE) found.push({ distance, normalX: gapX / distance, normalY: gapY / distance });
    else (t === along ? found : atCorner).push({ distance, ...outward(dx, dy) });
  }
  // A shift on a corner of the boundary may leave either edge's side; one of them is enough to hold it.
  if (atCorner.length > 0 && !found.some(({ distance }) => distance <= ON_EDGE)) found.push(atCorner[0]);
  return distinct(found.sort((p, q) => p.distance - q.distance));
}

/** Right of the direction: away from the overlap. */
function outward(dx: number, dy: number): Pick<ShiftContact, 'normalX' | 'normalY'> {
  const length = Math.sqrt(dx * dx + dy * dy);
  return { normalX: dy / length, normalY: -dx / length };
}

/** The shortest way from a shift at which the interiors meet to one at which they only touch. */
export function nearestExit({ edges, pieces }: NoFit, x: number, y: number): ShiftContact {
  let best = Infinity;
  let bestX = 0;
  let bestY = 0;
  let bestSegment = 0;
  for (const { segment, from, to } of pieces) {
    const ax = edges.x0[segment];
    const ay = edges.y0[segment];
    const dx = edges.x1[segment] - ax;
    const dy = edges.y1[segment] - ay;
    const along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy);
    const t = along < from ? from : along > to ? to : along;
    const outX = ax + t * dx - x;
    const outY = ay + t * dy - y;
    const square = outX * outX + outY * outY;
    if (square >= best) continue;
    best = square;
    bestX = outX;
    bestY = outY;
    bestSegment = segment;
  }
  const depth = Math.sqrt(best);
  if (depth > ON_EDGE) return { distance: -depth, normalX: bestX / depth, normalY: bestY / depth };
  return { distance: -depth, ...outward(edges.x1[bestSegment] - edges.x0[bestSegment], edges.y1[bestSegment] - edges.y0[bestSegment]) };
}

function distinct(contacts: readonly ShiftContact[]): ShiftContact[] {
  const kept: ShiftContact[] = [];
  for (const contact of contacts) {
    if (!kept.some((other) => other.normalX * contact.normalX + other.normalY * contact.normalY > SAME_NORMAL)) kept.push(contact);
  }
  return kept;
}
