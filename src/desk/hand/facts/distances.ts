import { ringDistance } from '../../../geometry/distance.ts';
import type { Box, Point, Ring } from '../../../geometry/point.ts';
import { shiftRing } from '../../../geometry/point.ts';
import { turnRing } from '../../../geometry/turn.ts';
import type { Placement } from '../../../layout/problem.ts';
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

/**
 * On each side the distance from the group to the nearest blank that it faces, at most `reach` away, else to the edge of
 * the sheet. Distances of outlines are exact; only neighbours near enough to be the nearest are measured.
 */
export function sideDistances(group: readonly Blank[], standing: Standing, frame: SheetFrame, reach: number): SideDistance[] {
  const around = boxAround(frame, group);
  if (!around) return [];
  const facing = facingPairs(group, standing, frame, reach);
  return SIDES.map((side) => nearestOn(facing.filter((pair) => pair.side === side), side, frame, reach) ?? toSheetEdge(around, side, frame));
}

interface FacingPair {
  readonly side: Side;
  readonly own: Blank;
  readonly other: Blank;
  /** Between the boxes, µm; negative where they overlap. */
  readonly boxes: number;
}

/** Neighbours that overlap a blank of the group across a side, nearest boxes first. */
function facingPairs(group: readonly Blank[], standing: Standing, frame: SheetFrame, reach: number): FacingPair[] {
  return group
    .flatMap((own) => {
      const box = boxOnSheet(frame, own);
      return near(standing, [box], reach).flatMap((i): FacingPair[] => {
        const facing = facingSide(box, standing.boxes[i]);
        return facing ? [{ ...facing, own, other: standing.blanks[i] }] : [];
      });
    })
    .sort((a, b) => a.boxes - b.boxes);
}

/** The side on which two boxes are farthest apart, if one of them faces the other there. */
function facingSide(a: Box, b: Box): { side: Side; boxes: number } | undefined {
  const sides: { side: Side; boxes: number }[] = [
    { side: 'left', boxes: a.minX - b.maxX },
    { side: 'right', boxes: b.minX - a.maxX },
    { side: 'gripper', boxes: a.minY - b.maxY },
    { side: 'tail', boxes: b.minY - a.maxY },
  ];
  const most = sides.reduce((best, side) => (side.boxes > best.boxes ? side : best));
  const faces = most.side === 'left' || most.side === 'right' ? a.minY < b.maxY && b.minY < a.maxY : a.minX < b.maxX && b.minX < a.maxX;
  return faces ? most : undefined;
}

function nearestOn(pairs: readonly FacingPair[], side: Side, frame: SheetFrame, reach: number): SideDistance | undefined {
  let best: SideDistance | undefined;
  for (const { own, other, boxes } of pairs) {
    const cap = best?.distance ?? reach;
    if (boxes >= cap) break;
    const nearest = ringDistance(ringOnSheet(own, frame), ringOnSheet(other, frame), { cap });
    if (nearest) best = { side, ...nearest, against: 'blank' };
  }
  return best;
}

function ringOnSheet({ part, turn, x, y }: Placement, { problem }: SheetFrame): Ring {
  return shiftRing(turnRing(problem.parts[part].outline, turn), { x, y });
}

function toSheetEdge(around: Box, side: Side, { problem: { sheet } }: SheetFrame): SideDistance {
  const middle = { x: (around.minX + around.maxX) / 2, y: (around.minY + around.maxY) / 2 };
  const ends: Record<Side, [from: Point, to: Point, distance: number]> = {
    left: [{ x: around.minX, y: middle.y }, { x: 0, y: middle.y }, around.minX],
    right: [{ x: around.maxX, y: middle.y }, { x: sheet.width, y: middle.y }, sheet.width - around.maxX],
    gripper: [{ x: middle.x, y: around.minY }, { x: middle.x, y: 0 }, around.minY],
    tail: [{ x: middle.x, y: around.maxY }, { x: middle.x, y: sheet.height }, sheet.height - around.maxY],
  };
  const [from, to, distance] = ends[side];
  return { side, distance, from, to, against: 'sheet-edge' };
}
