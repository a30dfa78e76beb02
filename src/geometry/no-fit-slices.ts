import type { NoFit } from './no-fit.ts';
import { forbids } from './no-fit.ts';
import { nearerThan } from './nearer-than.ts';

export type Axis = 'x' | 'y';

/** Every whole shift from `from` to `to`, ends included, is allowed; ±Infinity where there is no end. */
export interface FreeInterval {
  readonly from: number;
  readonly to: number;
}

/** No bounds. */
export const EVERYWHERE: FreeInterval = { from: -Infinity, to: Infinity };

/**
 * The whole shifts along `axis` that a no-fit polygon allows while the shift across it is `at`: for axis 'x' the shifts
 * (x, at). Sorted, with at least one forbidden whole shift between two intervals. Exact, the gap included. With a `window`
 * of whole ends only the shifts in it are told, which costs the less the narrower it is.
 */
export function freeIntervals(noFit: NoFit, axis: Axis, at: number, window = EVERYWHERE): FreeInterval[] {
  const spans = noFit.gap === 0 ? crossingSpans(noFit, axis, at, window) : reachSpans(noFit, axis, at, window);
  const isForbidden = axis === 'x' ? (shift: number) => forbids(noFit, shift, at) : (shift: number) => forbids(noFit, at, shift);
  const free: FreeInterval[] = [];
  const add = (from: number, to: number) => {
    const last = free.at(-1);
    if (last && last.to === from - 1) free[free.length - 1] = { from: last.from, to };
    else free.push({ from, to });
  };
  // Between two spans nothing changes, so one whole shift speaks for all there. Far enough out all are free.
  const isFree = (shift: number) => shift === -Infinity || !isForbidden(shift);
  let next = window.from;
  for (const [from, to] of spans) {
    if (from > window.to) break;
    if (from > next && isFree(next)) add(next, from - 1);
    if (noFit.gap === 0 && from === to && from >= next && !isForbidden(from)) add(from, from);
    next = Math.max(next, to + 1);
  }
  if (next <= window.to && (window.to === Infinity || isFree(next))) add(next, window.to);
  return free;
}

/** The least allowed whole shift along the axis that is not below `from`. */
export function leastShift(noFit: NoFit, axis: Axis, at: number, from = 0): number {
  const interval = freeIntervals(noFit, axis, at).find(({ to }) => to >= from)!;
  return Math.max(interval.from, from);
}

/**
 * The least whole step p > 0 at which an endless row of one outline stands free: every multiple of p along the axis is
 * allowed by the outline's no-fit polygon with itself.
 */
export function leastPitch(selfNoFit: NoFit, axis: Axis): number {
  return leastRepeat(freeIntervals(selfNoFit, axis, 0));
}

/** The least whole step p > 0 all whose multiples lie in the intervals, the last of which has no end. */
export function leastRepeat(intervals: readonly FreeInterval[]): number {
  const free = intervals.filter(({ to }) => to > 0);
  const isFree = (shift: number) => free.some(({ from, to }) => shift >= from && shift <= to);
  const clear = free.at(-1)!.from;
  for (const { from, to } of free) {
    for (let step = Math.max(from, 1); step <= to && step < clear; ) {
      let multiple = step;
      while (multiple < clear && isFree(multiple)) multiple += step;
      if (multiple >= clear) return step;
      // The multiple fell into a forbidden span; the next step worth trying carries it to that span's end.
      const count = multiple / step;
      const end = free.find((interval) => interval.from > multiple)!.from;
      step = Math.max(step + 1, Math.ceil(end / count));
    }
  }
  return Math.max(clear, 1);
}

type Span = readonly [from: number, to: number];

/**
 * At gap 0: the whole shifts between two crossings of the line with the boundary are of one kind. The spans returned are
 * the whole shifts at crossings, and empty ones (to = from − 1) where a crossing falls between two whole shifts.
 */
