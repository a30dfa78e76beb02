import { turnPoint, type Turn } from '../geometry/turn.ts';
import type { Point, Ring } from '../geometry/point.ts';
import { DEPTHS_PER_STEP, type Raster } from './tables-raster.ts';

/** How many snug offsets are kept for a pair of poses. */
const KEPT = 10;
/** Two kept offsets differ by at least this share of the offsets' extent along an axis. */
const APART = 0.06;

/** The eight directions in which the pair's outline is held: axes and diagonals. */
const DIRECTIONS: readonly Point[] = [[1, 0], [1, 1], [0, 1], [-1, 1], [-1, 0], [-1, -1], [0, -1], [1, -1]].map(([x, y]) => ({ x, y }));

/**
 * Offsets at which two blanks touch and together fill little more than themselves: the octagon around both, with sides
 * along the axes and diagonals, is small. Interlocks are among them. Smallest first; x and y in turns.
 */
export function snugOffsets(raster: Raster, a: Ring, b: Ring, turn: Turn): Float64Array {
  const first = supports(a);
  const second = supports(b.map((p) => turnPoint(p, turn)));
  const found: { x: number; y: number; area: number }[] = [];
  const { depths, columns, rows, originX, originY, step } = raster;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const depth = depths[row * columns + column];
      if (depth > DEPTHS_PER_STEP || depth < -DEPTHS_PER_STEP / 2) continue;
      const x = originX + column * step;
      const y = originY + row * step;
      found.push({ x, y, area: octagonArea(first, second, x, y) });
    }
  }
  found.sort((p, q) => p.area - q.area || p.y - q.y || p.x - q.x);
  const apart = APART * Math.max(columns, rows) * step;
  const kept: Point[] = [];
  for (const { x, y } of found) {
    if (kept.length === KEPT) break;
    if (kept.every((other) => Math.abs(other.x - x) > apart || Math.abs(other.y - y) > apart)) kept.push({ x, y });
  }
  return Float64Array.from(kept.flatMap(({ x, y }) => [x, y]));
}

/** How far the outline reaches in each direction, from its box centre. */
function supports(ring: Ring): number[] {
  const reach = DIRECTIONS.map(({ x, y }) => ring.reduce((most, p) => Math.max(most, x * p.x + y * p.y), -Infinity));
  const middleX = (reach[0] - reach[4]) / 2;
  const middleY = (reach[2] - reach[6]) / 2;
  return reach.map((value, k) => value - DIRECTIONS[k].x * middleX - DIRECTIONS[k].y * middleY);
}

/** Area of the octagon around the first outline and the second one moved by (x, y): its box less four corner triangles. */
function octagonArea(first: readonly number[], second: readonly number[], x: number, y: number): number {
  const reach = DIRECTIONS.map((d, k) => Math.max(first[k], second[k] + d.x * x + d.y * y));
  let area = (reach[0] + reach[4]) * (reach[2] + reach[6]);
  for (let k = 1; k < 8; k += 2) {
    const corner = reach[k - 1] + reach[(k + 1) % 8] - reach[k];
    area -= (corner * corner) / 2;
  }
  return area;
}
