import type { Segments } from '../../geometry/contact-edges.ts';
import { freePieces } from '../../geometry/free-pieces.ts';
import type { ConvexPolygons } from '../../geometry/minkowski.ts';
import { differenceSums } from '../../geometry/minkowski.ts';
import type { Box, Point, Ring } from '../../geometry/point.ts';
import { boxOf } from '../../geometry/point.ts';
import type { Turn } from '../../geometry/turn.ts';
import { turnPoint } from '../../geometry/turn.ts';
import { convexSum, discInside, insetConvex } from './convex.ts';

/**
 * The boundary of an open set of shifts that two outlines forbid, as directed segments with the set on their left. Ends are rounded doubles. Where
 * two pieces of the set meet along a line, that line may be there twice or in both directions.
 */
export interface ForbiddenSet {
  readonly edges: Segments;
  /** Largest |x| and |y| of the boundary. */
  readonly reachX: number;
  readonly reachY: number;
}

/**
 * Shifts d for which `b` moved by d is nearer than `gap` to `a`; for a negative gap, for which it runs in deeper than that. Never too large: the disc is
 * replaced by a polygon inside it, and under a negative gap every convex piece loses a rim of its own.
 */
export function forbiddenSet(a: Ring, b: Ring, gap: number): ForbiddenSet {
  const grown = ringsOf(differenceSums(a, b)).map((sum) => (gap >= 0 ? convexSum(sum, discInside(gap)) : insetConvex(sum, -gap)));
  const polygons = polygonsOf(grown.filter((ring) => ring.length >= 3));
  const sides = sidesOf(polygons);
  const pieces = freePieces(sides, polygons);
  const at = (k: number, share: number) => ({
    x: sides.x0[k]! + share * (sides.x1[k]! - sides.x0[k]!),
    y: sides.y0[k]! + share * (sides.y1[k]! - sides.y0[k]!),
  });
  const long = pieces.filter((piece) => piece.to > piece.from);
  return setOf(segmentsOf(long.map((piece): Ends => [at(piece.segment, piece.from), at(piece.segment, piece.to)])));
}

/** The set turned about the origin. */
export function turnSet(set: ForbiddenSet, turn: Turn): ForbiddenSet {
  const { count, x0, y0, x1, y1 } = set.edges;
  const ends = Array.from({ length: count }, (_, k): Ends => [turnPoint({ x: x0[k]!, y: y0[k]! }, turn), turnPoint({ x: x1[k]!, y: y1[k]! }, turn)]);
  return setOf(segmentsOf(ends));
}

function setOf(edges: Segments): ForbiddenSet {
  const most = (values: readonly Float64Array[]) => values.reduce((reach, list) => list.reduce((most, value) => Math.max(most, Math.abs(value)), reach), 0);
  return { edges, reachX: most([edges.x0, edges.x1]), reachY: most([edges.y0, edges.y1]) };
}

type Ends = readonly [from: Point, to: Point];

function segmentsOf(ends: readonly Ends[]): Segments {
  return {
    count: ends.length,
    x0: Float64Array.from(ends, ([from]) => from.x),
    y0: Float64Array.from(ends, ([from]) => from.y),
    x1: Float64Array.from(ends, ([, to]) => to.x),
    y1: Float64Array.from(ends, ([, to]) => to.y),
  };
}

function ringsOf({ count, start, x, y }: ConvexPolygons): Ring[] {
  return Array.from({ length: count }, (_, k) => Array.from({ length: start[k + 1]! - start[k]! }, (_, i) => ({ x: x[start[k]! + i]!, y: y[start[k]! + i]! })));
}

function polygonsOf(rings: readonly Ring[]): ConvexPolygons {
  const start = new Int32Array(rings.length + 1);
  rings.forEach((ring, k) => (start[k + 1] = start[k]! + ring.length));
  const corners = rings.flat();
  return {
    count: rings.length,
    start,
    x: Float64Array.from(corners, (p) => p.x),
    y: Float64Array.from(corners, (p) => p.y),
    box: Float64Array.from(rings.flatMap((ring) => sidesOfBox(boxOf(ring)))),
  };
}

function sidesOfBox({ minX, minY, maxX, maxY }: Box): number[] {
  return [minX, minY, maxX, maxY];
}

function sidesOf({ count, start, x, y }: ConvexPolygons): Segments {
  const next = new Int32Array(x.length);
  for (let k = 0; k < count; k++) for (let i = start[k]!; i < start[k + 1]!; i++) next[i] = i + 1 < start[k + 1]! ? i + 1 : start[k]!;
  return { count: x.length, x0: x, y0: y, x1: Float64Array.from(next, (i) => x[i]!), y1: Float64Array.from(next, (i) => y[i]!) };
}
