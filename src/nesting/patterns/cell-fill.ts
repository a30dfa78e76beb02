import type { PatternCell } from './cell-geometry.ts';
import type { Item, Size } from './frame.ts';

/** Phases tried of one cell in one field, at most. */
const MOST_PHASES = 1200;

interface Phase {
  readonly x: number;
  readonly y: number;
}

/** Where blanks may begin (low) or end (high) along an axis: the field's sides, and sides of what stands in it. */
export interface Stops {
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/**
 * The endless pattern laid over a field [0, width] × [0, height] so that as many blanks as possible lie whole in it. Best
 * places have some blank at a stop across and some blank at a stop along; those are tried, evenly thinned out when too many.
 */
export function fillWithCell(cell: PatternCell, sizes: readonly Size[], width: number, height: number): Item[] {
  const best = phasesByCount(cell, sizes, width, height, { low: [0], high: [width] }, { low: [0], high: [height] })[0];
  return best ? itemsAt(cell, best.phase, sizes, width, height) : [];
}

/** The phases worth a look, most blanks first. */
export function phasesByCount(cell: PatternCell, sizes: readonly Size[], width: number, height: number, stopsX: Stops, stopsY: Stops): { phase: Phase; count: number }[] {
  return phasesOf(cell, sizes, width, height, stopsX, stopsY)
    .map((phase) => ({ phase, count: countAt(cell, phase, sizes, width, height) }))
    .toSorted((a, b) => b.count - a.count);
}

/** A blank at a stop across fixes x; which copy of which blank is at a stop along then fixes y. */
function phasesOf(cell: PatternCell, sizes: readonly Size[], width: number, height: number, stopsX: Stops, stopsY: Stops): Phase[] {
  const { items, u, v } = cell;
  const startsX = items.flatMap(({ version, x }) => [...stopsX.low.map((stop) => stop - x), ...stopsX.high.map((stop) => stop - x - sizes[version].width)]);
  const startsY = items.flatMap(({ version, y }) => [...stopsY.low.map((stop) => stop - y), ...stopsY.high.map((stop) => stop - y - sizes[version].height)]);
  const copies = copiesNear(cell, width, height);
  const all = startsX.length * startsY.length * copies.length;
  const stride = Math.max(1, all / MOST_PHASES);
  return Array.from({ length: Math.floor(all / stride) }, (_, k) => {
    const place = Math.floor(k * stride);
    const { m, n } = copies[place % copies.length];
    const pair = Math.floor(place / copies.length);
    return reduced(cell, { x: startsX[pair % startsX.length], y: startsY[Math.floor(pair / startsX.length)] - m * u.y - n * v.y });
  });
}

/** Copies of the cell's corner, one of which stands in the field, that lie in it too; in level rows one of each row. */
function copiesNear({ u, v, area }: PatternCell, width: number, height: number): { m: number; n: number }[] {
  const copies: { m: number; n: number }[] = [];
  const mostN = Math.ceil((u.x * height + Math.abs(u.y) * width) / area);
  for (let n = -mostN; n <= mostN; n++) {
    const from = u.y === 0 ? 0 : Math.ceil((-width - n * v.x) / u.x);
    const to = u.y === 0 ? 0 : Math.floor((width - n * v.x) / u.x);
    for (let m = from; m <= to; m++) if (Math.abs(m * u.y + n * v.y) <= height) copies.push({ m, n });
  }
  return copies;
}

/** The same pattern with its corner in the parallelogram of u and v at the origin. */
function reduced({ u, v, area }: PatternCell, { x, y }: Phase): Phase {
  const m = Math.floor((x * v.y - y * v.x) / area);
  const n = Math.floor((y * u.x - x * u.y) / area);
  return { x: x - m * u.x - n * v.x, y: y - m * u.y - n * v.y };
}

function countAt(cell: PatternCell, phase: Phase, sizes: readonly Size[], width: number, height: number): number {
  let count = 0;
  visitRuns(cell, phase, sizes, width, height, (_, from, to) => (count += to - from + 1));
  return count;
}

export function itemsAt(cell: PatternCell, phase: Phase, sizes: readonly Size[], width: number, height: number): Item[] {
  const { u, v } = cell;
  const placed: Item[] = [];
  visitRuns(cell, phase, sizes, width, height, (item, from, to, n) => {
    for (let m = from; m <= to; m++) placed.push({ version: item.version, x: phase.x + item.x + m * u.x + n * v.x, y: phase.y + item.y + m * u.y + n * v.y });
  });
  return placed;
}

/** Calls back for every unbroken run of copies m = from … to of an item in a row n. u.x > 0 and the area > 0. */
function visitRuns({ items, u, v, area }: PatternCell, phase: Phase, sizes: readonly Size[], width: number, height: number, visit: (item: Item, from: number, to: number, n: number) => void): void {
  for (const item of items) {
    const [left, low] = [-phase.x - item.x, -phase.y - item.y];
    const [right, high] = [left + width - sizes[item.version].width, low + height - sizes[item.version].height];
    if (right < left || high < low) continue;
    const corners = [low * u.x - left * u.y, low * u.x - right * u.y, high * u.x - left * u.y, high * u.x - right * u.y];
    const lastN = Math.floor(Math.max(...corners) / area);
    for (let n = Math.ceil(Math.min(...corners) / area); n <= lastN; n++) {
      let from = Math.ceil((left - n * v.x) / u.x);
      let to = Math.floor((right - n * v.x) / u.x);
      const [under, over] = [low - n * v.y, high - n * v.y];
      if (u.y > 0) {
        from = Math.max(from, Math.ceil(under / u.y));
        to = Math.min(to, Math.floor(over / u.y));
      } else if (u.y < 0) {
        from = Math.max(from, Math.ceil(over / u.y));
        to = Math.min(to, Math.floor(under / u.y));
      } else if (under > 0 || over < 0) continue;
      if (from <= to) visit(item, from, to, n);
    }
  }
}
