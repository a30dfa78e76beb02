import { visitNearEdges } from './near-edges.ts';
import type { Point, Ring } from './point.ts';
import { crossing, determinant } from './predicates.ts';
import { between, dot, minus } from './vector.ts';

/**
 * Distances between outlines: of the lines themselves, not of the areas within, so that a ring inside another has a
 * distance of its own (ask `ringsOverlap` which it is). Whole micrometres in; figures right to the last bits of a double.
 */

/** The least distance, and a point on each where it is taken. The foot of a perpendicular is not whole. */
export interface Nearest {
  readonly distance: number;
  readonly from: Point;
  readonly to: Point;
}

/** Between the closed segments from a to b and from c to d; 0 where they meet. */
export function segmentDistance(a: Point, b: Point, c: Point, d: Point): Nearest {
  const search = nearestSearch();
  search.add(a, b, c, d);
  return search.nearest();
}

/** Between two outlines; 0 where they cross or touch. */
export function ringDistance(a: Ring, b: Ring): Nearest;
/** The same with an early end: undefined where they are `cap` or more apart. */
export function ringDistance(a: Ring, b: Ring, options: { readonly cap: number }): Nearest | undefined;
export function ringDistance(a: Ring, b: Ring, { cap } = { cap: Infinity }): Nearest | undefined {
  const search = nearestSearch();
  visitNearEdges(a, b, cap, (i, j) => {
    search.add(a[i], a[(i + 1) % a.length], b[j], b[(j + 1) % b.length]);
    const reached = search.distance();
    return reached === 0 ? -1 : Math.min(cap, reached);
  });
  return search.distance() < cap ? search.nearest() : undefined;
}

/** Keeps the nearest pair of points met so far. */
function nearestSearch() {
  let squared = Infinity;
  let nearest: () => Omit<Nearest, 'distance'>;

  const tryPoint = (p: Point, a: Point, b: Point, pointIsFirst: boolean) => {
    const candidate = squaredToSegment(p, a, b);
    if (candidate >= squared) return;
    squared = candidate;
    nearest = () => {
      const foot = footOnSegment(p, a, b);
      return pointIsFirst ? { from: p, to: foot } : { from: foot, to: p };
    };
  };
  const add = (a: Point, b: Point, c: Point, d: Point) => {
    tryPoint(a, c, d, true);
    tryPoint(b, c, d, true);
    tryPoint(c, a, b, false);
    tryPoint(d, a, b, false);
    if (squared === 0) return;
    const meeting = crossing(a, b, c, d);
    if (meeting.kind !== 'proper') return;
    squared = 0;
    nearest = () => ({ from: meeting.at, to: meeting.at });
  };
  return { add, distance: () => Math.sqrt(squared), nearest: () => ({ distance: Math.sqrt(squared), ...nearest() }) };
}

/** Exact, but for the quotient of a perpendicular. */
function squaredToSegment(p: Point, a: Point, b: Point): number {
  const along = minus(b, a);
  const before = dot(minus(p, a), along);
  const length = dot(along, along);
  if (before <= 0) return squaredBetween(p, a);
  if (before >= length) return squaredBetween(p, b);
  const across = determinant(a, b, p);
  return (across / length) * across;
}

function squaredBetween(a: Point, b: Point): number {
  const d = minus(a, b);
  return dot(d, d);
}

function footOnSegment(p: Point, a: Point, b: Point): Point {
  const along = minus(b, a);
  const length = dot(along, along);
  const before = dot(minus(p, a), along);
  return before <= 0 ? a : before >= length ? b : between(a, b, before / length);
}

/**
 * Whether no point of one outline is nearer than `gap` (whole µm, at most 2²⁵) to the other. Decided exactly. A gap of 0
 * is always kept, even by outlines that cross.
 */
export function atLeastApart(a: Ring, b: Ring, gap: number): boolean {
  if (gap <= 0) return true;
  let apart = true;
  visitNearEdges(a, b, gap, (i, j) => {
    apart = segmentsApart(a[i], a[(i + 1) % a.length], b[j], b[(j + 1) % b.length], gap);
    return apart ? gap : -1;
  });
  return apart;
}

function segmentsApart(a: Point, b: Point, c: Point, d: Point, gap: number): boolean {
  return (
    pointApart(a, c, d, gap) && pointApart(b, c, d, gap) && pointApart(c, a, b, gap) && pointApart(d, a, b, gap) &&
    crossing(a, b, c, d).kind === 'none'
  );
}

/** The sides of the comparison below carry three roundings of 2⁻⁵³ each; within this ratio it is made in whole numbers. */
const UNDECIDED = 2 ** -50;

function pointApart(p: Point, a: Point, b: Point, gap: number): boolean {
  const along = minus(b, a);
  const before = dot(minus(p, a), along);
  const length = dot(along, along);
  if (before <= 0) return squaredBetween(p, a) >= gap * gap;
  if (before >= length) return squaredBetween(p, b) >= gap * gap;
  const across = determinant(a, b, p);
  const left = across * across;
  const right = gap * gap * length;
  if (Math.abs(left - right) > UNDECIDED * right) return left > right;
  return BigInt(across) ** 2n >= BigInt(gap) ** 2n * BigInt(length);
}
