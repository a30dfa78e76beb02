import { toMicrons } from '../base/units.ts';
import type { Point } from '../geometry/point.ts';

/** Places of a drawing, each standing for all points within the tolerance of it. */
export interface Vertices {
  /** Whole µm. */
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** The nearest vertex within the tolerance of a point in mm, or a new one there. */
  at(point: Point): number;
  /** The very point in mm that made the vertex. */
  exact(vertex: number): Point;
  count(): number;
}

/** Cells of the grid in tolerances: wide enough that most points have their whole neighbourhood in one cell. */
const CELL = 8;

/** Tolerance in µm. */
export function createVertices(tolerance: number): Vertices {
  const x: number[] = [];
  const y: number[] = [];
  const exact: Point[] = [];
  const cells = new Map<number, number[]>();
  // Cell numbers stay below 2¹⁸ for coordinates within the reading limit.
  const cellOf = (value: number) => Math.floor(value / (CELL * tolerance));
  const key = (column: number, row: number) => column * 2 ** 19 + row;

  const nearest = (px: number, py: number): number => {
    let best = -1;
    let least = tolerance * tolerance;
    for (let column = cellOf(px - tolerance); column <= cellOf(px + tolerance); column++) {
      for (let row = cellOf(py - tolerance); row <= cellOf(py + tolerance); row++) {
        const cell = cells.get(key(column, row));
        if (!cell) continue;
        for (const vertex of cell) {
          const square = (x[vertex] - px) ** 2 + (y[vertex] - py) ** 2;
          if (square > least || (square === least && best >= 0)) continue;
          least = square;
          best = vertex;
        }
      }
    }
    return best;
  };

  return {
    x,
    y,
    at(point) {
      const px = toMicrons(point.x);
      const py = toMicrons(point.y);
      const found = nearest(px, py);
      if (found >= 0) return found;
      const vertex = exact.length;
      x.push(px);
      y.push(py);
      exact.push(point);
      const own = key(cellOf(px), cellOf(py));
      const cell = cells.get(own);
      if (cell) cell.push(vertex);
      else cells.set(own, [vertex]);
      return vertex;
    },
    exact: (vertex) => exact[vertex],
    count: () => exact.length,
  };
}
