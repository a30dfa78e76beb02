import type { Ring } from './point.ts';
import { withoutStraights } from './without-straights.ts';

/** Segments in flat arrays: segment k runs from (x0, y0) to (x1, y1). */
export interface Segments {
  readonly count: number;
  readonly x0: Float64Array;
  readonly y0: Float64Array;
  readonly x1: Float64Array;
  readonly y1: Float64Array;
}

/**
 * Every shift at which b may touch a without their interiors meeting lies on one of these segments: a corner of one
 * slides along an edge of the other, and the corner is convex and lies locally on the outer side of that edge. (Any other
 * contact crosses the edge at once.) Directed so that the shifts just left of a segment overlap.
 * This is the convolution of a with b turned through the origin, less its reflex corners (Guibas, Ramshaw and Stolfi, "A
 * kinetic framework for computational geometry", FOCS 1983; reduced by Behar and Lien, IROS 2011).
 * Whole micrometres, ends exact. Rings counter-clockwise, simple; flat vertices are passed over.
 */
export function contactEdges(a: Ring, b: Ring): Segments {
  const left = cornersOf(a, 1);
  const right = cornersOf(b, -1);
  const found: number[] = [];
  slide(left, right, found);
  slide(right, left, found);
  return distinct(found);
}

/** Four numbers a segment, each segment once: outlines like themselves in another turn give many of them twice or more. */
function distinct(found: readonly number[]): Segments {
  const kept: number[] = [];
  const withStart = new Map<number, number[]>();
  for (let at = 0; at < found.length; at += 4) {
    // Coordinates are within 2²⁵: the key is a whole number below 2⁵³, and no two starts share one.
    const key = found[at] * 2 ** 27 + found[at + 1];
    const known = withStart.get(key);
    if (known?.some((other) => found[other + 2] === found[at + 2] && found[other + 3] === found[at + 3])) continue;
    if (known) known.push(at);
    else withStart.set(key, [at]);
    kept.push(at);
  }
  const pick = (offset: number) => Float64Array.from(kept, (at) => found[at + offset]);
  return { count: kept.length, x0: pick(0), y0: pick(1), x1: pick(2), y1: pick(3) };
}

/** The corners of a ring that are not flat, with the edge that leaves each. */
interface Corners {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly dx: Float64Array;
  readonly dy: Float64Array;
}

function cornersOf(ring: Ring, sign: 1 | -1): Corners {
  const corners = withoutStraights(ring);
  const after = (i: number) => corners[(i + 1) % corners.length];
  return {
    count: corners.length,
    x: Float64Array.from(corners, (p) => sign * p.x),
    y: Float64Array.from(corners, (p) => sign * p.y),
    dx: Float64Array.from(corners, (p, i) => sign * (after(i).x - p.x)),
    dy: Float64Array.from(corners, (p, i) => sign * (after(i).y - p.y)),
  };
}

/** Adds each edge of `edges` moved by every convex corner of `corners` whose cone of directions, ends included, holds it. */
function slide(edges: Corners, corners: Corners, found: number[]): void {
  for (let j = 0; j < corners.count; j++) {
    const before = (j + corners.count - 1) % corners.count;
    const inX = corners.dx[before];
    const inY = corners.dy[before];
    const outX = corners.dx[j];
    const outY = corners.dy[j];
    if (inX * outY - inY * outX <= 0) continue;
    const x = corners.x[j];
    const y = corners.y[j];
    for (let i = 0; i < edges.count; i++) {
      const dx = edges.dx[i];
      const dy = edges.dy[i];
      if (inX * dy - inY * dx < 0 || dx * outY - dy * outX < 0) continue;
      const fromX = edges.x[i] + x;
      const fromY = edges.y[i] + y;
      found.push(fromX, fromY, fromX + dx, fromY + dy);
    }
  }
}
