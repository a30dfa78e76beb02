import type { Turn } from '../../geometry/turn.ts';

/**
 * Lines that cut the places of the blank's middle into cells: count + 1 lines from −span to span about the sheet's middle, and on beyond
 * them at the same distance. Half micrometres; span a whole number.
 */
export interface Lines {
  readonly span: number;
  readonly count: number;
}

export function stepOf({ span, count }: Lines): number {
  return (2 * span) / count;
}

/** Cells of the places of a blank, for every turn that counts apart: numbered by column, row and turn, so that neighbours are near. */
export interface CellGrid {
  readonly x: Lines;
  readonly y: Lines;
  readonly turns: readonly Turn[];
  readonly count: number;
  /** By cell: index into `turns`, column, row (columns and rows may be negative or beyond the count of lines). */
  readonly turnOf: Uint8Array;
  readonly columnOf: Int16Array;
  readonly rowOf: Int16Array;
  /** The cell of that place, −1 where there is none. */
  readonly cellAt: (turn: number, column: number, row: number) => number;
}

/** Half the width and height of the rectangle of places, by turn; negative where the blank does not fit. Half micrometres, whole. */
export interface Places {
  readonly turns: readonly Turn[];
  readonly halfWidth: readonly number[];
  readonly halfHeight: readonly number[];
}

/** All cells that hold a place, less those that `isBarred` names. */
export function cellGrid(x: Lines, y: Lines, places: Places, isBarred: (turn: number, column: number, row: number) => boolean): CellGrid {
  const columns = places.halfWidth.map((half) => linesAcross(x, half));
  const rows = places.halfHeight.map((half) => linesAcross(y, half));
  const firstColumn = Math.min(...columns.map((range) => range.from));
  const firstRow = Math.min(...rows.map((range) => range.from));
  const width = Math.max(...columns.map((range) => range.to)) - firstColumn + 1;
  const height = Math.max(...rows.map((range) => range.to)) - firstRow + 1;
  const turns = places.turns.length;
  const numbers = new Int32Array(Math.max(0, width * height * turns)).fill(-1);
  const cells: number[] = [];
  for (let column = 0; column < width; column++) {
    for (let row = 0; row < height; row++) {
      for (let turn = 0; turn < turns; turn++) {
        const i = column + firstColumn;
        const j = row + firstRow;
        if (!within(i, columns[turn]!) || !within(j, rows[turn]!) || isBarred(turn, i, j)) continue;
        numbers[(column * height + row) * turns + turn] = cells.length / 3;
        cells.push(turn, i, j);
      }
    }
  }
  const count = cells.length / 3;
  return {
    x,
    y,
    turns: places.turns,
    count,
    turnOf: Uint8Array.from({ length: count }, (_, c) => cells[3 * c]!),
    columnOf: Int16Array.from({ length: count }, (_, c) => cells[3 * c + 1]!),
    rowOf: Int16Array.from({ length: count }, (_, c) => cells[3 * c + 2]!),
    cellAt: (turn, column, row) => {
      const i = column - firstColumn;
      const j = row - firstRow;
      return i < 0 || j < 0 || i >= width || j >= height ? -1 : numbers[(i * height + j) * turns + turn]!;
    },
  };
}

interface Range {
  readonly from: number;
  readonly to: number;
}

/** The cells between lines that together hold all places from −half to half. Exact while 4 × span × count stays below 2⁵³. */
function linesAcross({ span, count }: Lines, half: number): Range {
  if (half < 0) return { from: 0, to: -1 };
  const from = Math.floor(((span - half) * count) / (2 * span));
  return { from, to: Math.max(from, Math.ceil(((span + half) * count) / (2 * span)) - 1) };
}

function within(value: number, { from, to }: Range): boolean {
  return value >= from && value <= to;
}
