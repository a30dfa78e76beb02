import type { CellGrid } from './cell-grid.ts';

/**
 * A map of layouts onto layouts: the sheet turned or mirrored. A place (x, y) goes to (±x, ±y), or (±y, ±x) where `swap` is set (the signs
 * stand for the new coordinates), and a blank of turn t, an index, becomes one of turn `turns[t]`.
 */
export interface SheetMap {
  readonly swap: boolean;
  readonly flipX: boolean;
  readonly flipY: boolean;
  readonly turns: readonly number[];
}

/** Cells that the maps carry onto one another. */
export interface Orbits {
  readonly count: number;
  readonly orbitOf: Int32Array;
  readonly sizes: Int32Array;
  /** The maps kept, as tables from cell to cell; the first is the identity. */
  readonly images: readonly Int32Array[];
}

/** Orbits under those of the maps that carry all cells onto cells. The maps given must be closed under composition. */
export function cellOrbits(grid: CellGrid, maps: readonly SheetMap[]): Orbits {
  const images = maps.flatMap((map) => imagesUnder(grid, map) ?? []);
  const identity = Int32Array.from({ length: grid.count }, (_, c) => c);
  // A part of the maps need not be closed under composition; then it is safer to fold nothing.
  const all = images.length === maps.length ? [identity, ...images] : [identity];
  const orbitOf = new Int32Array(grid.count).fill(-1);
  const sizes: number[] = [];
  for (let cell = 0; cell < grid.count; cell++) {
    if (orbitOf[cell] !== -1) continue;
    const members = new Set(all.map((image) => image[cell]!));
    for (const member of members) orbitOf[member] = sizes.length;
    sizes.push(members.size);
  }
  return { count: sizes.length, orbitOf, sizes: Int32Array.from(sizes), images: all };
}

function imagesUnder(grid: CellGrid, { swap, flipX, flipY, turns }: SheetMap): Int32Array | undefined {
  const { count, turnOf, columnOf, rowOf, x, y } = grid;
  if (swap && (x.count !== y.count || x.span !== y.span)) return undefined;
  const images = new Int32Array(count);
  for (let cell = 0; cell < count; cell++) {
    const column = swap ? rowOf[cell]! : columnOf[cell]!;
    const row = swap ? columnOf[cell]! : rowOf[cell]!;
    const image = grid.cellAt(turns[turnOf[cell]!]!, flipX ? x.count - 1 - column : column, flipY ? y.count - 1 - row : row);
    if (image < 0) return undefined;
    images[cell] = image;
  }
  return images;
}
