import { nearerThan } from '../../geometry/nearer-than.ts';
import type { Corner, Profile } from './profile.ts';

/**
 * How far above one outline another must stand: for a shift to the right, the least whole lift from which on (and for
 * every greater one) the two keep the gap; −Infinity when they cannot meet at that shift. Exact on whole micrometres.
 */
export type Contact = (shift: number) => number;

/** Stretches of the shift for which the touches that can decide are listed. */
const BUCKETS = 256;
/** Rounding error of a computed lift is far below this, µm; nearer to a whole number than this the case is decided exactly. */
const DOUBTFUL = 1e-6;

/**
 * Numbers of a touch: both ends of the segment (x0 < x1) and which of them count at gap 0 (1 left, 2 right); then what the
 * grown segment is asked for over and over: how far its ends lean aside, and gap × length.
 */
const STRIDE = 7;

/** The lower outline as seen from above against the upper outline as seen from below. */
export function createContact(below: Profile, above: Profile, gap: number): Contact {
  const touches = touchesOf(below, above, gap);
  const { first, list, most, start, step } = bucketsOf(touches, gap);
  const heightAt = gap === 0 ? bareHeight : grownHeight;
  const clears = gap === 0 ? bareClears : grownClears;

  return (shift) => {
    const bucket = Math.floor((shift - start) / step);
    if (bucket < 0 || bucket >= BUCKETS) return -Infinity;
    const from = first[bucket];
    const to = first[bucket + 1];
    let height = -Infinity;
    for (let k = from; k < to && most[k] > height; k++) {
      const h = heightAt(touches, list[k], shift, gap);
      if (h > height) height = h;
    }
    if (height === -Infinity) return height;
    const lift = Math.ceil(height - DOUBTFUL);
    if (height <= lift - DOUBTFUL) return lift;
    for (let k = from; k < to && most[k] > height - DOUBTFUL; k++) {
      if (heightAt(touches, list[k], shift, gap) > lift - DOUBTFUL && !clears(touches, list[k], shift, lift, gap)) return lift + 1;
    }
    return lift;
  };
}

/**
 * Where a corner of one slides along an edge of the other, as segments in the plane of shift and lift: the lifts under
 * a segment, grown by the gap, are forbidden, and the contact is the envelope of them all. Only corners whose
 * neighbours lie on the far side of the edge's line can touch it so. At gap 0 outlines may touch, and at the ends of the
 * segment the corner stands just beside the edge: an end counts only where the outline goes on past it, so that a slit
 * of no width stays open.
 */
function touchesOf(below: Profile, above: Profile, gap: number): Float64Array {
  const touches: number[] = [];
  const add = (x0: number, y0: number, x1: number, y1: number, ends: number) => {
    const length = Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
    touches.push(x0, y0, x1, y1, ends, (gap * (y1 - y0)) / length, gap * length);
  };
  for (const { from, to } of below.edges) {
    for (const corner of above.corners) {
      if (!leavesUpwards(corner, to.x - from.x, to.y - from.y)) continue;
      const { x, y } = corner.at;
      add(from.x - x, from.y - y, to.x - x, to.y - y, (goesRight(corner) ? 1 : 0) + (goesLeft(corner) ? 2 : 0));
    }
  }
  for (const { from, to } of above.edges) {
    for (const corner of below.corners) {
      if (!leavesUpwards(corner, from.x - to.x, from.y - to.y)) continue;
      const { x, y } = corner.at;
      add(x - to.x, y - to.y, x - from.x, y - from.y, (goesLeft(corner) ? 1 : 0) + (goesRight(corner) ? 2 : 0));
    }
  }
  return Float64Array.from(touches);
}

/** Whether both ways out of the corner lead to the left of the direction (dx, dy), or along it. */
function leavesUpwards({ back, ahead }: Corner, dx: number, dy: number): boolean {
  return back.y * dx >= back.x * dy && ahead.y * dx >= ahead.x * dy;
}

function goesRight({ back, ahead }: Corner): boolean {
  return back.x > 0 || ahead.x > 0;
}

function goesLeft({ back, ahead }: Corner): boolean {
  return back.x < 0 || ahead.x < 0;
}

/**
 * Bucket b lists the touches that can be highest somewhere in it, `list[first[b]] … list[first[b + 1] − 1]`, those that
 * can go highest first; `most` is how high each can go there.
 */
