import type { Box, Point } from '../../../geometry/point.ts';
import { placedBlank, type Blank } from '../document.ts';
import { boxAround, movedBox, type SheetFrame } from '../sheet-frame.ts';
import { near, type Standing } from './near-blanks.ts';

/** Places tried, those in line first, then the nearest; each is judged. */
const MOST_PLACES = 12;

/**
 * The nearest shift at which an edge of the group's box falls onto an edge of a standing blank's box and the judge finds the
 * knife that both then share no fault: only where the rules allow common knives. Whole, at most `reach` away, or undefined.
 */
export function sharedKnifeShift(group: readonly Blank[], standing: Standing, frame: SheetFrame, wanted: Point, reach: number): Point | undefined {
  const around = frame.problem.rules.commonKnife ? boxAround(frame, group) : undefined;
  if (!around) return undefined;
  const far = Math.ceil(reach);
  const here = movedBox(around, { x: Math.round(wanted.x), y: Math.round(wanted.y) });
  const beside = near(standing, [here], far);
  const squared = ({ x, y }: Point) => (x - wanted.x) ** 2 + (y - wanted.y) ** 2;
  const ordered = (inLine: boolean) => beside.flatMap((i) => onto(around, standing.boxes[i], wanted, inLine)).filter((place) => squared(place) <= reach * reach).sort((a, b) => squared(a) - squared(b));
  const places = [...ordered(true), ...ordered(false)].slice(0, MOST_PLACES);
  const others = beside.map((i) => standing.blanks[i]);
  return places.find((place) => isSound(group, others, place, frame));
}

/** Edge on edge, and other edges in one line with the neighbour's, or where the hand wants them. */
function onto(around: Box, box: Box, wanted: Point, inLine: boolean): Point[] {
  const levels = inLine ? [box.minY - around.minY, box.maxY - around.maxY] : [Math.round(wanted.y) + 0];
  const columns = inLine ? [box.minX - around.minX, box.maxX - around.maxX] : [Math.round(wanted.x) + 0];
  return [
    ...[box.maxX - around.minX, box.minX - around.maxX].flatMap((x) => levels.map((y) => ({ x, y }))),
    ...[box.maxY - around.minY, box.minY - around.maxY].flatMap((y) => columns.map((x) => ({ x, y }))),
  ];
}

/** No fault between the group and the others. */
function isSound(group: readonly Blank[], others: readonly Blank[], by: Point, frame: SheetFrame): boolean {
  const blanks = [...group.map((blank) => ({ ...blank, x: blank.x + by.x, y: blank.y + by.y })), ...others];
  const isOfGroup = (number: number) => number < group.length;
  return frame.judge(blanks.map((blank) => placedBlank(frame, blank))).faults.every((fault) => !fault.blanks.some(isOfGroup) || (fault.blanks.length > 1 && fault.blanks.every(isOfGroup)));
}
