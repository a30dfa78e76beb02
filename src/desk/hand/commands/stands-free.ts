import { blankArea, type Placement } from '../../../layout/problem.ts';
import { groupShifts } from '../../../nesting/group-shifts.ts';
import { boxOnSheet, type SheetFrame } from '../sheet-frame.ts';

/** Whether a blank lies within the area for blanks and as far from all others and from what must stay free as the rules ask. */
export function standsFree(placement: Placement, others: readonly Placement[], frame: SheetFrame): boolean {
  const [area, box] = [blankArea(frame.problem), boxOnSheet(frame, placement)];
  if (box.minX < area.minX || box.minY < area.minY || box.maxX > area.maxX || box.maxY > area.maxY) return false;
  return groupShifts(frame.problem, [placement], others, 'x', 0, { from: 0, to: 0 }).length > 0;
}

/** The same of one that is on the sheet already. */
export function isFree(all: readonly Placement[], placement: Placement, frame: SheetFrame): boolean {
  return standsFree(placement, all.filter((other) => other !== placement), frame);
}
