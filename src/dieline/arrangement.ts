import Flatbush from 'flatbush';
import { MICRONS_PER_MM } from '../base/units.ts';
import type { Curve } from '../geometry/curve.ts';
import type { Point } from '../geometry/point.ts';
import { distanceBetween } from '../geometry/vector.ts';
import { chordParameters, curvePoint } from './curve-part.ts';
import { READING_LIMITS } from './limits.ts';
import type { ReadOptions } from './options.ts';
import { CHORD_TOLERANCE_MM, JOIN_TOLERANCE_MM } from './tolerances.ts';
import { createVertices, type Vertices } from './vertices.ts';
import { limitPassed } from './xml.ts';

/** Some line's stretch of a curve that runs along an edge: from parameter `start` at the edge's first vertex to `end`. */
export interface Cover {
  readonly line: number;
  readonly curve: Curve;
  readonly start: number;
  readonly end: number;
}

/**
 * Lines as a planar graph: vertices in whole µm, straight edges between them that meet only in vertices, each standing
 * for the stretches of curves that run along it within JOIN_TOLERANCE_MM.
 */
export interface Arrangement {
  readonly vertices: Vertices;
  /** Vertices of each edge; no two edges join the same pair. */
  readonly edges: readonly (readonly [number, number])[];
  /** At least one for every edge; several where lines run on top of one another. */
  readonly covers: readonly (readonly Cover[])[];
  /** Edges at each vertex. */
  readonly edgesAt: readonly (readonly number[])[];
  /** First and last vertex of each line. */
  readonly ends: readonly (readonly [number, number])[];
  /** Where a line crosses itself. */
  readonly selfCrossings: readonly { readonly vertex: number; readonly line: number }[];
  /** Where the end of an open line lies within another line. */
  readonly tees: readonly { readonly vertex: number; readonly line: number }[];
}

const JOIN = JOIN_TOLERANCE_MM * MICRONS_PER_MM;

/** Splitting may bring edges near to others by at most JOIN, seldom twice; each round looks only at what changed. */
const MOST_ROUNDS = 8;

/** Pairs of edges with overlapping boxes that are looked at; 100 000 segments of cartons make some hundred thousand. */
const MOST_PAIRS = 40_000_000;

interface Edge {
  readonly a: number;
  readonly b: number;
  readonly line: number;
  readonly curve: Curve;
  readonly start: number;
  readonly end: number;
}

export interface ArrangementLine {
  readonly curves: readonly Curve[];
  readonly closed: boolean;
}

/** `onWork`: of `ReadOptions`. */
export function arrange(lines: readonly ArrangementLine[], onWork?: ReadOptions['onWork']): Arrangement {
  const vertices = createVertices(JOIN);
  const ends: [number, number][] = [];
  let edges: Edge[] = [];
  lines.forEach(({ curves }, line) => {
    ends.push([vertices.at(curves[0].from), vertices.at(curves[curves.length - 1].to)]);
    for (const curve of curves) addChords(edges, curve, line, vertices);
    if (edges.length > READING_LIMITS.pieces) throw tooMany();
  });
  const notes: MeetingNotes = { selfCrossings: new Map(), tees: new Map() };
  const openEnds = new Map<number, Set<number>>();
  lines.forEach(({ closed }, line) => {
    if (closed) return;
    for (const vertex of ends[line]) openEnds.set(vertex, (openEnds.get(vertex) ?? new Set()).add(line));
  });
  let changed: readonly boolean[] | undefined;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const splits = findSplits(edges, vertices, changed, openEnds, notes, onWork);
    if (splits.size === 0) break;
    ({ edges, changed } = applySplits(edges, splits, vertices));
    if (edges.length > READING_LIMITS.pieces) throw tooMany();
  }
  return { ...merged(edges, vertices), vertices, ends, selfCrossings: [...notes.selfCrossings.values()], tees: [...notes.tees.values()] };
}

function tooMany(): Error {
  return limitPassed('straight pieces between crossings', READING_LIMITS.pieces);
}

