import { asksFor, LEAST_FRAME_MM, LEAST_GRID_MM, type StrippingWish } from '../press/stripping.ts';
import { createJudge, type Fault } from './judge.ts';
import { JUDGE_TOLERANCE_MM } from './judge-tolerance.ts';
import type { LayoutFile, MmRing, PlacedBlank } from './layout-file.ts';

/** A place where a layout breaks what its way of stripping asks. Placements are numbered from 0, lengths in mm. */
export interface StrippingFault {
  readonly condition: 'strips' | 'frame' | 'ways';
  readonly blanks: readonly number[];
  readonly place: readonly [number, number];
  /** What is missing of the least width. */
  readonly byMm: number;
}

/**
 * Whether a sound layout can be stripped as wished, judged apart from the search: distances of neighbours and of the
 * frame on true curves by the judge, ways by the blanks' boxes in the file's own millimetres. Islands are not looked at.
 * Throws like `judge`.
 */
export function judgeStripping(layout: LayoutFile, { mode, leastStrip }: Omit<StrippingWish, 'rule'>): StrippingFault[] {
  return [...narrowPlaces(layout, leastStrip, asksFor(mode, 'frame') ? LEAST_FRAME_MM : 0), ...(asksFor(mode, 'ways') ? sharedCells(layout) : [])];
}

/** The layout judged as if the strip were its gap and the frame its margin. */
function narrowPlaces(layout: LayoutFile, leastStrip: number, frame: number): StrippingFault[] {
  const { sheet, rules } = layout;
  const judge = createJudge({
    ...layout,
    usable: { x: frame, y: 0, width: sheet.width - 2 * frame, height: sheet.height - frame },
    rules: { ...rules, gap: leastStrip, bleed: 0 },
    keepOut: [],
  });
  const conditions: Partial<Record<Fault['kind'], StrippingFault['condition']>> = { gap: 'strips', outside: 'frame' };
  return judge(layout.placements).faults.flatMap(({ kind, blanks, place, byMm }) => {
    const condition = conditions[kind];
    return condition ? [{ condition, blanks, place, byMm }] : [];
  });
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** Blanks that no way of the least width parts: their spans belong together along both axes. */
function sharedCells({ designs, placements }: LayoutFile): StrippingFault[] {
  const outlines = new Map(designs.map(({ id, outline }) => [id, outline]));
  const boxes = placements.map((placed) => boxOf(outlines.get(placed.design)!, placed));
  const columns = groupsOf(boxes.map(({ x }) => x));
  const rows = groupsOf(boxes.map(({ y }) => y));
  return boxes.flatMap(({ x, y }, j): StrippingFault[] => {
    const i = boxes.findIndex((_, other) => columns[other] === columns[j] && rows[other] === rows[j]);
    if (i === j) return [];
    const apart = Math.max(between(boxes[i]!.x, x), between(boxes[i]!.y, y));
    return [{ condition: 'ways', blanks: [i, j], place: [(x.from + x.to) / 2, (y.from + y.to) / 2], byMm: Math.max(0, LEAST_GRID_MM - apart) }];
  });
}

function between(a: Span, b: Span): number {
  return Math.max(a.from - b.to, b.from - a.to);
}

/** Spans nearer than the least way are of one group, and so are those that are of one group with a third. */
function groupsOf(spans: readonly Span[]): number[] {
  const groups = spans.map((_, i) => i);
  const order = spans.map((_, i) => i).toSorted((i, j) => spans[i]!.from - spans[j]!.from);
  let reached = -Infinity;
  let group = -1;
  for (const i of order) {
    if (spans[i]!.from - reached >= LEAST_GRID_MM - JUDGE_TOLERANCE_MM) group = i;
    groups[i] = group;
    reached = Math.max(reached, spans[i]!.to);
  }
  return groups;
}

function boxOf(outline: MmRing, { rotation, x, y }: PlacedBlank): { x: Span; y: Span } {
  const quarter = ((rotation / 90) % 4 + 4) % 4;
  const points = outline.map(([px, py]) => [[px, py], [-py, px], [-px, -py], [py, -px]][quarter]!);
  const span = (axis: 0 | 1, by: number): Span => ({ from: Math.min(...points.map((point) => point[axis]!)) + by, to: Math.max(...points.map((point) => point[axis]!)) + by });
  return { x: span(0, x), y: span(1, y) };
}
