import type { ConvexPolygons } from '../geometry/minkowski.ts';
import type { NoFit } from '../geometry/no-fit.ts';
import { depthRaster, gridAround, nearestEdges, type Edges, type Grid, type Raster } from './tables-raster.ts';

/** Depths of a no-fit region: how far a forbidden shift is from the nearest allowed one, near enough for searching. */
export function noFitRaster(noFit: NoFit, step: number): Raster {
  const edges = boundary(noFit);
  const grid = gridAround(edges, noFit.gap, step);
  const meeting = fillPolygons(noFit.sums, grid);
  if (noFit.gap === 0) return depthRaster(grid, meeting, edges);
  const beyond = distanceBeyond(grid, edges, meeting, noFit.gap);
  return depthRaster(grid, Uint8Array.from(beyond, (value) => (value < 0 ? 1 : 0)), levelEdges(grid, beyond));
}

/** The free pieces of the contact edges: the boundary at gap 0, slits and single points among it. */
function boundary({ edges: { x0, y0, x1, y1 }, pieces }: NoFit): Edges {
  return Float64Array.from(
    pieces.flatMap(({ segment: k, from, to }) => {
      const dx = x1[k] - x0[k];
      const dy = y1[k] - y0[k];
      return [x0[k] + from * dx, y0[k] + from * dy, x0[k] + to * dx, y0[k] + to * dy];
    }),
  );
}

/** One byte a node, 1 inside any of the convex polygons. */
function fillPolygons({ count, start, x, y }: ConvexPolygons, { columns, rows, originX, originY, step }: Grid): Uint8Array {
  const inside = new Uint8Array(columns * rows);
  const left = new Float64Array(rows);
  const right = new Float64Array(rows);
  for (let k = 0; k < count; k++) {
    let lowest = rows;
    let highest = -1;
    for (let i = start[k], h = start[k + 1] - 1; i < start[k + 1]; h = i++) {
      if (y[h] === y[i]) continue;
      const rising = y[i] > y[h];
      const side = rising ? right : left;
      const [lowX, lowY, highX, highY] = rising ? [x[h], y[h], x[i], y[i]] : [x[i], y[i], x[h], y[h]];
      const first = Math.ceil((lowY - originY) / step);
      const last = Math.floor((highY - originY) / step);
      for (let row = first; row <= last; row++) side[row] = lowX + ((originY + row * step - lowY) / (highY - lowY)) * (highX - lowX);
      lowest = Math.min(lowest, first);
      highest = Math.max(highest, last);
    }
    for (let row = lowest; row <= highest; row++) {
      const from = Math.ceil((left[row] - originX) / step);
      const to = Math.floor((right[row] - originX) / step);
      if (from <= to) inside.fill(1, row * columns + from, row * columns + to + 1);
    }
  }
  return inside;
}

/** Distance to the boundary less the gap, near the place where it is zero; negative where the shift is forbidden. */
function distanceBeyond(grid: Grid, edges: Edges, meeting: Uint8Array, gap: number): Float64Array {
  const { squares } = nearestEdges(grid, edges, gap + 2 * grid.step);
  return squares.map((square, node) => {
    if (meeting[node] === 0) return Math.sqrt(square) - gap;
    return square === Infinity ? -2 * gap : -Math.sqrt(square) - gap;
  });
}

/** The line of value zero through the grid, cell by cell, linear between nodes (marching squares). */
function levelEdges({ columns, rows, originX, originY, step }: Grid, values: Float64Array): Edges {
  const found: number[] = [];
  const crossing = (ax: number, ay: number, bx: number, by: number) => {
    const a = values[ay * columns + ax];
    const b = values[by * columns + bx];
    if (a < 0 === b < 0) return;
    // A node far from everything counts as infinitely far; the zero is then next to the other node.
    const share = b === Infinity ? 0 : a === Infinity ? 1 : a / (a - b);
    found.push(originX + (ax + share * (bx - ax)) * step, originY + (ay + share * (by - ay)) * step);
  };
  for (let row = 0; row + 1 < rows; row++) {
    for (let column = 0; column + 1 < columns; column++) {
      const at = row * columns + column;
      const signs = (values[at] < 0 ? 1 : 0) + (values[at + 1] < 0 ? 1 : 0) + (values[at + columns] < 0 ? 1 : 0) + (values[at + columns + 1] < 0 ? 1 : 0);
      if (signs === 0 || signs === 4) continue;
      crossing(column, row, column + 1, row);
      crossing(column + 1, row, column + 1, row + 1);
      crossing(column + 1, row + 1, column, row + 1);
      crossing(column, row + 1, column, row);
    }
  }
  return Float64Array.from(found);
}
