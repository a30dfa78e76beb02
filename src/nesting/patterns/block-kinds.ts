import type { Item, Spacing } from './frame.ts';
import { bestShifts } from './row-kinds.ts';
import { endlessPitch, layRow, repeated, rowPitch, type RowKind } from './rows.ts';

/** Two kinds of row by turns (or one alone) as a block of any size. */
export interface BlockKind {
  /** `widths[i][n − 1]`: the least width that holds n blanks in a row of the i-th kind, its shift included. */
  readonly widths: readonly [Float64Array, Float64Array];
  /** `heights[r − 1]`: the least height of r rows. */
  readonly heights: Float64Array;
  readonly rows: readonly [RowKind, RowKind];
  readonly shifts: readonly [number, number];
  /** Where the r-th row stands. */
  readonly lifts: Float64Array;
  readonly areaPerBlank: number;
}

/** Block kinds kept along an axis. */
const KEPT_KINDS = 18;

/** Blocks of these rows that fit into width × height, densest first. */
export function blockKinds(kinds: readonly RowKind[], spacing: Spacing, width: number, height: number): BlockKind[] {
  const pairs = kinds.flatMap((lower, i) => kinds.slice(i).flatMap((upper) => shiftsOf(lower, upper, spacing).map((shift) => ({ lower, upper, shift, area: areaOf(lower, upper, shift, spacing) }))));
  const kept = pairs.toSorted((a, b) => a.area - b.area).slice(0, KEPT_KINDS);
  return kept.map(({ lower, upper, shift, area }) => blockKind(lower, upper, shift, area, spacing, width, height)).filter(({ heights, widths }) => heights.length > 0 && widths[0].length > 0);
}

function shiftsOf(lower: RowKind, upper: RowKind, spacing: Spacing): number[] {
  if (Math.abs(lower.period - upper.period) >= 1) return [];
  return [...new Set([...(lower === upper ? [0] : []), ...bestShifts(lower, upper, spacing).slice(0, 2)])];
}

function areaOf(lower: RowKind, upper: RowKind, shift: number, spacing: Spacing): number {
  const pitches = endlessPitch(lower, upper, shift, spacing) + endlessPitch(upper, lower, -shift, spacing);
  return (lower.period * pitches) / (lower.items.length + upper.items.length);
}

function blockKind(lower: RowKind, upper: RowKind, shift: number, areaPerBlank: number, spacing: Spacing, width: number, height: number): BlockKind {
  const shifts = [0, shift] as const;
  const rows = [lower, upper] as const;
  const { lifts, heights } = stackOf(rows, shifts, spacing, height);
  return { widths: [widthsOf(lower, 0, spacing, width), widthsOf(upper, shift, spacing, width)], heights, rows, shifts, lifts, areaPerBlank };
}

/** Widths of ever longer rows. */
function widthsOf(kind: RowKind, shift: number, { sizes }: Spacing, width: number): Float64Array {
  const widths: number[] = [];
  for (let right = 0, n = 0; ; n++) {
    const item = repeated(kind, n);
    right = Math.max(right, shift + item.x + sizes[item.version].width);
    if (right > width) return Float64Array.from(widths);
    widths.push(right);
  }
}

/** Rows one upon the other, each held clear of all under it; rows long enough to stand for any length. */
function stackOf(rows: readonly [RowKind, RowKind], shifts: readonly [number, number], spacing: Spacing, height: number) {
  const long = rows.map((kind, i) => {
    const reach = 2 * Math.max(...spacing.sizes.map((size) => size.width)) + 2 * spacing.gap;
    const count = kind.items.length * (2 + Math.ceil(reach / kind.period));
    const row = layRow(kind, spacing, count, 0, shifts[i]);
    const lowest = kind.items.reduce((least, item) => Math.min(least, item.y), Infinity);
    return { ...row, items: Array.from({ length: count }, (_, n) => repeated(kind, n)).map((item) => ({ ...item, x: item.x + shifts[i], y: item.y - lowest })).toSorted((a, b) => a.x - b.x) };
  });
  const pitches = long.map((lower) => long.map((upper) => rowPitch(lower, upper, spacing)));
  const tallest = Math.max(long[0].height, long[1].height);
  const lifts: number[] = [];
  const heights: number[] = [];
  for (let r = 0, y = 0; ; r++) {
    const top = Math.max(heights[r - 1] ?? 0, y + long[r % 2].height);
    if (top > height) return { lifts: Float64Array.from(lifts), heights: Float64Array.from(heights) };
    lifts.push(y);
    heights.push(top);
    for (let below = r; below >= 0 && lifts[below] + tallest + spacing.gap > y; below--) y = Math.max(y, lifts[below] + pitches[below % 2][(r + 1) % 2]);
  }
}

/** How many values of a rising list are not above the limit. */
function countUpTo(rising: Float64Array, limit: number): number {
  let from = 0;
  let to = rising.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if (rising[middle] <= limit) from = middle + 1;
    else to = middle;
  }
  return from;
}

/** Blanks of the kind in a block of the given size. */
export function blockCount({ widths, heights }: BlockKind, width: number, height: number): number {
  const rows = countUpTo(heights, height);
  return Math.ceil(rows / 2) * countUpTo(widths[0], width) + Math.floor(rows / 2) * countUpTo(widths[1], width);
}

export function blockItems({ widths, heights, rows, shifts, lifts }: BlockKind, width: number, height: number): Item[] {
  const counts = [countUpTo(widths[0], width), countUpTo(widths[1], width)];
  return Array.from({ length: countUpTo(heights, height) }, (_, r) => {
    const kind = rows[r % 2];
    const lowest = kind.items.reduce((least, item) => Math.min(least, item.y), Infinity);
    return Array.from({ length: counts[r % 2] }, (_item, n) => repeated(kind, n)).map(({ version, x, y }) => ({ version, x: x + shifts[r % 2], y: y - lowest + lifts[r] }));
  }).flat();
}
