import { indexBoxes } from './box-index.ts';
import { COORDINATE_LIMIT, boxOf, doubleArea, type Point, type Ring } from './point.ts';
import { crossing, onSegment, orient } from './predicates.ts';
import { inSector } from './sector.ts';
import { dot, minus, samePoint } from './vector.ts';

export type RingFaultKind =
  /** Fewer than three different points; `indices` is empty. */
  | 'too-few-points'
  /** A coordinate is no whole number of micrometres. */
  | 'not-whole'
  /** A coordinate is beyond COORDINATE_LIMIT. */
  | 'out-of-range'
  /** Point `indices[1]` repeats the one before it, `indices[0]`. */
  | 'duplicate-point'
  /** The outline turns back on itself at point `indices[0]`. */
  | 'spike'
  /** Edges `indices[0]` and `indices[1]` (named by the point they start from) pass through one another. */
  | 'self-crossing'
  /** The same edges meet without passing through, in a point or along a stretch. */
  | 'self-touch'
  /** Clockwise where counter-clockwise was wanted, or the other way round; `indices` is empty. */
  | 'wrong-orientation';

export interface RingFault {
  readonly kind: RingFaultKind;
  /** µm; constructed, so rounded, for crossings within both edges. */
  readonly place: Point;
  readonly indices: readonly number[];
}

export interface Expected {
  readonly orientation?: 'counter-clockwise' | 'clockwise';
  /** Looks for no more crossings and touches after so many; an outline crossing itself everywhere has n² of them. */
  readonly mostMeetings?: number;
}

/**
 * Everything that keeps a ring from being a simple outline, with places; empty for a sound one. Each kind is exact. Every
 * meeting is named once, with the first pair of edges found there. Faulty coordinates hide the faults that follow from them.
 */
export function ringFaults(ring: Ring, { orientation = 'counter-clockwise', mostMeetings = 100 }: Expected = {}): RingFault[] {
  const faults = ring.flatMap((place, i) => coordinateFault(place, i));
  if (faults.length > 0) return faults;
  const corners = [...ring.keys()].filter((i) => ring.length === 1 || !samePoint(ring[i], ring[before(ring, i)]));
  const repeats = ring.length === 1 ? [] : [...ring.keys()].filter((i) => samePoint(ring[i], ring[before(ring, i)]));
  faults.push(...repeats.map((i): RingFault => ({ kind: 'duplicate-point', place: ring[i], indices: [before(ring, i), i] })));
  if (corners.length < 3) return [...faults, { kind: 'too-few-points', place: ring[0] ?? { x: 0, y: 0 }, indices: [] }];
  const clean = corners.map((i) => ring[i]);
  const found = [...spikes(clean), ...meetings(clean, mostMeetings)];
  faults.push(...found.map((fault) => ({ ...fault, indices: fault.indices.map((i) => corners[i]) })));
  const area = doubleArea(clean);
  if (area !== 0 && area > 0 !== (orientation === 'counter-clockwise')) {
    faults.push({ kind: 'wrong-orientation', place: ring[0], indices: [] });
  }
  return faults;
}

function before(ring: Ring, i: number): number {
  return (i + ring.length - 1) % ring.length;
}

function after(ring: Ring, i: number): number {
  return (i + 1) % ring.length;
}

function coordinateFault(place: Point, i: number): RingFault[] {
  if (!Number.isInteger(place.x) || !Number.isInteger(place.y)) return [{ kind: 'not-whole', place, indices: [i] }];
  const far = Math.max(Math.abs(place.x), Math.abs(place.y)) > COORDINATE_LIMIT;
  return far ? [{ kind: 'out-of-range', place, indices: [i] }] : [];
}

function spikes(ring: Ring): RingFault[] {
  return ring.flatMap((place, i): RingFault[] => {
    const previous = ring[before(ring, i)];
    const next = ring[after(ring, i)];
    const turnsBack = orient(previous, place, next) === 0 && dot(minus(previous, place), minus(next, place)) > 0;
    return turnsBack ? [{ kind: 'spike', place, indices: [i] }] : [];
  });
}

/** Edges that are not neighbours and share a point. Neighbours that share more than their corner are spikes. */
function meetings(ring: Ring, most: number): RingFault[] {
  const boxes = ring.map((p, i) => boxOf([p, ring[after(ring, i)]]));
  const index = indexBoxes(boxes);
  const byPlace = new Map<string, RingFault>();
  for (let i = 0; i < ring.length && byPlace.size < most; i++) {
    for (const j of index.search(boxes[i])) {
      if (j <= i || j === after(ring, i) || i === after(ring, j)) continue;
      const fault = meeting(ring, i, j);
      if (!fault) continue;
      const key = `${fault.place.x} ${fault.place.y}`;
      const known = byPlace.get(key);
      if (!known || (known.kind === 'self-touch' && fault.kind === 'self-crossing')) byPlace.set(key, fault);
    }
  }
  return [...byPlace.values()];
}

function meeting(ring: Ring, i: number, j: number): RingFault | undefined {
  const found = crossing(ring[i], ring[after(ring, i)], ring[j], ring[after(ring, j)]);
  const indices = [i, j];
  switch (found.kind) {
    case 'none':
      return undefined;
    case 'proper':
      return { kind: 'self-crossing', place: found.at, indices };
    case 'overlap':
      return { kind: 'self-touch', place: found.from, indices };
    case 'touch':
      return { kind: passesThrough(ring, i, j, found.at) ? 'self-crossing' : 'self-touch', place: found.at, indices };
  }
}

/** Whether the outline, coming through p along edge j, changes from one side of its way along edge i to the other. */
function passesThrough(ring: Ring, i: number, j: number, p: Point): boolean {
  const first = strand(ring, i, p);
  const second = strand(ring, j, p);
  const alongEachOther = [first.back, first.on].some((a) => [second.back, second.on].some((b) => sameDirection(a, b)));
  if (alongEachOther) return false;
  const left = { start: first.on, end: first.back };
  return inSector(second.back, left) !== inSector(second.on, left);
}

/** The directions in which the outline leaves p, backwards and onwards. */
function strand(ring: Ring, i: number, p: Point): { back: Point; on: Point } {
  const from = samePoint(p, ring[i]) ? before(ring, i) : i;
  const to = samePoint(p, ring[after(ring, i)]) ? after(ring, after(ring, i)) : after(ring, i);
  return { back: minus(ring[from], p), on: minus(ring[to], p) };
}

function sameDirection(a: Point, b: Point): boolean {
  return onSegment(a, { x: 0, y: 0 }, b) || onSegment(b, { x: 0, y: 0 }, a);
}