/** Pieces shorter than the tolerance vanish: their ends are one vertex. */
function addChords(edges: Edge[], curve: Curve, line: number, vertices: Vertices): void {
  let a = vertices.at(curve.from);
  let start = 0;
  const reach = (b: number, end: number) => {
    if (a === b) return;
    edges.push({ a, b, line, curve, start, end });
    a = b;
    start = end;
  };
  if (curve.kind === 'line') return reach(vertices.at(curve.to), 1);
  for (const parameter of chordParameters(curve, CHORD_TOLERANCE_MM)) reach(vertices.at(curvePoint(curve, parameter)), parameter);
}

interface MeetingNotes {
  readonly selfCrossings: Map<number, { vertex: number; line: number }>;
  readonly tees: Map<number, { vertex: number; line: number }>;
}

/** For each edge the vertices that must split it. `changed` marks the edges that are new since the last round. */
function findSplits(edges: readonly Edge[], vertices: Vertices, changed: readonly boolean[] | undefined, openEnds: ReadonlyMap<number, ReadonlySet<number>>, notes: MeetingNotes, onWork: ReadOptions['onWork']): Map<number, Set<number>> {
  const splits = new Map<number, Set<number>>();
  if (edges.length < 2) return splits;
  const { x, y } = vertices;
  const index = new Flatbush(edges.length);
  for (const { a, b } of edges) {
    index.add(Math.min(x[a], x[b]) - JOIN, Math.min(y[a], y[b]) - JOIN, Math.max(x[a], x[b]) + JOIN, Math.max(y[a], y[b]) + JOIN);
  }
  index.finish();
  let count = 0;
  const split = (edge: number, vertex: number) => {
    if (++count > READING_LIMITS.pieces) throw tooMany();
    const at = splits.get(edge);
    if (at) at.add(vertex);
    else splits.set(edge, new Set([vertex]));
  };
  const meet = (i: number, j: number): void => {
    const e = edges[i];
    const f = edges[j];
    let touching = false;
    for (const [inner, edge, other] of [[i, e, f], [j, f, e]] as const) {
      for (const vertex of [other.a, other.b]) {
        if (vertex === edge.a || vertex === edge.b) touching = true;
        else if (liesWithin(vertex, edge, vertices)) {
          touching = true;
          split(inner, vertex);
          if (openEnds.get(vertex)?.has(other.line) && other.line !== edge.line) notes.tees.set(vertex, { vertex, line: other.line });
        }
      }
    }
    if (touching) return;
    const place = properCrossing(e, f, vertices);
    if (!place) return;
    const vertex = vertices.at(place);
    if (e.line === f.line) notes.selfCrossings.set(vertex, { vertex, line: e.line });
    if (vertex !== e.a && vertex !== e.b) split(i, vertex);
    if (vertex !== f.a && vertex !== f.b) split(j, vertex);
  };
  let pairs = 0;
  for (let i = 0; i < edges.length; i++) {
    onWork?.();
    if (changed && !changed[i]) continue;
    const { a, b } = edges[i];
    index.search(Math.min(x[a], x[b]), Math.min(y[a], y[b]), Math.max(x[a], x[b]), Math.max(y[a], y[b]), (j) => {
      // Each pair once: of two that changed, the later one finds the earlier.
      if (j !== i && (j < i || (changed && !changed[j]))) {
        pairs++;
        meet(i, j);
      }
      return false;
    });
    if (pairs > MOST_PAIRS) throw limitPassed('pairs of neighbouring lines', MOST_PAIRS);
  }
  return splits;
}

/** Whether the vertex lies on the edge, away from its ends. */
function liesWithin(vertex: number, { a, b }: Edge, { x, y }: Vertices): boolean {
  const dx = x[b] - x[a];
  const dy = y[b] - y[a];
  const px = x[vertex] - x[a];
  const py = y[vertex] - y[a];
  const along = px * dx + py * dy;
  const square = dx * dx + dy * dy;
  if (along <= 0 || along >= square) return false;
  const across = px * dy - py * dx;
  return across * across <= JOIN * JOIN * square;
}

