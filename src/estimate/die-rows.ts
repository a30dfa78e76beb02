import { groupBy } from '../base/group-by.ts';
import type { Box } from '../geometry/point.ts';

/** Blanks whose boxes start on one line. Lengths in mm. */
export interface DieRow {
  readonly count: number;
  /** From box start to box start, where all steps of the row are the same. */
  readonly step: number | undefined;
  /** Start of the first box along the row. */
  readonly start: number;
  /** Where the row lies across: its boxes' start. */
  readonly at: number;
}

/** A sequence told shortly: all the same, two values by turns, or each by itself. */
export type Sequence =
  | { readonly kind: 'same'; readonly value: number }
  | { readonly kind: 'turns'; readonly values: readonly [number, number] }
  | { readonly kind: 'each'; readonly values: readonly number[] };

/** How rows stand to one another: none shifted, every second one, each against the one before, or as listed against the first. */
export type Stagger =
  | { readonly kind: 'none' }
  | { readonly kind: 'second'; readonly mm: number }
  | { readonly kind: 'each'; readonly mm: number }
  | { readonly kind: 'listed'; readonly mm: readonly number[] };

export interface DieRows {
  /** `x`: rows along the gripper edge; `y`: columns away from it. Whichever are fewer. */
  readonly along: 'x' | 'y';
  readonly rows: readonly DieRow[];
  /** From row to row; absent with a single one. */
  readonly lifts: Sequence | undefined;
  readonly stagger: Stagger;
  /** The step that all rows have within them; absent where they differ, or hold one blank each. */
  readonly step: number | undefined;
}

/** Positions of a layout file are compared to the micrometre, mm. */
const SAME_MM = 0.0015;
const same = (a: number, b: number) => Math.abs(a - b) <= SAME_MM;

/** The rows or columns a die is set out by. Boxes in mm, at least one. */
export function dieRows(boxes: readonly Box[]): DieRows {
  const [alongX, alongY] = [rowsAlong(boxes, 'x'), rowsAlong(boxes, 'y')];
  const along = alongX.length <= alongY.length ? 'x' : 'y';
  const rows = along === 'x' ? alongX : alongY;
  const long = rows.filter(({ count }) => count > 1);
  const [first] = long;
  const step = first?.step !== undefined && long.every((row) => row.step !== undefined && same(row.step, first.step!)) ? first.step : undefined;
  return { along, rows, lifts: sequenceOf(differences(rows.map(({ at }) => at))), stagger: staggerOf(rows.map(({ start }) => start - rows[0]!.start)), step };
}

function rowsAlong(boxes: readonly Box[], axis: 'x' | 'y'): DieRow[] {
  const [along, across] = axis === 'x' ? (['minX', 'minY'] as const) : (['minY', 'minX'] as const);
  const lines = groupBy(boxes, (box) => Math.round(box[across] * 1000));
  return [...lines.values()].map((row): DieRow => {
    const starts = row.map((box) => box[along]).toSorted((a, b) => a - b);
    const steps = sequenceOf(differences(starts));
    return { count: row.length, step: steps?.kind === 'same' ? steps.value : undefined, start: starts[0]!, at: row[0]![across] };
  }).toSorted((a, b) => a.at - b.at);
}

function differences(values: readonly number[]): number[] {
  return values.slice(1).map((value, i) => value - values[i]!);
}

/** Undefined for an empty one. */
export function sequenceOf(values: readonly number[]): Sequence | undefined {
  const [first, second] = values;
  if (first === undefined) return undefined;
  if (values.every((value) => same(value, first))) return { kind: 'same', value: first };
  if (values.length > 2 && values.every((value, i) => same(value, i % 2 === 0 ? first : second!))) return { kind: 'turns', values: [first, second!] };
  return { kind: 'each', values };
}

function staggerOf(shifts: readonly number[]): Stagger {
  if (shifts.every((shift) => same(shift, 0))) return { kind: 'none' };
  const [, second] = shifts;
  if (shifts.every((shift, i) => same(shift, i % 2 === 0 ? 0 : second!))) return { kind: 'second', mm: second! };
  if (shifts.every((shift, i) => same(shift, i * second!))) return { kind: 'each', mm: second! };
  return { kind: 'listed', mm: shifts };
}
