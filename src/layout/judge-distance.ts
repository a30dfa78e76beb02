import { BLOCK, type Shape, type Spot } from './judge-shape.ts';

/** How near two outlines come: the distance of their lines (0 where they touch or cross) and the middle of the nearest place. */
export interface Nearness {
  readonly distance: number;
  readonly place: Spot;
}

/**
 * Calls `visit` for every pair of edges, i of `a` and j of `b` shifted by `shift`, whose boxes come within `reach`.
 * `visit` returns the reach to go on with.
 */
export function forNearEdges(a: Shape, b: Shape, shift: Spot, reach: number, visit: (i: number, j: number) => number): void {
  const { blocks: as } = a;
  const { blocks: bs } = b;
  for (let p = 0; p < as.length; p += 4) {
    const minX = as[p]! - shift.x;
    const minY = as[p + 1]! - shift.y;
    const maxX = as[p + 2]! - shift.x;
    const maxY = as[p + 3]! - shift.y;
    if (minX > b.maxX + reach || maxX < b.minX - reach || minY > b.maxY + reach || maxY < b.minY - reach) continue;
    for (let q = 0; q < bs.length; q += 4) {
      if (minX > bs[q + 2]! + reach || maxX < bs[q]! - reach || minY > bs[q + 3]! + reach || maxY < bs[q + 1]! - reach) continue;
      const lastA = Math.min(a.xs.length, (p / 4 + 1) * BLOCK);
      const lastB = Math.min(b.xs.length, (q / 4 + 1) * BLOCK);
      for (let i = (p / 4) * BLOCK; i < lastA; i++) {
        for (let j = (q / 4) * BLOCK; j < lastB; j++) {
          if (edgeBoxesWithin(a, i, b, j, shift, reach)) reach = visit(i, j);
        }
      }
    }
  }
}

function edgeBoxesWithin(a: Shape, i: number, b: Shape, j: number, shift: Spot, reach: number): boolean {
  const i2 = i + 1 === a.xs.length ? 0 : i + 1;
  const j2 = j + 1 === b.xs.length ? 0 : j + 1;
  const [ax, ax2, bx, bx2] = [a.xs[i]! - shift.x, a.xs[i2]! - shift.x, b.xs[j]!, b.xs[j2]!];
  if (Math.min(ax, ax2) > Math.max(bx, bx2) + reach || Math.min(bx, bx2) > Math.max(ax, ax2) + reach) return false;
  const [ay, ay2, by, by2] = [a.ys[i]! - shift.y, a.ys[i2]! - shift.y, b.ys[j]!, b.ys[j2]!];
  return Math.min(ay, ay2) <= Math.max(by, by2) + reach && Math.min(by, by2) <= Math.max(ay, ay2) + reach;
}

/** The least distance of two outlines if it is at most `reach`. Whether one lies inside the other is another question. */
export function nearness(a: Shape, b: Shape, shift: Spot, reach: number): Nearness | undefined {
  let best: Nearness | undefined;
  forNearEdges(a, b, shift, reach, (i, j) => {
    const found = edgeNearness(a, i, b, j, shift);
    if (found.distance <= (best?.distance ?? reach) && found.distance !== best?.distance) best = found;
    return best?.distance ?? reach;
  });
  return best;
}

export function edgeNearness(a: Shape, i: number, b: Shape, j: number, shift: Spot): Nearness {
  const [p, q] = edge(a, i, { x: 0, y: 0 });
  const [r, s] = edge(b, j, shift);
  return segmentNearness(p, q, r, s);
}

export function edge(shape: Shape, i: number, shift: Spot): [Spot, Spot] {
  const next = i + 1 === shape.xs.length ? 0 : i + 1;
  return [
    { x: shape.xs[i]! + shift.x, y: shape.ys[i]! + shift.y },
    { x: shape.xs[next]! + shift.x, y: shape.ys[next]! + shift.y },
  ];
}

/** Distance and place of the nearest approach of segments pq and rs. */
export function segmentNearness(p: Spot, q: Spot, r: Spot, s: Spot): Nearness {
  const sideR = cross(p, q, r);
  const sideS = cross(p, q, s);
  if (sideR > 0 !== sideS > 0 && cross(r, s, p) > 0 !== cross(r, s, q) > 0) {
    const along = sideR / (sideR - sideS);
    return { distance: 0, place: { x: r.x + along * (s.x - r.x), y: r.y + along * (s.y - r.y) } };
  }
  let best = towards(p, r, s);
  for (const other of [towards(q, r, s), towards(r, p, q), towards(s, p, q)]) if (other.distance < best.distance) best = other;
  return best;
}

function cross(o: Spot, a: Spot, b: Spot): number {
  return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
}

/** From a point to a segment; the place is the middle between the point and its foot. */
function towards(point: Spot, a: Spot, b: Spot): Nearness {
  const foot = nearestOnSegment(point, a, b);
  return { distance: Math.sqrt((foot.x - point.x) ** 2 + (foot.y - point.y) ** 2), place: { x: (foot.x + point.x) / 2, y: (foot.y + point.y) / 2 } };
}

export function nearestOnSegment(point: Spot, a: Spot, b: Spot): Spot {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((point.x - a.x) * dx + (point.y - a.y) * dy) / square));
  return { x: a.x + t * dx, y: a.y + t * dy };
}

/** Distance from a point to a shape's outline, whichever side the point is on. */
export function outlineDistance(shape: Shape, point: Spot): number {
  let best = Infinity;
  const { blocks, xs, ys } = shape;
  for (let p = 0; p < blocks.length; p += 4) {
    const outX = Math.max(blocks[p]! - point.x, point.x - blocks[p + 2]!, 0);
    const outY = Math.max(blocks[p + 1]! - point.y, point.y - blocks[p + 3]!, 0);
    if (outX * outX + outY * outY >= best) continue;
    for (let i = (p / 4) * BLOCK; i < Math.min(xs.length, (p / 4 + 1) * BLOCK); i++) {
      const next = i + 1 === xs.length ? 0 : i + 1;
      const [ax, ay] = [xs[i]!, ys[i]!];
      const [dx, dy] = [xs[next]! - ax, ys[next]! - ay];
      const t = Math.max(0, Math.min(1, ((point.x - ax) * dx + (point.y - ay) * dy) / (dx * dx + dy * dy)));
      const square = (ax + t * dx - point.x) ** 2 + (ay + t * dy - point.y) ** 2;
      if (square < best) best = square;
    }
  }
  return Math.sqrt(best);
}

/** By counting the edges to the right. Points nearer to the outline than rounding may come out either way. */
export function isInside(shape: Shape, { x, y }: Spot): boolean {
  if (x < shape.minX || x > shape.maxX || y < shape.minY || y > shape.maxY) return false;
  const { blocks, xs, ys } = shape;
  let inside = false;
  for (let p = 0; p < blocks.length; p += 4) {
    if (y < blocks[p + 1]! || y > blocks[p + 3]! || x > blocks[p + 2]!) continue;
    for (let i = (p / 4) * BLOCK; i < Math.min(xs.length, (p / 4 + 1) * BLOCK); i++) {
      const j = i + 1 === xs.length ? 0 : i + 1;
      if (ys[i]! > y !== ys[j]! > y && x < xs[i]! + ((y - ys[i]!) / (ys[j]! - ys[i]!)) * (xs[j]! - xs[i]!)) inside = !inside;
    }
  }
  return inside;
}
