import { distanceBetween as distance } from '../geometry/vector.ts';
import { edge, forNearEdges, nearestOnSegment, segmentNearness, type Nearness } from './judge-distance.ts';
import type { Shape, Spot } from './judge-shape.ts';
import { JUDGE_TOLERANCE_MM } from './judge-tolerance.ts';

/** Shorter straight edges are no rule that two blanks could share. */
export const SHORTEST_COMMON_KNIFE_MM = 1;

/** Whether edge i of the first shape and edge j of the second may lie on one rule. */
export type MayShare = (i: number, j: number) => boolean;

type Segment = readonly [Spot, Spot];

/**
 * The nearest approach of two blanks that may share a knife. Two straight edges on one line that overlap, or meet end
 * to end as at the corner of four blanks, need no gap; nor does anything within `reach` of where they do.
 */
export function nearnessBesideCommonKnife(a: Shape, b: Shape, shift: Spot, reach: number, mayShare: MayShare): Nearness | undefined {
  const nearEdges: (readonly [Segment, Segment])[] = [];
  const shared: Segment[] = [];
  forNearEdges(a, b, shift, reach, (i, j) => {
    const pair = [edge(a, i, { x: 0, y: 0 }), edge(b, j, shift)] as const;
    nearEdges.push(pair);
    const stretch = a.straight[i] && b.straight[j] && mayShare(i, j) ? sharedStretch(...pair) : undefined;
    if (stretch) shared.push(stretch);
    return reach;
  });
  let worst: Nearness | undefined;
  for (const [first, second] of nearEdges) {
    for (const candidate of approaches(first, second, reach)) {
      if (candidate.distance > (worst?.distance ?? reach) || candidate.distance === worst?.distance) continue;
      if (shared.every(([from, to]) => distance(candidate.place, nearestOnSegment(candidate.place, from, to)) > reach)) worst = candidate;
    }
  }
  return worst;
}

/**
 * A long edge is looked at all along, since its nearest place may be excused where others are not: this often within
 * the reach, and no closer than this.
 */
const LOOKS_IN_REACH = 8;
const CLOSEST_LOOKS_MM = 0.25;

function* approaches([p, q]: Segment, [r, s]: Segment, reach: number): Generator<Nearness> {
  yield segmentNearness(p, q, r, s);
  const count = Math.ceil(distance(p, q) / Math.max(CLOSEST_LOOKS_MM, reach / LOOKS_IN_REACH));
  for (let i = 0; i <= count; i++) {
    const point = { x: p.x + (i / count) * (q.x - p.x), y: p.y + (i / count) * (q.y - p.y) };
    const foot = nearestOnSegment(point, r, s);
    yield { distance: distance(point, foot), place: { x: (point.x + foot.x) / 2, y: (point.y + foot.y) / 2 } };
  }
}

/**
 * Where two edges on one line overlap or meet end to end, a meeting being a stretch of no length. Both ends of the
 * stretch lie on both lines, which do not part by more than the tolerance within the shortest common knife.
 */
function sharedStretch([p, q]: Segment, [r, s]: Segment): Segment | undefined {
  const [length, otherLength] = [distance(p, q), distance(r, s)];
  if (Math.min(length, otherLength) < SHORTEST_COMMON_KNIFE_MM) return undefined;
  const unit = { x: (q.x - p.x) / length, y: (q.y - p.y) / length };
  const parting = Math.abs(unit.x * (s.y - r.y) - unit.y * (s.x - r.x)) / otherLength;
  if (parting * SHORTEST_COMMON_KNIFE_MM > JUDGE_TOLERANCE_MM) return undefined;
  const along = (point: Spot) => (point.x - p.x) * unit.x + (point.y - p.y) * unit.y;
  const from = Math.max(0, Math.min(along(r), along(s)));
  const to = Math.min(length, Math.max(along(r), along(s)));
  const ends = [from, to].map((at) => ({ x: p.x + at * unit.x, y: p.y + at * unit.y })) as [Spot, Spot];
  return ends.every((end) => distance(end, nearestOnSegment(end, r, s)) <= JUDGE_TOLERANCE_MM) ? ends : undefined;
}
