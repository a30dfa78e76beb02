import type { Random } from '../../base/random.ts';
import { addTurns } from '../../geometry/turn.ts';
import type { Cell, Placement } from '../../layout/problem.ts';
import type { PatternCell } from './cell-geometry.ts';
import { searchCells, twoRowCells } from './cell-search.ts';
import { placeItems, type Frame, type Item, type PatternPart, type Spacing } from './frame.ts';
import { periodic } from './row-kinds.ts';
import type { RowKind } from './rows.ts';
import type { Version } from './versions.ts';

/** A cell found along one axis of the sheet. */
export interface FoundCell {
  readonly cell: PatternCell;
  /** x and y of the cell are y and x of the sheet. */
  readonly swapped: boolean;
}

/** One piece of the search for cells, to be done when its turn comes. */
export interface CellJob {
  readonly swapped: boolean;
  find(random: Random): PatternCell[];
}

/**
 * The searches for cells of a part in two rounds: first one or two blanks a cell, then three and four. Only pairs with the
 * first version are looked for: the others are quarter or half turns of them.
 */
export function cellJobs({ versions, upright, swapped }: PatternPart): [CellJob[], CellJob[]] {
  const axes: readonly (readonly [boolean, Spacing])[] = [[false, upright], [true, swapped]];
  const rows = versions.flatMap((_, b) => axes.map(([isSwapped, spacing]) => ({ swapped: isSwapped, find: () => twoRowCells(0, b, spacing) })));
  const jobsOf = (lists: readonly (readonly number[])[]): CellJob[] =>
    lists.flatMap((list) =>
      [true, false].flatMap((level) => axes.map(([isSwapped, spacing]) => ({ swapped: isSwapped, find: (random: Random) => searchCells({ versions: list, level }, spacing, random) }))),
    );
  return [[...rows, ...jobsOf(pairsOf(versions))], jobsOf(clustersOf(versions))];
}

/** Two blanks side by side, opposite rotations before others. */
function pairsOf(versions: readonly Version[]): number[][] {
  if (versions.length === 1) return [[0, 0]];
  const opposite = oppositeOf(versions);
  return versions.slice(1).map((_, i) => [0, i + 1]).toSorted(([, a], [, b]) => Number(b === opposite) - Number(a === opposite));
}

/** Three and four blanks side by side. */
function clustersOf(versions: readonly Version[]): number[][] {
  const opposite = oppositeOf(versions);
  const headToTail = opposite < 0 ? [] : [[0, opposite, 0], [0, opposite, 0, opposite], [0, 0, opposite, opposite]];
  return versions.length === 4 ? [[0, 1, 2, 3], ...headToTail] : headToTail;
}

function oppositeOf(versions: readonly Version[]): number {
  return versions.findIndex(({ turn }) => turn === addTurns(versions[0].turn, 2));
}

/** The cell turned by a quarter, one way or the other, where all its blanks have an allowed rotation then. */
export function quarterTurned({ cell, swapped }: FoundCell, { versions, upright, swapped: across }: PatternPart): FoundCell | undefined {
  const { sizes } = swapped ? across : upright;
  const { items, u, v, area } = cell;
  for (const way of [1, 3]) {
    // With x and y swapped a turn goes the other way round.
    const turnOf = (version: number) => addTurns(versions[version].turn, swapped ? -way : way);
    const turned = items.map(({ version, x, y }) => {
      const next = versions.findIndex(({ turn }) => turn === turnOf(version));
      const { width, height } = sizes[version];
      return way === 1 ? { version: next, x: -y - height, y: x } : { version: next, x: y, y: -x - width };
    });
    if (turned.every(({ version }) => version >= 0)) return { swapped, cell: { items: turned, u: { x: v.y, y: -v.x }, v: { x: -u.y, y: u.x }, area } };
  }
  return undefined;
}

/** The cell in the sheet's axes, its first blank near the origin. */
export function sheetCell({ cell, swapped }: FoundCell, frame: Frame): Cell {
  const { items, u, v, area } = cell;
  const blanks = placeItems({ ...frame, swapped, field: { minX: 0, minY: 0, maxX: 0, maxY: 0 } }, items);
  const turned = swapped ? [{ x: u.y, y: u.x }, { x: v.y, y: v.x }] : [u, v];
  return { density: (frame.owner.area * items.length) / area, vectors: [turned[0], turned[1]], blanks };
}

/** The rows of the cells that run straight along the frame's x, densest first, pushed together once more. */
export function cellRows(cells: readonly Cell[], { owner, swapped, spacing }: Frame, most: number): RowKind[] {
  const kinds: RowKind[] = [];
  for (const { vectors, blanks } of cells) {
    if (kinds.length === most) break;
    const isLevel = vectors.some(({ x, y }) => (swapped ? x : y) === 0);
    const items = blanks.map((blank) => boxOfBlank(blank, owner, swapped));
    if (!isLevel || items.some((item) => item === undefined)) continue;
    const left = items.reduce((least, item) => Math.min(least, item!.x), Infinity);
    const kind = periodic(items.map((item) => ({ ...item!, x: item!.x - left })).toSorted((a, b) => a.x - b.x), spacing);
    if (isChain(kind, spacing)) kinds.push(kind);
  }
  return kinds;
}

/** Undefined where the blank is of another part or stands in a rotation that looks like one of the versions. */
function boxOfBlank({ part, turn, x, y }: Placement, { part: own, versions }: PatternPart, swapped: boolean): Item | undefined {
  const version = versions.findIndex((candidate) => candidate.turn === turn);
  if (part !== own || version < 0) return undefined;
  const { offset } = versions[version];
  return swapped ? { version, x: y + offset.y, y: x + offset.x } : { version, x: x + offset.x, y: y + offset.y };
}

/** Whether every blank of the period is clear of the next ones to the right: what a row is made of. */
function isChain({ items }: RowKind, spacing: Spacing): boolean {
  return items.every((b, i) => items.slice(0, i).every((a) => b.x - a.x >= spacing.right(a.version, b.version, b.y - a.y)));
}
