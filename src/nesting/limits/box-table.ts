import type { ForbiddenSet } from './forbidden-set.ts';

/**
 * For all whole (i, j): 1 where the closed box (i − 1) dx … (i + 1) dx by (j − 1) dy … (j + 1) dy lies inside the set, else 0. Those are the
 * differences of two closed cells dx × dy whose places differ by i columns and j rows.
 */
export interface BoxTable {
  /** Columns −reachI … reachI, rows −reachJ … reachJ; all others are 0. */
  readonly reachI: number;
  readonly reachJ: number;
  /** Column by column. */
  readonly inside: Uint8Array;
}

/** Boxes are taken larger by this on every side: room for rounded numbers here and for the checker's whole numbers. */
const RIM = 2;

/** Share of a cell by which the probing line stands off the boxes' middle, so that it hardly ever meets a corner. */
const OFF_MIDDLE = 1 / 1024;

export function boxTable(set: ForbiddenSet, dx: number, dy: number): BoxTable {
  const reachI = Math.ceil(set.reachX / dx);
  const reachJ = Math.ceil(set.reachY / dy);
  const table = { reachI, reachJ, inside: new Uint8Array((2 * reachI + 1) * (2 * reachJ + 1)) };
  fillInside(table, set, dx, dy);
  clearTouched(table, set, dx, dy);
  return table;
}

export function isInside({ reachI, reachJ, inside }: BoxTable, i: number, j: number): boolean {
  return Math.abs(i) <= reachI && Math.abs(j) <= reachJ && inside[(i + reachI) * (2 * reachJ + 1) + j + reachJ] === 1;
}

/** Marks the boxes whose middle is inside: along the middle of every column, from crossing to crossing of the boundary. */
function fillInside({ reachI, reachJ, inside }: BoxTable, { edges }: ForbiddenSet, dx: number, dy: number): void {
  const columns = 2 * reachI + 1;
  const rows = 2 * reachJ + 1;
  const crossings: Crossing[][] = Array.from({ length: columns }, () => []);
  for (let k = 0; k < edges.count; k++) {
    const x0 = edges.x0[k]! - OFF_MIDDLE * dx;
    const x1 = edges.x1[k]! - OFF_MIDDLE * dx;
    const slope = (edges.y1[k]! - edges.y0[k]!) / (x1 - x0);
    const last = Math.ceil(Math.max(x0, x1) / dx);
    // Rightward edges have the set above them.
    for (let i = Math.ceil(Math.min(x0, x1) / dx); i < last; i++) crossings[i + reachI]!.push({ y: edges.y0[k]! + slope * (i * dx - x0), enters: x1 > x0 });
  }
  crossings.forEach((events, column) => {
    events.sort((a, b) => a.y - b.y || Number(a.enters) - Number(b.enters));
    for (let e = 0; e + 1 < events.length; e++) {
      if (!events[e]!.enters) continue;
      const from = Math.max(Math.ceil(events[e]!.y / dy), -reachJ);
      const to = Math.min(Math.floor(events[e + 1]!.y / dy), reachJ);
      if (from <= to) inside.fill(1, column * rows + from + reachJ, column * rows + to + reachJ + 1);
    }
  });
}

interface Crossing {
  readonly y: number;
  readonly enters: boolean;
}

function clearTouched({ reachI, reachJ, inside }: BoxTable, { edges }: ForbiddenSet, dx: number, dy: number): void {
  const rows = 2 * reachJ + 1;
  for (let k = 0; k < edges.count; k++) {
    const x0 = edges.x0[k]!;
    const y0 = edges.y0[k]!;
    const x1 = edges.x1[k]!;
    const y1 = edges.y1[k]!;
    const minX = Math.min(x0, x1);
    const maxX = Math.max(x0, x1);
    const slope = maxX > minX ? (y1 - y0) / (x1 - x0) : 0;
    const first = Math.max(-reachI, Math.ceil((minX - RIM) / dx - 1));
    const last = Math.min(reachI, Math.floor((maxX + RIM) / dx + 1));
    for (let i = first; i <= last; i++) {
      let low = Math.min(y0, y1);
      let high = Math.max(y0, y1);
      if (slope !== 0) {
        const atLeft = y0 + slope * (Math.max(minX, (i - 1) * dx - RIM) - x0);
        const atRight = y0 + slope * (Math.min(maxX, (i + 1) * dx + RIM) - x0);
        low = Math.max(low, Math.min(atLeft, atRight));
        high = Math.min(high, Math.max(atLeft, atRight));
      }
      const start = Math.max(-reachJ, Math.ceil((low - RIM) / dy - 1));
      const end = Math.min(reachJ, Math.floor((high + RIM) / dy + 1));
      for (let j = start; j <= end; j++) inside[(i + reachI) * rows + j + reachJ] = 0;
    }
  }
}