function crossingSpans({ edges, pieces }: NoFit, axis: Axis, at: number, window: FreeInterval): Span[] {
  const [u0, v0, u1, v1] = axis === 'x' ? [edges.x0, edges.y0, edges.x1, edges.y1] : [edges.y0, edges.x0, edges.y1, edges.x1];
  const spans: Span[] = [];
  const add = (u: number) => spans.push([Math.ceil(u) + 0, Math.floor(u) + 0]);
  for (const { segment, from, to } of pieces) {
    if (isBeside(u0[segment], u1[segment], window, 1)) continue;
    const across = v1[segment] - v0[segment];
    const along = u1[segment] - u0[segment];
    if (across === 0) {
      if (v0[segment] !== at) continue;
      // These ends are rounded: the whole shifts on either side are tried.
      for (const end of [u0[segment] + from * along, u0[segment] + to * along]) {
        add(Math.floor(end));
        add(Math.ceil(end));
      }
    } else {
      // The quotient is rounded correctly, as are the piece's ends, so an end at this very height is not missed.
      const t = (at - v0[segment]) / across;
      if (t >= from && t <= to) add(u0[segment] + ((at - v0[segment]) * along) / across);
    }
  }
  return spans.sort((p, q) => p[0] - q[0] || p[1] - q[1]);
}

/**
 * With a gap: the whole shifts nearer than the gap to a contact edge that is free somewhere. All of them are forbidden,
 * for such an edge lies in the closed set; no boundary is left between the spans.
 */
function reachSpans({ edges, gap }: NoFit, axis: Axis, at: number, window: FreeInterval): Span[] {
  const [u0, v0, u1, v1] = axis === 'x' ? [edges.x0, edges.y0, edges.x1, edges.y1] : [edges.y0, edges.x0, edges.y1, edges.x1];
  const spans: Span[] = [];
  for (let k = 0; k < edges.count; k++) {
    const low = v0[k] < v1[k] ? v0[k] : v1[k];
    const high = v0[k] < v1[k] ? v1[k] : v0[k];
    if (high + gap <= at || low - gap >= at || isBeside(u0[k], u1[k], window, gap)) continue;
    const from = firstNear(u0[k], v0[k] - at, u1[k], v1[k] - at, gap);
    const to = -firstNear(-u0[k], v0[k] - at, -u1[k], v1[k] - at, gap) + 0;
    if (from <= to) spans.push([from, to]);
  }
  return spans.sort((p, q) => p[0] - q[0]);
}

/** Whether a segment from u0 to u1, grown by `reach`, has no part in the window. */
function isBeside(u0: number, u1: number, { from, to }: FreeInterval, reach: number): boolean {
  return Math.max(u0, u1) + reach < from || Math.min(u0, u1) - reach > to;
}

/**
 * Computed ends are off by less than this, µm, for gaps up to 2²⁰ and coordinates up to 2²⁵; ends as near as this to a
 * whole shift are decided exactly.
 */
const END_FILTER = 2 ** -6;

/** The least whole u for which (u, 0) is nearer than `gap` to the segment; somewhere beyond the greatest when there is none. */
function firstNear(u0: number, v0: number, u1: number, v1: number, gap: number): number {
  const square = gap * gap;
  let end = Infinity;
  if (v0 <= gap && v0 >= -gap) end = u0 - Math.sqrt(square - v0 * v0);
  if (v1 <= gap && v1 >= -gap) {
    const other = u1 - Math.sqrt(square - v1 * v1);
    if (other < end) end = other;
  }
  const dv = v1 - v0;
  if (dv !== 0) {
    // The side of the strip that faces smaller u, where its foot lies within the segment.
    const du = u1 - u0;
    const squaredLength = du * du + dv * dv;
    const onSide = u0 - (v0 * du + gap * Math.sqrt(squaredLength) * (dv > 0 ? 1 : -1)) / dv;
    const along = (onSide - u0) * du - v0 * dv;
    if (along >= 0 && along <= squaredLength && onSide < end) end = onSide;
  }
  const nearest = Math.round(end) + 0;
  if (Math.abs(end - nearest) > END_FILTER) return Math.ceil(end) + 0;
  return nearerThan(nearest, 0, u0, v0, u1, v1, gap) ? nearest : nearest + 1;
}
