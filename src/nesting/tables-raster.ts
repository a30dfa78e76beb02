/**
 * A raster of signed depths against a contour: positive inside, negative outside, zero on it. Searching reads it
 * bilinearly; judging never does. Nodes lie on whole multiples of `step`.
 */
export interface Raster {
  /** Depth in units of step / 64, row by row. */
  readonly depths: Int16Array;
  readonly columns: number;
  readonly rows: number;
  /** Place of node 0, µm. */
  readonly originX: number;
  readonly originY: number;
  /** Distance between nodes, µm. */
  readonly step: number;
}

/** Where the nodes of a raster lie. */
export type Grid = Omit<Raster, 'depths'>;

/** Counts of depth in one step. */
export const DEPTHS_PER_STEP = 64;
/** Depths outside are exact to this many steps and constant beyond. */
const BAND = 1.5;
/** Edges are cut into pieces of at most so many steps before their neighbourhood is visited. */
const PIECE = 8;

/** Straight edges, µm: x0, y0, x1, y1 of each; a point where both ends are the same. */
export type Edges = Float64Array;

/** A grid around the edges that leaves at least `margin` and one node more on every side. */
export function gridAround(edges: Edges, margin: number, step: number): Grid {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let k = 0; k < edges.length; k += 2) {
    minX = Math.min(minX, edges[k]);
    maxX = Math.max(maxX, edges[k]);
    minY = Math.min(minY, edges[k + 1]);
    maxY = Math.max(maxY, edges[k + 1]);
  }
  const left = Math.floor((minX - margin) / step) - 1;
  const low = Math.floor((minY - margin) / step) - 1;
  return {
    columns: Math.ceil((maxX + margin) / step) + 2 - left,
    rows: Math.ceil((maxY + margin) / step) + 2 - low,
    originX: left * step,
    originY: low * step,
    step,
  };
}

/** Depths against the contour made of `edges`; `inside` holds 1 for every node within. */
export function depthRaster(grid: Grid, inside: Uint8Array, edges: Edges): Raster {
  const nearest = nearestEdges(grid, edges, BAND * grid.step);
  spreadInside(edges, grid, inside, nearest);
  return { ...grid, depths: signedDepths(grid, inside, nearest.squares) };
}

export interface Nearest {
  /** Offset of the nearest edge known for each node, −1 when none is. */
  readonly edge: Int32Array;
  readonly squares: Float64Array;
}

/** The exact nearest edge of every node within `reach` of one. */
export function nearestEdges({ columns, rows, originX, originY, step }: Grid, edges: Edges, reach: number): Nearest {
  const edge = new Int32Array(columns * rows).fill(-1);
  const squares = new Float64Array(columns * rows).fill(Infinity);
  for (let k = 0; k < edges.length; k += 4) {
    const dx = edges[k + 2] - edges[k];
    const dy = edges[k + 3] - edges[k + 1];
    const pieces = Math.max(1, Math.ceil(Math.max(Math.abs(dx), Math.abs(dy)) / (PIECE * step)));
    for (let piece = 0; piece < pieces; piece++) {
      const ax = edges[k] + (dx * piece) / pieces;
      const ay = edges[k + 1] + (dy * piece) / pieces;
      const bx = edges[k] + (dx * (piece + 1)) / pieces;
      const by = edges[k + 1] + (dy * (piece + 1)) / pieces;
      const left = Math.max(0, Math.ceil((Math.min(ax, bx) - reach - originX) / step));
      const right = Math.min(columns - 1, Math.floor((Math.max(ax, bx) + reach - originX) / step));
      const low = Math.max(0, Math.ceil((Math.min(ay, by) - reach - originY) / step));
      const high = Math.min(rows - 1, Math.floor((Math.max(ay, by) + reach - originY) / step));
      for (let row = low; row <= high; row++) {
        for (let column = left; column <= right; column++) {
          const square = squareToEdge(edges, k, originX + column * step, originY + row * step);
          const node = row * columns + column;
          if (square >= squares[node]) continue;
          squares[node] = square;
          edge[node] = k;
        }
      }
    }
  }
  return { edge, squares };
}

/**
 * Hands the nearest edge on from node to node, upwards and downwards with a sweep each way in every row: within a small
 * part of a step of the exact distance nearly everywhere (Danielsson, "Euclidean distance mapping", Computer Graphics and
 * Image Processing 14, 1980).
 */
function spreadInside(edges: Edges, grid: Grid, inside: Uint8Array, nearest: Nearest): void {
  const { columns, rows } = grid;
  const below = [-1, -columns, -columns - 1, -columns + 1];
  const above = below.map((offset) => -offset);
  for (let row = 1; row < rows - 1; row++) {
    sweepRight(edges, grid, inside, nearest, row, below);
    sweepLeft(edges, grid, inside, nearest, row, [1]);
  }
  for (let row = rows - 2; row > 0; row--) {
    sweepLeft(edges, grid, inside, nearest, row, above);
    sweepRight(edges, grid, inside, nearest, row, [-1]);
  }
}

function sweepRight(edges: Edges, grid: Grid, inside: Uint8Array, nearest: Nearest, row: number, offsets: readonly number[]): void {
  const start = row * grid.columns;
  for (let node = start; node < start + grid.columns; node++) if (inside[node] === 1) takeNearest(edges, grid, nearest, node, offsets);
}

function sweepLeft(edges: Edges, grid: Grid, inside: Uint8Array, nearest: Nearest, row: number, offsets: readonly number[]): void {
  const start = row * grid.columns;
  for (let node = start + grid.columns - 1; node >= start; node--) if (inside[node] === 1) takeNearest(edges, grid, nearest, node, offsets);
}

/** The grid has a margin of outside nodes, so that a node inside always has all its neighbours. */
function takeNearest(edges: Edges, { columns, originX, originY, step }: Grid, nearest: Nearest, node: number, offsets: readonly number[]): void {
  const x = originX + (node % columns) * step;
  const y = originY + Math.floor(node / columns) * step;
  for (const offset of offsets) {
    const candidate = nearest.edge[node + offset];
    if (candidate < 0 || candidate === nearest.edge[node]) continue;
    const square = squareToEdge(edges, candidate, x, y);
    if (square < nearest.squares[node]) {
      nearest.squares[node] = square;
      nearest.edge[node] = candidate;
    }
  }
}

function signedDepths({ columns, rows, step }: Grid, inside: Uint8Array, squares: Float64Array): Int16Array {
  const depths = new Int16Array(columns * rows);
  const scale = DEPTHS_PER_STEP / step;
  const outermost = BAND * DEPTHS_PER_STEP;
  for (let node = 0; node < depths.length; node++) {
    const distance = Math.sqrt(squares[node]) * scale;
    depths[node] = inside[node] === 1 ? Math.min(32767, Math.round(distance)) : -Math.round(Math.min(outermost, distance));
  }
  return depths;
}

function squareToEdge(edges: Edges, k: number, x: number, y: number): number {
  const ax = edges[k];
  const ay = edges[k + 1];
  const dx = edges[k + 2] - ax;
  const dy = edges[k + 3] - ay;
  const length = dx * dx + dy * dy;
  let share = length === 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / length;
  if (share < 0) share = 0;
  else if (share > 1) share = 1;
  const ex = ax + share * dx - x;
  const ey = ay + share * dy - y;
  return ex * ex + ey * ey;
}
