import type { PointMm } from './problems.ts';

/** Cells [column, row] of a polyomino. */
export type Cells = readonly (readonly [number, number])[];

/**
 * The most copies of a polyomino in a rectangle of whole cells, every rotation allowed and every placement on whole cells tried: slow and plain. A
 * layout between the cells' lines may hold more, so this is what limits may not fall below, not the optimum.
 */
export function mostOnLattice(shape: Cells, columns: number, rows: number, turns: readonly number[]): number {
  const masks = placements(shape, columns, rows, turns);
  const all = columns * rows;
  const byLowest: bigint[][] = Array.from({ length: all }, () => []);
  for (const mask of masks) byLowest[lowestBit(mask)]!.push(mask);
  let best = 0;
  const known = new Map<string, number>();
  const search = (cell: number, used: bigint, count: number) => {
    if (count > best) best = count;
    if (cell === all || count + Math.floor((all - cell) / shape.length) <= best) return;
    const key = `${cell}:${used >> BigInt(cell)}`;
    if ((known.get(key) ?? -1) >= count) return;
    known.set(key, count);
    for (const mask of byLowest[cell]!) if ((mask & used) === 0n) search(cell + 1, used | mask, count + 1);
    search(cell + 1, used, count);
  };
  search(0, 0n, 0);
  return best;
}

/**
 * All counts that a layout of several polyominoes can have, each with its rotations, in a rectangle of whole cells: every placement on whole cells, laid
 * and left out.
 */
export function countsOnLattice(shapes: readonly { readonly shape: Cells; readonly turns: readonly number[] }[], columns: number, rows: number): number[][] {
  const masks = shapes.map(({ shape, turns }) => placements(shape, columns, rows, turns));
  const found = new Map<string, number[]>();
  const known = new Set<string>();
  const search = (cell: number, used: bigint, counts: number[]) => {
    const key = `${cell}:${used >> BigInt(cell)}:${counts.join()}`;
    if (known.has(key)) return;
    known.add(key);
    found.set(counts.join(), counts);
    if (cell === columns * rows) return;
    masks.forEach((own, design) => own.forEach((mask) => {
      if (lowestBit(mask) === cell && (mask & used) === 0n) search(cell + 1, used | mask, counts.with(design, counts[design]! + 1));
    }));
    search(cell + 1, used, counts);
  };
  search(0, 0n, shapes.map(() => 0));
  return [...found.values()];
}

function placements(shape: Cells, columns: number, rows: number, turns: readonly number[]): bigint[] {
  const masks = new Set<bigint>();
  for (const turn of turns) {
    const turned = shape.map(([x, y]) => [[x, y], [-y, x], [-x, -y], [y, -x]][turn]! as [number, number]);
    for (let dx = -columns; dx <= 2 * columns; dx++) {
      for (let dy = -rows; dy <= 2 * rows; dy++) {
        const cells = turned.map(([x, y]) => [x + dx, y + dy] as const);
        if (cells.every(([x, y]) => x >= 0 && y >= 0 && x < columns && y < rows)) masks.add(cells.reduce((mask, [x, y]) => mask | (1n << BigInt(y * columns + x)), 0n));
      }
    }
  }
  return [...masks];
}

function lowestBit(mask: bigint): number {
  let bit = 0;
  while (((mask >> BigInt(bit)) & 1n) === 0n) bit++;
  return bit;
}

/** The outline of a polyomino of connected cells without holes and without cells that meet at a corner alone, counter-clockwise, box at the origin. */
export function polyominoOutline(shape: Cells, side: number): PointMm[] {
  const has = (x: number, y: number) => shape.some(([a, b]) => a === x && b === y);
  const next = new Map<string, readonly [number, number]>();
  for (const [x, y] of shape) {
    if (!has(x, y - 1)) next.set(`${x},${y}`, [x + 1, y]);
    if (!has(x + 1, y)) next.set(`${x + 1},${y}`, [x + 1, y + 1]);
    if (!has(x, y + 1)) next.set(`${x + 1},${y + 1}`, [x, y + 1]);
    if (!has(x - 1, y)) next.set(`${x},${y + 1}`, [x, y]);
  }
  const minX = Math.min(...shape.map(([x]) => x));
  const minY = Math.min(...shape.map(([, y]) => y));
  const start = [...next.keys()][0]!;
  const corners: (readonly [number, number])[] = [];
  let at = start;
  do {
    const to = next.get(at)!;
    corners.push(to);
    at = to.join();
  } while (at !== start);
  const bends = corners.filter(([x, y], i) => {
    const [px, py] = corners.at(i - 1)!;
    const [nx, ny] = corners[(i + 1) % corners.length]!;
    return (x - px) * (ny - y) !== (y - py) * (nx - x);
  });
  return bends.map(([x, y]) => [(x - minX) * side, (y - minY) * side]);
}
