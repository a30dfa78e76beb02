import { boxOf, type Box } from '../geometry/point.ts';
import { turnBox, turnPoint } from '../geometry/turn.ts';
import type { Part, Placement, Problem } from '../layout/problem.ts';

/**
 * What a layout is worth beside its ups. The die, the stripping tool and the blanker are cheaper with regular steps and
 * straight corridors; a compact layout leaves a wider offcut. Lengths in µm.
 */
export interface Figures {
  readonly ups: number;
  /** Different steps from a blank to its nearest neighbour to the right and away from the gripper, by rotation pair. */
  readonly steps: number;
  /** Straight lines along or across the sheet that pass between blanks without cutting one's box. */
  readonly corridors: number;
  /** Length of cutting rule saved by edges that two blanks share. */
  readonly sharedRule: number;
  /** Sheet used, from the gripper and from the lay. */
  readonly usedHeight: number;
  readonly usedWidth: number;
}

/** Two steps count as the same when they agree to this, µm: what a die maker would bend as one. */
const STEP_TOLERANCE = 20;

export function placedBox(problem: Problem, placement: Placement): Box {
  return movedBox(outlineBox(problem.parts[placement.part]!), placement);
}

const outlineBoxes = new WeakMap<Part, Box>();

/** Looked up for every blank of every layout tried, so it is found once a part. */
function outlineBox(part: Part): Box {
  let box = outlineBoxes.get(part);
  if (!box) outlineBoxes.set(part, (box = boxOf(part.outline)));
  return box;
}

function movedBox(partBox: Box, { turn, x, y }: Placement): Box {
  const box = turnBox(partBox, turn);
  return { minX: box.minX + x, minY: box.minY + y, maxX: box.maxX + x, maxY: box.maxY + y };
}

export function figuresOf(problem: Problem, placements: readonly Placement[]): Figures {
  const partBoxes = problem.parts.map((part) => boxOf(part.outline));
  const boxes = placements.map((placement) => movedBox(partBoxes[placement.part]!, placement));
  const all = unionBox(boxes);
  return {
    ups: placements.length,
    steps: countSteps(placements, boxes),
    corridors: countCorridors(boxes.map((b) => [b.minX, b.maxX])) + countCorridors(boxes.map((b) => [b.minY, b.maxY])),
    sharedRule: problem.rules.commonKnife ? sharedRule(problem, placements) : 0,
    usedHeight: all.maxY - problem.usable.minY,
    usedWidth: problem.lay === 'left' ? all.maxX - problem.usable.minX : problem.usable.maxX - all.minX,
  };
}

/** Whether nothing in the layout repeats to speak of: more different steps than half the blanks. */
export function isIrregular({ steps, ups }: Figures): boolean {
  return steps > ups / 2;
}

/** Negative when `a` is the better layout. How irregular an irregular one is does not matter. */
export function compareFigures(a: Figures, b: Figures): number {
  return (
    b.ups - a.ups ||
    (isIrregular(a) ? a.ups : a.steps) - (isIrregular(b) ? b.ups : b.steps) ||
    b.corridors - a.corridors ||
    b.sharedRule - a.sharedRule ||
    a.usedHeight * a.usedWidth - b.usedHeight * b.usedWidth
  );
}

/** Layouts alike in every figure are taken for one. */
export function sameFigures(a: Figures, b: Figures): boolean {
  return compareFigures(a, b) === 0 && a.usedWidth === b.usedWidth;
}

function unionBox(boxes: readonly Box[]): Box {
  return boxOf(boxes.flatMap((b) => [{ x: b.minX, y: b.minY }, { x: b.maxX, y: b.maxY }]));
}

function countSteps(placements: readonly Placement[], boxes: readonly Box[]): number {
  const steps = new Set<string>();
  for (let i = 0; i < placements.length; i++) {
    for (const along of ['x', 'y'] as const) {
      const next = nearestBeyond(boxes, i, along);
      if (next >= 0) steps.add(stepKey(placements[i]!, placements[next]!));
    }
  }
  return steps.size;
}

function stepKey(a: Placement, b: Placement): string {
  const dx = Math.round((b.x - a.x) / STEP_TOLERANCE);
  const dy = Math.round((b.y - a.y) / STEP_TOLERANCE);
  return `${a.part}.${a.turn}>${b.part}.${b.turn}:${dx},${dy}`;
}

/** The blank whose box starts next beyond the middle of box `i` along the axis and overlaps it across; −1 when none. */
function nearestBeyond(boxes: readonly Box[], i: number, along: 'x' | 'y'): number {
  const from = boxes[i]!;
  const middle = along === 'x' ? (from.minX + from.maxX) / 2 : (from.minY + from.maxY) / 2;
  let nearest = -1;
  let least = Infinity;
  boxes.forEach((box, j) => {
    if (j === i) return;
    const start = along === 'x' ? box.minX : box.minY;
    const overlaps = along === 'x' ? box.minY < from.maxY && box.maxY > from.minY : box.minX < from.maxX && box.maxX > from.minX;
    if (overlaps && start > middle && start < least) {
      least = start;
      nearest = j;
    }
  });
  return nearest;
}

/** Gaps in the union of the intervals. */
function countCorridors(intervals: readonly (readonly [number, number])[]): number {
  const sorted = intervals.toSorted((a, b) => a[0] - b[0]);
  let corridors = 0;
  let reached = Infinity;
  for (const [from, to] of sorted) {
    if (from >= reached) corridors++;
    reached = reached === Infinity ? to : Math.max(reached, to);
  }
  return corridors;
}

/** Straight outline edges that run the other way on exactly the same line of another blank: their common lengths, µm. */
function sharedRule(problem: Problem, placements: readonly Placement[]): number {
  const edges = new Map<string, { from: number; to: number; forward: boolean }[]>();
  for (const placement of placements) {
    for (const edge of axisEdges(problem, placement)) {
      const line = edges.get(edge.line);
      if (line) line.push(edge);
      else edges.set(edge.line, [edge]);
    }
  }
  let shared = 0;
  for (const line of edges.values()) {
    for (const a of line) {
      for (const b of line) if (a.forward && !b.forward) shared += Math.max(0, Math.min(a.to, b.to) - Math.max(a.from, b.from));
    }
  }
  return shared;
}

function axisEdges(problem: Problem, { part, turn, x, y }: Placement) {
  const ring = problem.parts[part]!.outline.map((p) => turnPoint(p, turn));
  return ring.flatMap((a, k) => {
    const b = ring[(k + 1) % ring.length]!;
    if (a.x === b.x) return [{ line: `x${a.x + x}`, from: Math.min(a.y, b.y) + y, to: Math.max(a.y, b.y) + y, forward: b.y > a.y }];
    if (a.y === b.y) return [{ line: `y${a.y + y}`, from: Math.min(a.x, b.x) + x, to: Math.max(a.x, b.x) + x, forward: b.x > a.x }];
    return [];
  });
}
