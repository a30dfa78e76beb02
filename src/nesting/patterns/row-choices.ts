import type { Frame, Spacing } from './frame.ts';
import { bestShifts } from './row-kinds.ts';
import { layRow, rowCount, rowPitch, type Row, type RowKind } from './rows.ts';

/** Periods nearer than this to one another are taken for the same, µm. */
const SAME_PERIOD = 1;

/**
 * The rows that fill the frame's width: every kind as tight as it goes, spread over the whole width, and spread to leave
 * half a period; each from every blank of its period, at the left, at the right, and at the shifts that nest best. At most
 * `most` of them.
 */
export function rowChoices(frame: Frame, tightKinds: readonly RowKind[], most: number): Row[] {
  const { spacing, width } = frame;
  const kinds = tightKinds.flatMap((kind) => [kind, ...spreadKinds(kind, spacing, width)]);
  const rows = new Map<string, Row>();
  for (const row of roundsOfRows(kinds, frame)) {
    rows.set(keyOf(row), row);
    if (rows.size === most) break;
  }
  return [...rows.values()];
}

/** Nesting shifts are dear, and asked for only when rows at the left and at the right have left room for more. */
function* roundsOfRows(kinds: readonly RowKind[], frame: Frame): Generator<Row> {
  for (const kind of kinds) yield* rowsOfRound(kind, [], -1, frame);
  const offsets: (readonly number[])[] = [];
  for (const kind of kinds) {
    const shifts = nestingShifts(kind, kinds, frame.spacing);
    offsets.push(shifts);
    yield* rowsOfRound(kind, shifts, 0, frame);
  }
  const most = Math.max(0, ...offsets.map(({ length }) => length));
  for (let round = 1; round < most; round++) for (const [k, kind] of kinds.entries()) yield* rowsOfRound(kind, offsets[k], round, frame);
}

/** Round −1: at the left and at the right; round r: at the r-th nesting shift, counted from either end. */
function rowsOfRound(kind: RowKind, shifts: readonly number[], round: number, { spacing, width }: Frame): Row[] {
  return kind.items.flatMap((_, start) => {
    const count = rowCount(kind, spacing, width, start);
    if (count === 0) return [];
    const slack = width - layRow(kind, spacing, count, start).end;
    if (round < 0) return [0, slack].map((offset) => layRow(kind, spacing, count, start, offset));
    const shift = shifts[round];
    if (shift === undefined) return [];
    const shifted = rowCount(kind, spacing, width - shift, start);
    if (shifted === 0) return [];
    const spare = width - shift - layRow(kind, spacing, shifted, start).end;
    return [shift, spare].map((offset) => layRow(kind, spacing, shifted, start, offset));
  });
}

function keyOf({ items }: Row): string {
  return items.map(({ version, x, y }) => `${version}:${x}:${y}`).join(' ');
}

/** Shifts within one period at which the kind nests best into itself and into kinds of the same period. */
function nestingShifts(kind: RowKind, kinds: readonly RowKind[], spacing: Spacing): number[] {
  const partners = kinds.filter((other) => Math.abs(other.period - kind.period) < SAME_PERIOD);
  return [...new Set(partners.flatMap((lower) => bestShifts(lower, kind, spacing)))].filter((shift) => shift > 0);
}

/** The kind with its period stretched to use the width up: by itself, and beside a row half a period along. */
function spreadKinds(kind: RowKind, spacing: Spacing, width: number): RowKind[] {
  const count = rowCount(kind, spacing, width);
  const periods = Math.floor((count - 1) / kind.items.length);
  if (periods < 1) return [];
  const slack = width - layRow(kind, spacing, count).end;
  const spread = [slack / periods, (slack - kind.period / 2) / (periods + 0.5)];
  return spread.filter((more) => more >= 1).map((more) => ({ items: kind.items, period: kind.period + more }));
}

export function pitchTable(rows: readonly Row[], spacing: Spacing): Float64Array {
  const table = new Float64Array(rows.length ** 2);
  rows.forEach((lower, i) => rows.forEach((upper, j) => (table[i * rows.length + j] = rowPitch(lower, upper, spacing))));
  return table;
}
