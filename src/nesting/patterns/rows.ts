import type { Item, Spacing } from './frame.ts';

/** A kind of row: the blanks of one period, from left to right. The lowest stands at y 0, the first at x 0. */
export interface RowKind {
  readonly items: readonly Item[];
  /** From a blank to its next repetition; need not be whole, positions are rounded down to whole micrometres. */
  readonly period: number;
}

/** A finite row at its place across the field. */
export interface Row {
  readonly kind: RowKind;
  /** From left to right. */
  readonly items: readonly Item[];
  /** Right end of the row, from the field's left edge. */
  readonly end: number;
  readonly height: number;
}

/** The row of `count` blanks whose first is item `start` of the kind and whose left end is at `offset`. */
export function layRow(kind: RowKind, { sizes }: Spacing, count: number, start = 0, offset = 0): Row {
  const raw = Array.from({ length: count }, (_, i) => repeated(kind, start + i));
  const left = raw.reduce((least, item) => Math.min(least, item.x), Infinity);
  const low = raw.reduce((least, item) => Math.min(least, item.y), Infinity);
  const items = raw.map(({ version, x, y }) => ({ version, x: x - left + offset, y: y - low })).toSorted((a, b) => a.x - b.x);
  return { kind, items, end: mostOf(items, (i) => i.x + sizes[i.version].width), height: mostOf(items, (i) => i.y + sizes[i.version].height) };
}

function mostOf(items: readonly Item[], value: (item: Item) => number): number {
  return items.reduce((most, item) => Math.max(most, value(item)), -Infinity);
}

/** Item `index` of the endless row. */
export function repeated({ items, period }: RowKind, index: number): Item {
  const turn = Math.floor(index / items.length);
  const item = items[index - turn * items.length];
  return { version: item.version, x: item.x + Math.floor(turn * period), y: item.y };
}

/** The most blanks of the kind that fit side by side in `width`. */
export function rowCount(kind: RowKind, { sizes }: Spacing, width: number, start = 0): number {
  let left = Infinity;
  let right = -Infinity;
  for (let count = 0; ; count++) {
    const item = repeated(kind, start + count);
    left = Math.min(left, item.x);
    right = Math.max(right, item.x + sizes[item.version].width);
    if (right - left > width) return count;
  }
}

/** How far above the lower row the upper one must stand. −Infinity when they cannot meet. */
export function rowPitch(lower: Row, upper: Row, { sizes, gap, up }: Spacing): number {
  const widest = sizes.reduce((most, { width }) => Math.max(most, width), 0) + gap;
  let pitch = -Infinity;
  let first = 0;
  for (const b of upper.items) {
    const right = b.x + sizes[b.version].width + gap;
    while (first < lower.items.length && lower.items[first].x + widest <= b.x) first++;
    for (let k = first; k < lower.items.length && lower.items[k].x < right; k++) {
      const a = lower.items[k];
      const lift = up(a.version, b.version, b.x - a.x) + a.y - b.y;
      if (lift > pitch) pitch = lift;
    }
  }
  return pitch;
}

/** Pitch of two endless rows of the same period, the upper one `shift` to the right. */
export function endlessPitch(lower: RowKind, upper: RowKind, shift: number, spacing: Spacing): number {
  let pitch = -Infinity;
  for (const b of upper.items) {
    const widthB = spacing.sizes[b.version].width;
    for (const a of lower.items) {
      const widthA = spacing.sizes[a.version].width;
      const apart = b.x + shift - a.x;
      const from = Math.ceil((apart - widthA - spacing.gap) / lower.period);
      const to = Math.floor((apart + widthB + spacing.gap) / lower.period);
      for (let m = from; m <= to; m++) pitch = Math.max(pitch, spacing.up(a.version, b.version, Math.floor(apart - m * lower.period)) + a.y - b.y);
    }
  }
  return pitch;
}

/** Shortest period that lets the items repeat side by side, each copy beyond the one before. */
export function tightPeriod(items: readonly Item[], spacing: Spacing): number {
  let period = 1;
  for (const a of items) {
    for (const b of items) period = Math.max(period, a.x - b.x + spacing.right(a.version, b.version, b.y - a.y));
  }
  return period;
}
