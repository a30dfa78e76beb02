import type { Box } from '../../../geometry/point.ts';
import type { Axis } from '../../../geometry/no-fit-slices.ts';
import type { Blank } from '../document.ts';
import { boxAround, boxOnSheet, type SheetFrame } from '../sheet-frame.ts';
import type { Standing } from './near-blanks.ts';

/** A whole shift along one axis at which the moved blanks stand in line with, or in step with, others. */
export interface SnapLine {
  readonly axis: Axis;
  /** µm, whole. */
  readonly shift: number;
  readonly kind: 'align' | 'step';
  /** The shift along the other axis that puts the blank into the row or column of a step; absent for alignments. */
  readonly lane?: number;
  /** Where the line is drawn on the sheet, µm: x of an upright line, y of a level one. */
  readonly at: number;
  /** Ids of the blanks it comes from. */
  readonly with: readonly number[];
}

/** What may be met along each axis; sorted by shift, made once when a move begins. */
export interface SnapLines {
  readonly x: readonly SnapLine[];
  readonly y: readonly SnapLine[];
}

/**
 * Lines for moving a group: the box around it in line with another blank's box (left, right, middle; lower, upper,
 * middle), and its first blank in equal steps with two of its like that stand in its row or column.
 */
export function snapLines(group: readonly Blank[], standing: Standing, frame: SheetFrame): SnapLines {
  const around = boxAround(frame, group);
  if (!around) return { x: [], y: [] };
  const along = (axis: Axis) => distinct([...alignments(around, standing, axis), ...steps(group[0], standing, frame, axis)]);
  return { x: along('x'), y: along('y') };
}

function alignments(around: Box, { blanks, boxes }: Standing, axis: Axis): SnapLine[] {
  const [low, high] = span(around, axis);
  return boxes.flatMap((box, i) => {
    const [from, to] = span(box, axis);
    const middle = from + to - low - high;
    const line = (shift: number, at: number): SnapLine => ({ axis, shift, at, kind: 'align', with: [blanks[i].id] });
    // Blanks of other sizes may only meet the middle at half a micrometre: then there is no such line.
    return [line(from - low, from), line(to - high, to), ...(middle % 2 === 0 ? [line(middle / 2, (from + to) / 2)] : [])];
  });
}

/** Beyond and between two neighbours of the same design and rotation. */
function steps(moved: Blank, { blanks }: Standing, frame: SheetFrame, axis: Axis): SnapLine[] {
  const lines: SnapLine[] = [];
  const across = axis === 'x' ? 'y' : 'x';
  for (const lane of lanes(moved, blanks, across)) {
    const sorted = lane.toSorted((a, b) => a[axis] - b[axis]);
    for (let i = 1; i < sorted.length; i++) {
      const [a, b] = [sorted[i - 1], sorted[i]];
      const step = b[axis] - a[axis];
      if (step === 0) continue;
      const places = [b[axis] + step, a[axis] - step, ...(step % 2 === 0 ? [a[axis] + step / 2] : [])];
      for (const place of places) {
        const box = boxOnSheet(frame, { ...moved, [axis]: place });
        lines.push({ axis, shift: place - moved[axis], lane: a[across] - moved[across], kind: 'step', at: axis === 'x' ? box.minX : box.minY, with: [a.id, b.id] });
      }
    }
  }
  return lines;
}

/** Blanks like the moved one, by the exact line they stand on. */
function lanes({ part, turn }: Blank, blanks: readonly Blank[], across: Axis): Iterable<Blank[]> {
  const byLine = new Map<number, Blank[]>();
  for (const blank of blanks) {
    if (blank.part !== part || blank.turn !== turn) continue;
    const lane = byLine.get(blank[across]);
    if (lane) lane.push(blank);
    else byLine.set(blank[across], [blank]);
  }
  return byLine.values();
}

function span(box: Box, axis: Axis): [number, number] {
  return axis === 'x' ? [box.minX, box.maxX] : [box.minY, box.maxY];
}

/** Each line once, with the blanks of all that fall on it. */
function distinct(lines: readonly SnapLine[]): SnapLine[] {
  const byPlace = new Map<string, SnapLine>();
  for (const line of lines) {
    const key = `${line.kind} ${line.shift} ${line.lane ?? line.at}`;
    const known = byPlace.get(key);
    if (!known) byPlace.set(key, line);
    else if (line.kind === 'align') byPlace.set(key, { ...known, with: [...known.with, ...line.with] });
  }
  return [...byPlace.values()].sort((a, b) => a.shift - b.shift);
}

/** The lines of an axis within `reach` of a shift along it and, for steps, of their lane across it; nearest first. */
export function linesNear(lines: readonly SnapLine[], shift: number, across: number, reach: number): SnapLine[] {
  let low = 0;
  let high = lines.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (lines[middle].shift < shift - reach) low = middle + 1;
    else high = middle;
  }
  const found: SnapLine[] = [];
  for (let i = low; i < lines.length && lines[i].shift <= shift + reach; i++) {
    if (Math.abs((lines[i].lane ?? across) - across) <= reach) found.push(lines[i]);
  }
  return found.sort((a, b) => Math.abs(a.shift - shift) - Math.abs(b.shift - shift));
}
