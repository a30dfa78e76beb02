import Flatbush from 'flatbush';
import type { Curve, CurvePath } from '../geometry/curve.ts';
import type { Point } from '../geometry/point.ts';
import { between, cross, distanceBetween, dot, lengthOf, minus } from '../geometry/vector.ts';
import type { Arrangement } from './arrangement.ts';

/** A line that closes a gap, to be drawn beside the drawing's own. */
export interface Closure {
  readonly curves: CurvePath;
  readonly closed: false;
  /** Width of the gap, mm. */
  readonly width: number;
  readonly place: Point;
}

/** Vertices where exactly one of the chosen edges ends. */
export function looseEnds({ edgesAt }: Arrangement, chosen: (edge: number) => boolean): number[] {
  const ends: number[] = [];
  edgesAt.forEach((list, vertex) => {
    let degree = 0;
    for (const edge of list) if (chosen(edge)) degree++;
    if (degree === 1) ends.push(vertex);
  });
  return ends;
}

/**
 * Closes gaps up to `widest` mm: each loose end to the nearest other one, nearest pairs first, and what is left to the
 * nearest line. Two straight ends that point to one corner are lengthened to it.
 */
export function closeGaps(graph: Arrangement, chosen: (edge: number) => boolean, widest: number): Closure[] {
  const ends = looseEnds(graph, chosen);
  if (ends.length === 0 || widest <= 0) return [];
  const taken = new Set<number>();
  const closures: Closure[] = [];
  for (const { a, b } of pairsWithin(graph, ends, widest)) {
    if (taken.has(a) || taken.has(b) || reachOf(graph, chosen, a, 3 * widest).vertices.has(b)) continue;
    taken.add(a).add(b);
    closures.push(bridge(graph, chosen, a, b));
  }
  const edges = graph.edges.flatMap((_, edge) => (chosen(edge) ? [edge] : []));
  const index = edgeIndex(graph, edges);
  for (const end of ends) {
    if (taken.has(end)) continue;
    const closure = toNearestLine(graph, chosen, index, edges, end, widest);
    if (closure) closures.push(closure);
  }
  return closures;
}

/** Pairs of loose ends, nearest first. */
export function pairsWithin({ vertices }: Arrangement, ends: readonly number[], widest: number): { a: number; b: number; distance: number }[] {
  if (ends.length === 0) return [];
  const index = new Flatbush(ends.length);
  for (const end of ends) {
    const { x, y } = vertices.exact(end);
    index.add(x, y, x, y);
  }
  index.finish();
  const pairs = ends.flatMap((a, i) => {
    const { x, y } = vertices.exact(a);
    return index
      .neighbors(x, y, NEAREST_LOOKED_AT, widest)
      .filter((j) => j > i)
      .map((j) => ({ a, b: ends[j], distance: distanceBetween(vertices.exact(a), vertices.exact(ends[j])) }));
  });
  return pairs.filter(({ distance }) => distance <= widest).sort((p, q) => p.distance - q.distance || p.a - q.a || p.b - q.b);
}

/** Of many loose ends in one place only so many are weighed against each other. */
const NEAREST_LOOKED_AT = 6;

/** What can be reached from a vertex along edges of a given length together: the end's own line, to which no gap leads. */
function reachOf({ edges, edgesAt, vertices }: Arrangement, chosen: (edge: number) => boolean, start: number, length: number): { vertices: ReadonlySet<number>; edges: ReadonlySet<number> } {
  const left = new Map([[start, length]]);
  const open = [start];
  const passed = new Set<number>();
  while (open.length > 0) {
    const vertex = open.pop()!;
    for (const edge of edgesAt[vertex].filter(chosen)) {
      passed.add(edge);
      const [a, b] = edges[edge];
      const next = a === vertex ? b : a;
      const rest = left.get(vertex)! - distanceBetween(vertices.exact(a), vertices.exact(b));
      if (rest <= (left.get(next) ?? 0)) continue;
      left.set(next, rest);
      open.push(next);
    }
  }
  return { vertices: new Set(left.keys()), edges: passed };
}

function bridge(graph: Arrangement, chosen: (edge: number) => boolean, a: number, b: number): Closure {
  const from = graph.vertices.exact(a);
  const to = graph.vertices.exact(b);
  const width = distanceBetween(from, to);
  const corner = cornerAhead(from, outward(graph, chosen, a), to, outward(graph, chosen, b), width);
  const way = corner ? [from, corner, to] : [from, to];
  return { curves: polyline(way), closed: false, width, place: corner ?? between(from, to, 0.5) };
}

/** Direction in which the line at a loose end would go on. */
function outward(graph: Arrangement, chosen: (edge: number) => boolean, vertex: number): Point {
  const edge = graph.edgesAt[vertex].find(chosen)!;
  const [a, b] = graph.edges[edge];
  return minus(graph.vertices.exact(vertex), graph.vertices.exact(a === vertex ? b : a));
}

/** Where two lines going on would meet, if both must go on for it and by no more than the gap. */
function cornerAhead(p: Point, u: Point, q: Point, v: Point, width: number): Point | undefined {
  const turn = cross(u, v);
  const across = minus(q, p);
  const s = cross(across, v) / turn;
  const t = cross(across, u) / turn;
  if (!(s > 0 && t > 0)) return undefined;
  return s * lengthOf(u) <= width && t * lengthOf(v) <= width ? { x: p.x + s * u.x, y: p.y + s * u.y } : undefined;
}

function edgeIndex({ edges, vertices }: Arrangement, chosen: readonly number[]): Flatbush {
  const index = new Flatbush(Math.max(1, chosen.length));
  for (const edge of chosen) {
    const [a, b] = edges[edge].map((vertex) => vertices.exact(vertex));
    index.add(Math.min(a.x, b.x), Math.min(a.y, b.y), Math.max(a.x, b.x), Math.max(a.y, b.y));
  }
  if (chosen.length === 0) index.add(0, 0, 0, 0);
  index.finish();
  return index;
}

function toNearestLine(graph: Arrangement, chosen: (edge: number) => boolean, index: Flatbush, edges: readonly number[], end: number, widest: number): Closure | undefined {
  const from = graph.vertices.exact(end);
  const own = reachOf(graph, chosen, end, 3 * widest).edges;
  const places = index
    .search(from.x - widest, from.y - widest, from.x + widest, from.y + widest)
    .map((i) => edges[i])
    .filter((edge) => !own.has(edge))
    .map((edge) => {
      const [a, b] = graph.edges[edge].map((vertex) => graph.vertices.exact(vertex));
      return nearestOn(a, b, from);
    });
  const to = places.reduce<Point | undefined>((best, place) => (!best || distanceBetween(from, place) < distanceBetween(from, best) ? place : best), undefined);
  const width = to ? distanceBetween(from, to) : 0;
  return to && width > 0 && width <= widest ? { curves: polyline([from, to]), closed: false, width, place: between(from, to, 0.5) } : undefined;
}

function nearestOn(a: Point, b: Point, p: Point): Point {
  const along = minus(b, a);
  const t = dot(minus(p, a), along) / dot(along, along);
  return between(a, b, Math.max(0, Math.min(1, t)));
}

function polyline(points: readonly Point[]): Curve[] {
  return points.slice(1).map((to, i) => ({ kind: 'line', from: points[i], to }));
}
