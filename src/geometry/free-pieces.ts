import type { Segments } from './contact-edges.ts';
import type { ConvexPolygons } from './minkowski.ts';

/**
 * A part of a segment, from parameter `from` to `to` (0 at its start, 1 at its end), ends included; a single point has
 * `from` = `to`.
 */
export interface Piece {
  readonly segment: number;
  readonly from: number;
  readonly to: number;
}

/**
 * What is left of the segments when the open convex polygons are taken out.
 *
 * Each parameter is a quotient of two determinants that are exact below 2⁵³, so it is the true quotient correctly rounded:
 * two polygons that touch on a segment give the same number, and the point between them stays. Quotients that differ by less
 * than 2⁻⁵³ may also fall together, so a single point is a candidate until it is checked.
 */
export function freePieces(segments: Segments, polygons: ConvexPolygons): Piece[] {
  const { x0, y0, x1, y1 } = segments;
  const { box } = polygons;
  const pieces: Piece[] = [];
  const span: [number, number] = [0, 0];
  for (let s = 0; s < segments.count; s++) {
    const minX = Math.min(x0[s], x1[s]);
    const maxX = Math.max(x0[s], x1[s]);
    const minY = Math.min(y0[s], y1[s]);
    const maxY = Math.max(y0[s], y1[s]);
    const taken: [number, number][] = [];
    let covered = false;
    for (let k = 0; k < polygons.count && !covered; k++) {
      const b = 4 * k;
      if (box[b] >= maxX || box[b + 1] >= maxY || box[b + 2] <= minX || box[b + 3] <= minY) continue;
      if (!clip(polygons, k, x0[s], y0[s], x1[s], y1[s], span)) continue;
      covered = span[0] < 0 && span[1] > 1;
      taken.push([span[0], span[1]]);
    }
    if (!covered) remainder(s, taken, pieces);
  }
  return pieces;
}

/** Parameters outside the segment: the polygon holds that end. */
const BEFORE = -1;
const AFTER = 2;

/** The open part of the segment inside polygon k, into `span`; false when there is none. */
function clip({ start, x, y }: ConvexPolygons, k: number, px: number, py: number, qx: number, qy: number, span: [number, number]): boolean {
  let from = BEFORE;
  let to = AFTER;
  const end = start[k + 1];
  for (let i = start[k], h = end - 1; i < end; h = i++) {
    const dx = x[i] - x[h];
    const dy = y[i] - y[h];
    const atP = dx * (py - y[h]) - dy * (px - x[h]);
    const atQ = dx * (qy - y[h]) - dy * (qx - x[h]);
    if (atP <= 0) {
      if (atQ <= 0) return false;
      from = Math.max(from, atP / (atP - atQ));
    } else if (atQ <= 0) {
      to = Math.min(to, atP / (atP - atQ));
    } else continue;
    if (from >= to) return false;
  }
  span[0] = from;
  span[1] = to;
  return true;
}

/** The closed remainder of [0, 1] without the open spans. */
function remainder(segment: number, taken: [number, number][], pieces: Piece[]): void {
  taken.sort((p, q) => p[0] - q[0]);
  let from = 0;
  for (const [start, end] of taken) {
    if (start >= from) pieces.push({ segment, from, to: start });
    from = Math.max(from, end);
  }
  if (from <= 1) pieces.push({ segment, from, to: 1 });
}
