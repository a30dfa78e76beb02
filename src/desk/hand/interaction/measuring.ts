import type { Point } from '../../../geometry/point.ts';
import { shiftRing } from '../../../geometry/point.ts';
import { turnRing } from '../../../geometry/turn.ts';
import { between, dot, minus } from '../../../geometry/vector.ts';
import { boxOnSheet, type SheetFrame } from '../sheet-frame.ts';
import { shown, type Situation } from '../situation.ts';
import { onSheet } from '../view.ts';
import { SNAP_PX, type Interaction, type Pointer } from './interaction.ts';

type Measuring = Extract<Interaction, { kind: 'measuring' }>;

export function beginMeasuring(situation: Situation, pointer: Pointer, frame: SheetFrame): Situation {
  const from = drawnTo(situation, pointer, frame);
  return { ...situation, interaction: { kind: 'measuring', from }, measured: { from, to: from } };
}

export function measure(situation: Situation, { from }: Measuring, pointer: Pointer, frame: SheetFrame): Situation {
  return { ...situation, measured: { from, to: drawnTo(situation, pointer, frame) } };
}

/** The tool stays in the hand until Escape. */
export function endMeasuring(situation: Situation): Situation {
  return { ...situation, interaction: { kind: 'ready-to-measure' } };
}

/** The corner of an outline or of the sheet near the pointer, else the nearest point of an edge, else the place itself. */
export function drawnTo(situation: Situation, { at, alt }: Pointer, frame: SheetFrame): Point {
  if (alt) return at;
  const reach = onSheet(situation.view, SNAP_PX);
  let corner: Point | undefined;
  let edge: Point | undefined;
  let cornerReach = reach * reach;
  let edgeReach = cornerReach;
  for (const ring of ringsNear(situation, at, reach, frame)) {
    ring.forEach((p, i) => {
      const toCorner = squared(p, at);
      if (toCorner <= cornerReach) [corner, cornerReach] = [p, toCorner];
      const foot = footOn(at, p, ring[(i + 1) % ring.length]);
      const toEdge = squared(foot, at);
      if (toEdge <= edgeReach) [edge, edgeReach] = [foot, toEdge];
    });
  }
  return corner ?? edge ?? at;
}

function ringsNear(situation: Situation, at: Point, reach: number, frame: SheetFrame): (readonly Point[])[] {
  const { problem } = frame;
  const { width, height } = problem.sheet;
  const rings: (readonly Point[])[] = [[{ x: 0, y: 0 }, { x: width, y: 0 }, { x: width, y: height }, { x: 0, y: height }]];
  for (const blank of shown(situation).blanks) {
    const { minX, minY, maxX, maxY } = boxOnSheet(frame, blank);
    if (at.x < minX - reach || at.x > maxX + reach || at.y < minY - reach || at.y > maxY + reach) continue;
    const { outline, openings } = problem.parts[blank.part];
    for (const ring of [outline, ...openings]) rings.push(shiftRing(turnRing(ring, blank.turn), blank));
  }
  return rings;
}

function footOn(p: Point, a: Point, b: Point): Point {
  const along = minus(b, a);
  const length = dot(along, along);
  return length === 0 ? a : between(a, b, Math.min(1, Math.max(0, dot(minus(p, a), along) / length)));
}

function squared(a: Point, b: Point): number {
  const d = minus(a, b);
  return dot(d, d);
}
