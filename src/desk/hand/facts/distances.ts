import { ringDistance } from '../../../geometry/distance.ts';
import type { Box, Point, Ring } from '../../../geometry/point.ts';
import { shiftRing } from '../../../geometry/point.ts';
import { turnRing } from '../../../geometry/turn.ts';
import { requiredGap, type Placement } from '../../../layout/problem.ts';
import type { Blank } from '../document.ts';
import { boxAround, boxOnSheet, type SheetFrame } from '../sheet-frame.ts';
import { near, type Standing } from '../snapping/near-blanks.ts';

export type Side = 'left' | 'right' | 'gripper' | 'tail';

/** A distance shown beside moved blanks. */
export interface SideDistance {
  readonly side: Side;
  /** Knife to knife, or knife to the edge of the sheet, µm in doubles. */
  readonly distance: number;
  readonly from: Point;
  readonly to: Point;
  /** What it is measured to. */
  readonly against: 'blank' | 'sheet-edge';
}

const SIDES: readonly Side[] = ['left', 'right', 'gripper', 'tail'];

/** Neighbours within so many gaps, or this distance in µm, are looked for beside every blank of a group … */
const CLOSE_GAPS = 3;
const CLOSE = 10_000;
/** … those farther off only beside this many that lie outermost on each side. */
const OUTERMOST = 12;

/**
 * On each side the distance from the group to the nearest blank that it faces, at most `reach` away, else to the edge of
 * the sheet. Distances of outlines are exact; only neighbours near enough to be the nearest are measured. Outlines that
 * meet have no distance: that is a fault and shown as one.
 */
export function sideDistances(group: readonly Blank[], standing: Standing, frame: SheetFrame, reach: number): SideDistance[] {
  const around = boxAround(frame, group);
  if (!around) return [];
  const close = Math.min(reach, Math.max(CLOSE, CLOSE_GAPS * requiredGap(frame.problem.rules)));
  const onSide = (side: Side) =>
    nearestOn(facingPairs(group, side, standing, frame, close), frame, close) ??
    nearestOn(facingPairs(outermost(group, side, frame), side, standing, frame, reach), frame, reach) ??
    toSheetEdge(around, side, frame);
  return SIDES.map((side) => ({ side, ...onSide(side) })).filter(({ distance }) => distance > 0);
}

function outermost(group: readonly Blank[], side: Side, frame: SheetFrame): readonly Blank[] {
  if (group.length <= OUTERMOST) return group;
  const out = (blank: Blank) => {
    const { minX, minY, maxX, maxY } = boxOnSheet(frame, blank);
    return { left: -minX, right: maxX, gripper: -minY, tail: maxY }[side];
  };
  return group.toSorted((a, b) => out(b) - out(a)).slice(0, OUTERMOST);
}

interface FacingPair {
  readonly own: Blank;
  readonly other: Blank;
  /** Between the boxes, µm; negative where they overlap. */
  readonly boxes: number;
}

/** Neighbours that lie on this side of a blank of the group and face it, nearest boxes first. */
function facingPairs(group: readonly Blank[], side: Side, standing: Standing, frame: SheetFrame, reach: number): FacingPair[] {
  return group
    .flatMap((own) => {
      const box = boxOnSheet(frame, own);
      return near(standing, [strip(box, side, reach)], 0).flatMap((i): FacingPair[] => {
        const facing = facingSide(box, standing.boxes[i]);
        return facing.side === side ? [{ boxes: facing.boxes, own, other: standing.blanks[i] }] : [];
      });
    })
    .sort((a, b) => a.boxes - b.boxes);
}

/** The box, drawn out by `reach` on one side. */
function strip({ minX, minY, maxX, maxY }: Box, side: Side, reach: number): Box {
  return {
    minX: side === 'left' ? minX - reach : minX,
    maxX: side === 'right' ? maxX + reach : maxX,
    minY: side === 'gripper' ? minY - reach : minY,
    maxY: side === 'tail' ? maxY + reach : maxY,
  };
}

/** The side on which two boxes are farthest apart. */
function facingSide(a: Box, b: Box): { readonly side: Side; readonly boxes: number } {
  const sides: { side: Side; boxes: number }[] = [
    { side: 'left', boxes: a.minX - b.maxX },
    { side: 'right', boxes: b.minX - a.maxX },
    { side: 'gripper', boxes: a.minY - b.maxY },
    { side: 'tail', boxes: b.minY - a.maxY },
  ];
  return sides.reduce((best, side) => (side.boxes > best.boxes ? side : best));
}

function nearestOn(pairs: readonly FacingPair[], frame: SheetFrame, reach: number): Omit<SideDistance, 'side'> | undefined {
  let best: Omit<SideDistance, 'side'> | undefined;
  for (const { own, other, boxes } of pairs) {
    const cap = best?.distance ?? reach;
    if (boxes >= cap || cap === 0) break;
    const nearest = ringDistance(ringOnSheet(own, frame), ringOnSheet(other, frame), { cap });
    if (nearest) best = { ...nearest, against: 'blank' };
  }
  return best;
}

function ringOnSheet({ part, turn, x, y }: Placement, { problem }: SheetFrame): Ring {
  return shiftRing(turnRing(problem.parts[part].outline, turn), { x, y });
}

function toSheetEdge(around: Box, side: Side, { problem: { sheet } }: SheetFrame): Omit<SideDistance, 'side'> {
  const middle = { x: (around.minX + around.maxX) / 2, y: (around.minY + around.maxY) / 2 };
  const ends: Record<Side, [from: Point, to: Point, distance: number]> = {
    left: [{ x: around.minX, y: middle.y }, { x: 0, y: middle.y }, around.minX],
    right: [{ x: around.maxX, y: middle.y }, { x: sheet.width, y: middle.y }, sheet.width - around.maxX],
    gripper: [{ x: middle.x, y: around.minY }, { x: middle.x, y: 0 }, around.minY],
    tail: [{ x: middle.x, y: around.maxY }, { x: middle.x, y: sheet.height }, sheet.height - around.maxY],
  };
  const [from, to, distance] = ends[side];
  return { distance, from, to, against: 'sheet-edge' };
}