/** Where two edges without a common vertex cross, mm. Exact decision; the place is computed. */
function properCrossing(e: Edge, f: Edge, { x, y }: Vertices): Point | undefined {
  const side = (a: number, b: number, c: number) => (x[b] - x[a]) * (y[c] - y[a]) - (y[b] - y[a]) * (x[c] - x[a]);
  const fa = side(e.a, e.b, f.a);
  const fb = side(e.a, e.b, f.b);
  if (fa > 0 === fb > 0 || fa === 0 || fb === 0) return undefined;
  const ea = side(f.a, f.b, e.a);
  const eb = side(f.a, f.b, e.b);
  if (ea > 0 === eb > 0 || ea === 0 || eb === 0) return undefined;
  const t = ea / (ea - eb);
  return { x: (x[e.a] + t * (x[e.b] - x[e.a])) / MICRONS_PER_MM, y: (y[e.a] + t * (y[e.b] - y[e.a])) / MICRONS_PER_MM };
}

function applySplits(edges: readonly Edge[], splits: ReadonlyMap<number, ReadonlySet<number>>, { x, y }: Vertices): { edges: Edge[]; changed: boolean[] } {
  const result: Edge[] = [];
  const changed: boolean[] = [];
  edges.forEach((edge, i) => {
    const at = splits.get(i);
    if (!at) {
      result.push(edge);
      changed.push(false);
      return;
    }
    const dx = x[edge.b] - x[edge.a];
    const dy = y[edge.b] - y[edge.a];
    const share = (v: number) => ((x[v] - x[edge.a]) * dx + (y[v] - y[edge.a]) * dy) / (dx * dx + dy * dy);
    const marks = [...at].map((vertex) => ({ vertex, share: share(vertex) })).sort((p, q) => p.share - q.share);
    let a = edge.a;
    let start = edge.start;
    for (const { vertex, share: part } of [...marks, { vertex: edge.b, share: 1 }]) {
      const end = part === 1 ? edge.end : edge.start + part * (edge.end - edge.start);
      if (vertex !== a) {
        result.push({ ...edge, a, b: vertex, start, end });
        changed.push(true);
      }
      a = vertex;
      start = end;
    }
  });
  return { edges: result, changed };
}

/** Edges that join the same two vertices become one, with the covers of all. */
function merged(edges: readonly Edge[], vertices: Vertices): Pick<Arrangement, 'edges' | 'covers' | 'edgesAt'> {
  const count = vertices.count();
  const byPair = new Map<number, number>();
  const pairs: (readonly [number, number])[] = [];
  const covers: Cover[][] = [];
  const edgesAt: number[][] = Array.from({ length: count }, () => []);
  for (const { a, b, line, curve, start, end } of edges) {
    const forward = a < b;
    const key = forward ? a * count + b : b * count + a;
    let edge = byPair.get(key);
    if (edge === undefined) {
      edge = pairs.length;
      byPair.set(key, edge);
      pairs.push(forward ? [a, b] : [b, a]);
      covers.push([]);
      edgesAt[a].push(edge);
      edgesAt[b].push(edge);
    }
    covers[edge].push(forward ? { line, curve, start, end } : { line, curve, start: end, end: start });
  }
  return { edges: pairs, covers, edgesAt };
}

/** Middle of an edge, µm; not always whole. */
export function middleOf({ edges, vertices: { x, y } }: Arrangement, edge: number): Point {
  const [a, b] = edges[edge];
  return { x: (x[a] + x[b]) / 2, y: (y[a] + y[b]) / 2 };
}

/** Length of straight edges together, mm. */
export function lengthOfEdges({ edges, vertices }: Arrangement, list: readonly number[]): number {
  return list.reduce((sum, edge) => sum + distanceBetween(vertices.exact(edges[edge][0]), vertices.exact(edges[edge][1])), 0);
}
