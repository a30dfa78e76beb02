import type { Item } from './frame.ts';
import type { Row } from './rows.ts';

export interface StackedRow {
  readonly row: Row;
  readonly y: number;
}

/** Rows to choose from, how near each may come above each other one, and the depth to fill. */
export interface StackProblem {
  readonly rows: readonly Row[];
  /** `pitches[lower × rows + upper]`. */
  readonly pitches: Float64Array;
  readonly depth: number;
  readonly gap: number;
  /** No stack holds more blanks. */
  readonly limit: number;
}

export function itemsOf(stack: readonly StackedRow[]): Item[] {
  return stack.flatMap(({ row, y }) => row.items.map((item) => ({ ...item, y: item.y + y })));
}

export function countOf(stack: readonly StackedRow[]): number {
  return stack.reduce((sum, { row }) => sum + row.items.length, 0);
}

/** Where the rows stand when two are stacked by turns (or one alone), as many as the depth takes. */
export function alternatingLifts({ rows, pitches, depth, gap }: StackProblem, first: number, second: number): number[] {
  const lifts: number[] = [];
  const tallest = Math.max(rows[first].height, rows[second].height);
  const indexAt = (place: number) => (place % 2 === 0 ? first : second);
  for (let y = 0, index = first; y + rows[index].height <= depth; ) {
    lifts.push(y);
    index = indexAt(lifts.length);
    for (let place = lifts.length - 1; place >= 0 && lifts[place] + tallest + gap > y; place--) {
      y = Math.max(y, lifts[place] + pitches[indexAt(place) * rows.length + index]);
    }
  }
  return lifts;
}

/**
 * The most blanks in stacked rows of any kinds, by dynamic programming along the depth: for every number of blanks and
 * every last row the lowest place of that row. The rows are clear of one another all the way down. Not every mixture is
 * tried: of two ways to the same count and last row the lower is kept, though the rows under it may nest worse.
 */
export function bestStack({ rows, pitches, depth, gap, limit }: StackProblem): StackedRow[] {
  const n = rows.length;
  const heights = Float64Array.from(rows, (row) => row.height);
  const counts = Int32Array.from(rows, (row) => row.items.length);
  const lowest = new Float64Array((limit + 1) * n).fill(Infinity);
  const under = new Int32Array((limit + 1) * n).fill(-1);
  /** How high the row and all under it reach. */
  const tops = new Float64Array((limit + 1) * n);
  let best = -1;
  const reach = (count: number, row: number, y: number, from: number) => {
    const at = count * n + row;
    if (y + heights[row] > depth || y >= lowest[at]) return;
    lowest[at] = y;
    under[at] = from;
    tops[at] = Math.max(y + heights[row], from < 0 ? 0 : tops[from]);
    const ahead = best < 0 ? 1 : count - Math.floor(best / n);
    if (ahead > 0 || (ahead === 0 && y < lowest[best])) best = at;
  };

  for (let row = 0; row < n; row++) if (counts[row] <= limit) reach(counts[row], row, 0, -1);
  for (let at = n; at < lowest.length; at++) {
    if (lowest[at] === Infinity) continue;
    const count = Math.floor(at / n);
    for (let next = 0; next < n; next++) {
      const total = count + counts[next];
      if (total > limit || lowest[at] + heights[next] > depth) continue;
      let y = lowest[at];
      for (let below = at; below >= 0 && tops[below] + gap > y; below = under[below]) {
        y = Math.max(y, lowest[below] + pitches[(below % n) * n + next]);
      }
      reach(total, next, y, at);
    }
  }

  const stack: StackedRow[] = [];
  for (let at = best; at >= 0; at = under[at]) stack.push({ row: rows[at % n], y: lowest[at] });
  return stack.toReversed();
}
