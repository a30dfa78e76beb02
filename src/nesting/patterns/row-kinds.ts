import type { Item, Spacing } from './frame.ts';
import { remembered } from '../remembered.ts';
import { leastOf } from './least.ts';
import { endlessPitch, tightPeriod, type RowKind } from './rows.ts';

/** Mixed kinds kept beside the plain ones. */
const KEPT_PAIRS = 8;
/** Samples of a shift before the best are refined to the micrometre. */
const SHIFT_SAMPLES = 40;

const known = new WeakMap<Spacing, { kinds: readonly RowKind[]; asked: number }>();

/**
 * The kinds of row a part offers: every version alone, and two versions by turns at the shifts that pay. Tight. Made once
 * and counted every time, so that the counted work of a search does not depend on what was searched before.
 */
export function rowKinds(spacing: Spacing): readonly RowKind[] {
  const kept = known.get(spacing);
  if (kept) {
    spacing.asked.count += kept.asked;
    return kept.kinds;
  }
  const before = spacing.asked.count;
  const kinds = findKinds(spacing);
  known.set(spacing, { kinds, asked: spacing.asked.count - before });
  return kinds;
}

function findKinds(spacing: Spacing): RowKind[] {
  const plain = plainKinds(spacing);
  const pairs = spacing.sizes.flatMap((_, a) => spacing.sizes.slice(a).flatMap((_size, more) => pairKinds(a, a + more, spacing)));
  const ranked = pairs.map((kind) => ({ kind, area: areaPerBlank(kind, spacing) })).toSorted((p, q) => p.area - q.area);
  return [...plain, ...ranked.slice(0, KEPT_PAIRS).map(({ kind }) => kind)];
}

/** Every version alone. */
export function plainKinds(spacing: Spacing): RowKind[] {
  return spacing.sizes.map((_, version) => periodic([{ version, x: 0, y: 0 }], spacing));
}

export function periodic(items: readonly Item[], spacing: Spacing): RowKind {
  return { items, period: tightPeriod(items, spacing) };
}

/** Area a blank takes when the kind is stacked on itself at its best shift. */
export function areaPerBlank(kind: RowKind, spacing: Spacing): number {
  const [shift] = bestShifts(kind, kind, spacing);
  return (kind.period * endlessPitch(kind, kind, shift ?? 0, spacing)) / kind.items.length;
}

/** Versions a and b by turns, b `shift` higher: level at the foot, at the head, at the middle, and where it is tightest. */
function pairKinds(a: number, b: number, spacing: Spacing): RowKind[] {
  const heightA = spacing.sizes[a].height;
  const heightB = spacing.sizes[b].height;
  const kindAt = (shift: number) => pairAt(a, b, shift, spacing);
  const span = (shift: number) => Math.max(heightA, shift + heightB) - Math.min(0, shift);
  const range = { from: 1 - heightB, to: heightA - 1, samples: SHIFT_SAMPLES, kept: 2 };
  const shifts = new Set([
    ...(a === b ? [] : [0, heightA - heightB, Math.round((heightA - heightB) / 2)]),
    ...leastOf((shift) => kindAt(shift).period * span(shift), range),
    ...leastOf((shift) => kindAt(shift).period, range),
  ]);
  return [...shifts].filter((shift) => a !== b || shift !== 0).map(kindAt);
}

function pairAt(a: number, b: number, shift: number, spacing: Spacing): RowKind {
  const foot = Math.max(0, -shift);
  const apart = spacing.right(a, b, shift);
  const left = Math.max(0, -apart);
  const items = [
    { version: a, x: left, y: foot },
    { version: b, x: left + apart, y: foot + shift },
  ];
  return periodic(items, spacing);
}

/** Shifts of the upper row against the lower (same period) that stack tightest: there and back, and there alone. */
export function bestShifts(lower: RowKind, upper: RowKind, spacing: Spacing): number[] {
  const period = lower.period;
  const there = remembered((shift) => endlessPitch(lower, upper, shift, spacing));
  const back = (shift: number) => endlessPitch(upper, lower, -shift, spacing);
  const range = { from: 0, to: Math.max(0, Math.ceil(period) - 1), samples: SHIFT_SAMPLES, kept: 2 };
  return [...new Set([...leastOf((shift) => there(shift) + back(shift), range), ...leastOf(there, { ...range, kept: 1 })])];
}
