import { boxOf, doubleArea, type Box, type Point, type Ring } from '../geometry/point.ts';
import type { Arrangement } from './arrangement.ts';

/** An edge travelled from one vertex to the other. */
export interface Step {
  readonly edge: number;
  readonly from: number;
  readonly to: number;
}

/** A simple closed way along edges, counter-clockwise. */
export interface Cycle {
  readonly steps: readonly Step[];
  /** Whole µm. */
  readonly ring: Ring;
  readonly box: Box;
  /** µm². */
  readonly area: number;
  /** Number of the connected part of the core it bounds. */
  readonly part: number;
}

export interface Cycles {
  /** Outer boundaries of all faces reached, one or (where they meet in single points) several for each part. */
  readonly cycles: readonly Cycle[];
  /** For each edge of the arrangement whether a face lies on both sides of it: no loose ends, no bridges. */
  readonly core: Uint8Array;
  /** For each part of the core: how many faces it bounds beyond one. */
  readonly inner: readonly number[];
}

/**
 * The outer boundaries of the faces that the chosen edges bound. Edges that lead nowhere (loose ends) or only from one
 * loop to another (bridges) bound nothing and fall away first; what stays falls into parts, and the unbounded face of
 * each part is walked once.
 */
export function outerCycles(graph: Arrangement, chosen: (edge: number) => boolean): Cycles {
  const core = new Uint8Array(graph.edges.length);
  for (let edge = 0; edge < core.length; edge++) core[edge] = chosen(edge) ? 1 : 0;
  dropLooseEnds(graph, core);
  dropBridges(graph, core);
  const parts = partsOf(graph, core);
  const cycles = parts.flatMap(({ vertices }, part) => boundaryOf(graph, core, vertices).map((steps): Cycle => {
    const ring = steps.map(({ from }): Point => ({ x: graph.vertices.x[from], y: graph.vertices.y[from] }));
    return { steps, ring, box: boxOf(ring), area: doubleArea(ring) / 2, part };
  }));
  return { cycles, core, inner: parts.map(({ vertices, edges }) => edges - vertices.length) };
}

function other([a, b]: readonly [number, number], vertex: number): number {
  return a === vertex ? b : a;
}

function dropLooseEnds({ edges, edgesAt }: Arrangement, core: Uint8Array): void {
  const degree = edgesAt.map((list) => list.reduce((sum, edge) => sum + core[edge], 0));
  const open = degree.flatMap((count, vertex) => (count === 1 ? [vertex] : []));
  while (open.length > 0) {
    const vertex = open.pop()!;
    const edge = edgesAt[vertex].find((candidate) => core[candidate] === 1);
    if (edge === undefined) continue;
    core[edge] = 0;
    degree[vertex]--;
    const next = other(edges[edge], vertex);
    if (--degree[next] === 1) open.push(next);
  }
}

/** Bridges by lowest reachable number in a depth-first search (Tarjan, Information Processing Letters 2 (1974) 160–161). */
function dropBridges({ edges, edgesAt }: Arrangement, core: Uint8Array): void {
  const number = new Int32Array(edgesAt.length).fill(-1);
  const low = new Int32Array(edgesAt.length);
  const bridges: number[] = [];
  let next = 0;
  for (let root = 0; root < edgesAt.length; root++) {
    if (number[root] >= 0) continue;
    const stack: { vertex: number; by: number; at: number }[] = [{ vertex: root, by: -1, at: 0 }];
    number[root] = low[root] = next++;
    while (stack.length > 0) {
      const top = stack[stack.length - 1];
      const edge = edgesAt[top.vertex][top.at++];
      if (edge === undefined) {
        stack.pop();
        const parent = stack[stack.length - 1];
        if (!parent) continue;
        low[parent.vertex] = Math.min(low[parent.vertex], low[top.vertex]);
        if (low[top.vertex] > number[parent.vertex]) bridges.push(top.by);
        continue;
      }
      if (core[edge] === 0 || edge === top.by) continue;
      const vertex = other(edges[edge], top.vertex);
      if (number[vertex] >= 0) {
        low[top.vertex] = Math.min(low[top.vertex], number[vertex]);
      } else {
        number[vertex] = low[vertex] = next++;
        stack.push({ vertex, by: edge, at: 0 });
      }
    }
  }
  for (const edge of bridges) core[edge] = 0;
}

