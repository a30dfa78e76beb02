import type { ConvexPolygons } from './minkowski.ts';
import { insideAny } from './minkowski.ts';
import type { NoFit } from './no-fit.ts';

/**
 * What keeps a shift from moving further: moved by any m, it is at least `distance` + normal · m away from one convex part
 * of the forbidden shifts at gap 0. `distance` is negative for a shift at which the interiors meet: then the normal is a
 * way out and the promise holds only roughly.
 */
export interface ShiftContact {
  readonly distance: number;
  /** Unit vector, doubles. */
  readonly normalX: number;
  readonly normalY: number;
}

/** A shift as near as this to an edge, µm, stands on it: its direction from the edge is noise, the edge's normal is not. */
const ON_EDGE = 2 ** -10;
/** Cosine above which two normals are one (10⁻⁶ rad): parts seen by a common edge or corner. The nearest speaks for all. */
const SAME_NORMAL = 1 - 5e-13;

/**
 * The convex parts within `reach` of the shift (x, y), nearest first, parts behind the same edge or corner once.
 * Constructed in doubles: a guide for moving blanks, to be checked exactly afterwards. The shift need not be whole.
 *
 * The distance to a convex set is a convex function of the shift, so the linear rule of ShiftContact bounds it from below
 * however far the shift is moved; and a shift far enough from every part is allowed.
 */
export function contactsAt(noFit: NoFit, x: number, y: number, reach: number): ShiftContact[] {
  const { sums } = noFit;
  if (insideAny(sums, x, y)) return [nearestExit(noFit, x, y)];
  const { count, box } = sums;
  const found: ShiftContact[] = [];
  for (let k = 0; k < count; k++) {
    const b = 4 * k;
    if (box[b] > x + reach || box[b + 1] > y + reach || box[b + 2] < x - reach || box[b + 3] < y - reach) continue;
    const contact = contactWith(sums, k, x, y);
    if (contact.distance <= reach) found.push(contact);
  }
  return distinct(found.sort((p, q) => p.distance - q.distance));
}

/** The nearest point of convex polygon k to a point outside it or on its edge. */
function contactWith({ start, x, y }: ConvexPolygons, k: number, px: number, py: number): ShiftContact {
  const from = start[k];
  const to = start[k + 1];
  let least = Infinity;
  let awayX = 0;
  let awayY = 0;
  let nearest = from;
  for (let b = from, a = to - 1; b < to; a = b++) {
    const dx = x[b] - x[a];
    const dy = y[b] - y[a];
    // Only edges that face the point can be nearest.
    if (dx * (py - y[a]) - dy * (px - x[a]) > 0) continue;
    const along = ((px - x[a]) * dx + (py - y[a]) * dy) / (dx * dx + dy * dy);
    const t = along < 0 ? 0 : along > 1 ? 1 : along;
    const ux = px - x[a] - t * dx;
    const uy = py - y[a] - t * dy;
    const square = ux * ux + uy * uy;
    if (square >= least) continue;
    least = square;
    awayX = ux;
    awayY = uy;
    nearest = b;
  }
  const distance = Math.sqrt(least);
  if (distance > ON_EDGE) return { distance, normalX: awayX / distance, normalY: awayY / distance };
  const before = nearest === from ? to - 1 : nearest - 1;
  return { distance, ...outward(x[nearest] - x[before], y[nearest] - y[before]) };
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
