import { MICRONS_PER_MM, toMicrons } from '../base/units.ts';
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

/** Tolerance in µm. Looked up in a grid of cells as wide as the tolerance. */
export function createVertices(tolerance: number): Vertices {
  const x: number[] = [];
  const y: number[] = [];
  const exact: Point[] = [];
  const cells = new Map<number, number[]>();
  // Cell numbers stay below 2²¹ for coordinates within the reading limit, keys below 2⁴³.
  const key = (column: number, row: number) => column * 2 ** 22 + row;

  const nearest = (px: number, py: number, column: number, row: number): number => {
    let best = -1;
    let least = tolerance * tolerance;
    for (let i = column - 1; i <= column + 1; i++) {
      for (let j = row - 1; j <= row + 1; j++) {
        for (const vertex of cells.get(key(i, j)) ?? []) {
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
      const column = Math.floor((point.x * MICRONS_PER_MM) / tolerance);
      const row = Math.floor((point.y * MICRONS_PER_MM) / tolerance);
      const found = nearest(toMicrons(point.x), toMicrons(point.y), column, row);
      if (found >= 0) return found;
      const vertex = exact.length;
      x.push(toMicrons(point.x));
      y.push(toMicrons(point.y));
      exact.push(point);
      const cell = cells.get(key(column, row));
      if (cell) cell.push(vertex);
      else cells.set(key(column, row), [vertex]);
      return vertex;
    },
    exact: (vertex) => exact[vertex],
    count: () => exact.length,
  };
}