function partsOf({ edges, edgesAt }: Arrangement, core: Uint8Array): { vertices: number[]; edges: number }[] {
  const seen = new Uint8Array(edgesAt.length);
  const parts: { vertices: number[]; edges: number }[] = [];
  for (let start = 0; start < edgesAt.length; start++) {
    if (seen[start] || !edgesAt[start].some((edge) => core[edge])) continue;
    const vertices = [start];
    let degrees = 0;
    seen[start] = 1;
    for (let i = 0; i < vertices.length; i++) {
      for (const edge of edgesAt[vertices[i]]) {
        if (!core[edge]) continue;
        degrees++;
        const vertex = other(edges[edge], vertices[i]);
        if (!seen[vertex]) vertices.push(vertex);
        seen[vertex] = 1;
      }
    }
    parts.push({ vertices, edges: degrees / 2 });
  }
  return parts;
}

/** Walks the unbounded face of one part with it on the right hand, and cuts the walk where it meets itself. */
function boundaryOf(graph: Arrangement, core: Uint8Array, vertices: readonly number[]): Step[][] {
  const { x, y } = graph.vertices;
  const start = vertices.reduce((low, v) => (y[v] < y[low] || (y[v] === y[low] && x[v] < x[low]) ? v : low));
  const cycles: Step[][] = [];
  const way: Step[] = [];
  const placeOnWay = new Map<number, number>();
  let back: Point = { x: 0, y: -1 };
  let vertex = start;
  let first: Step | undefined;
  for (;;) {
    const step = firstCounterClockwise(graph, core, vertex, back);
    if (first && step.edge === first.edge && step.from === first.from) break;
    first ??= step;
    placeOnWay.set(vertex, way.length);
    way.push(step);
    back = { x: x[step.from] - x[step.to], y: y[step.from] - y[step.to] };
    vertex = step.to;
    const before = placeOnWay.get(vertex);
    if (before === undefined) continue;
    const cycle = way.splice(before);
    for (const { from } of cycle) placeOnWay.delete(from);
    cycles.push(cycle);
  }
  return cycles;
}

/** Of the core's edges at a vertex, the one first met when turning counter-clockwise from a direction (itself last). */
function firstCounterClockwise({ vertices: { x, y }, edges, edgesAt }: Arrangement, core: Uint8Array, vertex: number, direction: Point): Step {
  let best = -1;
  let bestX = 0;
  let bestY = 0;
  for (const edge of edgesAt[vertex]) {
    if (!core[edge]) continue;
    const to = other(edges[edge], vertex);
    const dx = x[to] - x[vertex];
    const dy = y[to] - y[vertex];
    if (best >= 0 && !turnsLess(direction, dx, dy, bestX, bestY)) continue;
    best = edge;
    bestX = dx;
    bestY = dy;
  }
  return { edge: best, from: vertex, to: other(edges[best], vertex) };
}

/** Whether turning counter-clockwise from a direction meets (ax, ay) before (bx, by). Exact on whole µm. */
function turnsLess(direction: Point, ax: number, ay: number, bx: number, by: number): boolean {
  const half = (dx: number, dy: number): number => {
    const side = direction.x * dy - direction.y * dx;
    if (side > 0) return 0;
    if (side < 0) return 1;
    // Straight on lies between the halves, straight back (the direction itself) after both.
    return direction.x * dx + direction.y * dy < 0 ? 0.5 : 2;
  };
  const a = half(ax, ay);
  const b = half(bx, by);
  return a === b ? ax * by - ay * bx > 0 : a < b;
}