function bucketsOf(touches: Float64Array, gap: number) {
  const { start, step } = bucketRange(touches, gap);
  const floors = bucketFloors(touches, gap, start, step);
  const lists: { at: number; most: number }[][] = Array.from({ length: BUCKETS }, () => []);
  for (let at = 0; at < touches.length; at += STRIDE) {
    const from = Math.max(0, Math.floor((touches[at] - gap - start) / step));
    const to = Math.min(BUCKETS - 1, Math.floor((touches[at + 2] + gap - start) / step));
    for (let b = from; b <= to; b++) {
      const most = mostOver(touches, at, start + b * step, start + (b + 1) * step, gap);
      if (most >= floors[b]) lists[b].push({ at, most: most + DOUBTFUL });
    }
  }
  const first = new Int32Array(BUCKETS + 1);
  lists.forEach((members, b) => {
    members.sort((p, q) => q.most - p.most);
    first[b + 1] = first[b] + members.length;
  });
  const all = lists.flat();
  return { start, step, first, list: Int32Array.from(all, ({ at }) => at), most: Float64Array.from(all, ({ most }) => most) };
}

function bucketRange(touches: Float64Array, gap: number) {
  let min = Infinity;
  let max = -Infinity;
  for (let at = 0; at < touches.length; at += STRIDE) {
    min = Math.min(min, touches[at]);
    max = Math.max(max, touches[at + 2]);
  }
  return { start: min - gap, step: (max - min + 2 * gap + 1) / BUCKETS };
}

/** A height that the envelope does not fall below anywhere in the bucket. */
function bucketFloors(touches: Float64Array, gap: number, start: number, step: number): Float64Array {
  const floors = new Float64Array(BUCKETS).fill(-Infinity);
  for (let at = 0; at < touches.length; at += STRIDE) {
    const from = Math.max(0, Math.floor((touches[at] - start) / step) + 1);
    for (let b = from; start + (b + 1) * step < touches[at + 2] && b < BUCKETS; b++) {
      const height = Math.min(lineAt(touches, at, start + b * step), lineAt(touches, at, start + (b + 1) * step)) + gap - DOUBTFUL;
      if (height > floors[b]) floors[b] = height;
    }
  }
  return floors;
}

/** An upper bound of the grown segment over [left, right]; −Infinity when out of reach. */
function mostOver(touches: Float64Array, at: number, left: number, right: number, gap: number): number {
  const from = Math.max(touches[at], left - gap);
  const to = Math.min(touches[at + 2], right + gap);
  if (from > to) return -Infinity;
  const aside = Math.max(0, left - to, from - right);
  return Math.max(lineAt(touches, at, from), lineAt(touches, at, to)) + Math.sqrt(Math.max(0, gap * gap - aside * aside));
}

function lineAt(touches: Float64Array, at: number, x: number): number {
  const x0 = touches[at];
  const y0 = touches[at + 1];
  return y0 + ((x - x0) * (touches[at + 3] - y0)) / (touches[at + 2] - x0);
}

function counts(touches: Float64Array, at: number, x: number): boolean {
  const x0 = touches[at];
  const x1 = touches[at + 2];
  return (x > x0 && x < x1) || (x === x0 && (touches[at + 4] & 1) !== 0) || (x === x1 && touches[at + 4] >= 2);
}

function bareHeight(touches: Float64Array, at: number, x: number): number {
  return counts(touches, at, x) ? lineAt(touches, at, x) : -Infinity;
}

/** Products of whole numbers below 2²⁶ each: exact. */
function bareClears(touches: Float64Array, at: number, x: number, lift: number): boolean {
  const [x0, y0] = [touches[at], touches[at + 1]];
  return !counts(touches, at, x) || (lift - y0) * (touches[at + 2] - x0) >= (x - x0) * (touches[at + 3] - y0);
}

/** Top of the segment grown by the gap, over x. */
function grownHeight(touches: Float64Array, at: number, x: number, gap: number): number {
  const x0 = touches[at];
  const x1 = touches[at + 2];
  if (x <= x0 - gap || x >= x1 + gap) return -Infinity;
  const y0 = touches[at + 1];
  const dx = x1 - x0;
  const dy = touches[at + 3] - y0;
  if (dy === 0) return x < x0 ? discHeight(x - x0, y0, gap) : x > x1 ? discHeight(x - x1, y0, gap) : y0 + gap;
  const lean = touches[at + 5];
  if (x < x0 - lean) return discHeight(x - x0, y0, gap);
  if (x > x1 - lean) return discHeight(x - x1, y0 + dy, gap);
  return y0 + ((x - x0) * dy + touches[at + 6]) / dx;
}

function discHeight(aside: number, y: number, gap: number): number {
  return aside > -gap && aside < gap ? y + Math.sqrt(gap * gap - aside * aside) : -Infinity;
}

function grownClears(touches: Float64Array, at: number, x: number, lift: number, gap: number): boolean {
  if (touches[at + 1] === touches[at + 3] && x >= touches[at] && x <= touches[at + 2]) return lift - touches[at + 1] >= gap;
  return !nearerThan(x, lift, touches[at], touches[at + 1], touches[at + 2], touches[at + 3], gap);
}
