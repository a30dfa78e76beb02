import type { CellGrid } from './cell-grid.ts';
import type { BoxTable } from './box-table.ts';

/**
 * Which cells conflict: every placement of the one with every placement of the other. One row of bits a cell, bit c of row b set when b and c are
 * different and conflict; symmetric.
 */
export interface ConflictGraph {
  readonly count: number;
  /** 32-bit words a row. */
  readonly words: number;
  readonly bits: Uint32Array;
}

/** `tables[r][s]` holds the differences of a cell of turn s from one of turn r. */
export function conflictGraph(grid: CellGrid, tables: readonly (readonly BoxTable[])[]): ConflictGraph {
  const { count, turnOf, columnOf, rowOf } = grid;
  const words = Math.ceil(count / 32);
  const bits = new Uint32Array(words * count);
  for (let a = 0; a < count; a++) {
    for (const [turn, table] of tables[turnOf[a]!]!.entries()) {
      const { reachI, reachJ, inside } = table;
      let entry = 0;
      for (let i = -reachI; i <= reachI; i++) {
        for (let j = -reachJ; j <= reachJ; j++, entry++) {
          if (inside[entry] === 0) continue;
          const b = grid.cellAt(turn, columnOf[a]! + i, rowOf[a]! + j);
          if (b > a) {
            bits[a * words + (b >>> 5)]! |= 1 << (b & 31);
            bits[b * words + (a >>> 5)]! |= 1 << (a & 31);
          }
        }
      }
    }
  }
  return { count, words, bits };
}

/** Cells that conflict with all of the given ones, ascending. */
export function commonConflicts({ count, words, bits }: ConflictGraph, cells: ArrayLike<number>): { mask: Uint32Array; list: Int32Array } {
  const mask = bits.slice(cells[0]! * words, (cells[0]! + 1) * words);
  for (let k = 1; k < cells.length; k++) {
    const row = cells[k]! * words;
    for (let w = 0; w < words; w++) mask[w]! &= bits[row + w]!;
  }
  const list = new Int32Array(count);
  let found = 0;
  for (let w = 0; w < words; w++) {
    for (let rest = mask[w]!; rest !== 0; rest &= rest - 1) list[found++] = 32 * w + 31 - Math.clz32(rest & -rest);
  }
  return { mask, list: list.slice(0, found) };
}

/** The clique made as large as it goes by taking the candidates in the given order. `mask` is used up. */
export function growClique({ words, bits }: ConflictGraph, clique: ArrayLike<number>, mask: Uint32Array, order: ArrayLike<number>): Int32Array {
  const members = Array.from(clique);
  let low = 0;
  let high = words - 1;
  for (let k = 0; k < order.length; k++) {
    const cell = order[k]!;
    if (((mask[cell >>> 5]! >>> (cell & 31)) & 1) === 0) continue;
    members.push(cell);
    const row = cell * words;
    while (low <= high && mask[low] === 0) low++;
    while (high > low && mask[high] === 0) high--;
    for (let w = low; w <= high; w++) mask[w]! &= bits[row + w]!;
  }
  return Int32Array.from(members).sort();
}
