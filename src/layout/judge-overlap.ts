import { edge, forNearEdges, isInside, outlineDistance } from './judge-distance.ts';
import type { Shape, Spot } from './judge-shape.ts';

/** How deep one blank lies in another: the farthest that a point met of either outline is inside the other one. */
export interface Overlap {
  readonly depth: number;
  /** In the coordinates of the first shape. */
  readonly place: Spot;
}

/**
 * Measures the overlap of `a` and `b` shifted by `shift`. Every edge is parted where it meets the other outline; a part
 * lies wholly inside or outside, so its inner points tell. Two inner points of the shapes themselves tell of shapes
 * that coincide. Depth 0: they touch at most.
 */
export function overlapOf(a: Shape, b: Shape, shift: Spot): Overlap {
  const back = { x: -shift.x, y: -shift.y };
  const inB = deepest([...innerPoints(a, b, shift), a.core], b, shift);
  const inA = deepest([...innerPoints(b, a, back), b.core], a, back);
  return inA.depth > inB.depth ? { depth: inA.depth, place: { x: inA.place.x + shift.x, y: inA.place.y + shift.y } } : inB;
}

function deepest(points: readonly Spot[], other: Shape, shift: Spot): Overlap {
  let best: Overlap = { depth: 0, place: points[0]! };
  for (const point of points) {
    const there = { x: point.x - shift.x, y: point.y - shift.y };
    if (!isInside(other, there)) continue;
    const depth = outlineDistance(other, there);
    if (depth > best.depth) best = { depth, place: point };
  }
  return best;
}

/** Where a part of an edge is looked at; the ends of parts lie on the other outline or belong to the next part. */
const LOOKS = [0.25, 0.5, 0.75];

/** Points of `a`'s outline, within `b`'s box: its corners and, on every part of every edge, some points between. */
function innerPoints(a: Shape, b: Shape, shift: Spot): Spot[] {
  const meetings = new Map<number, number[]>();
  forNearEdges(a, b, shift, 0, (i, j) => {
    const list = meetings.get(i) ?? [];
    list.push(...partings(edge(a, i, { x: 0, y: 0 }), edge(b, j, shift)));
    meetings.set(i, list);
    return 0;
  });
  const points: Spot[] = [];
  for (let i = 0; i < a.xs.length; i++) {
    const [from, to] = edge(a, i, { x: 0, y: 0 });
    if (!boxesMeet(from, to, b, shift)) continue;
    points.push(from);
    const cuts = [0, ...(meetings.get(i) ?? []), 1].sort((s, t) => s - t);
    for (let k = 0; k + 1 < cuts.length; k++) {
      const [s, t] = [cuts[k]!, cuts[k + 1]!];
      if (s === t) continue;
      for (const look of LOOKS) {
        const at = s + look * (t - s);
        points.push({ x: from.x + at * (to.x - from.x), y: from.y + at * (to.y - from.y) });
      }
    }
  }
  return points;
}

/** Parameters along the first segment where the second one's line may part it. Too many do no harm. */
function partings([p, q]: readonly [Spot, Spot], [r, s]: readonly [Spot, Spot]): number[] {
  const [dx, dy] = [q.x - p.x, q.y - p.y];
  const [ex, ey] = [s.x - r.x, s.y - r.y];
  const turn = dx * ey - dy * ex;
  const square = dx * dx + dy * dy;
  const along = turn === 0
    ? [r, s].map((end) => ((end.x - p.x) * dx + (end.y - p.y) * dy) / square)
    : [((r.x - p.x) * ey - (r.y - p.y) * ex) / turn];
  return along.filter((t) => t > 0 && t < 1);
}

function boxesMeet(from: Spot, to: Spot, b: Shape, shift: Spot): boolean {
  return (
    Math.min(from.x, to.x) <= b.maxX + shift.x &&
    Math.max(from.x, to.x) >= b.minX + shift.x &&
    Math.min(from.y, to.y) <= b.maxY + shift.y &&
    Math.max(from.y, to.y) >= b.minY + shift.y
  );
}
