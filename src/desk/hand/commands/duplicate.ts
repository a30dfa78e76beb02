import type { Point } from '../../../geometry/point.ts';
import { innerFit } from '../../../geometry/inner-fit.ts';
import { blankArea, type Placement } from '../../../layout/problem.ts';
import { groupShifts } from '../../../nesting/group-shifts.ts';
import { chosen, withAdded, type Blank, type SheetDocument } from '../document.ts';
import { boxAround, type SheetFrame } from '../sheet-frame.ts';
import { unchanged, type Change } from './change.ts';
import { leastGroupStep } from './repeat.ts';
import { MOST_BLANKS } from './rows-and-columns.ts';

/**
 * Copies the chosen blanks one step on: away from the lay, else away from the gripper, towards the lay, towards the gripper,
 * whichever first is free; where none is, away from the lay, to be moved by hand.
 */
export function duplicate(document: SheetDocument, ids: ReadonlySet<number>, frame: SheetFrame): Change {
  const group = chosen(document, ids);
  if (group.length === 0) return unchanged(document, 'nothing-selected');
  if (document.blanks.length + group.length > MOST_BLANKS) return unchanged(document, 'too-many-blanks');
  const steps = stepsOn(group, frame);
  const by = steps.find((step) => isFree(group, document.blanks, step, frame)) ?? steps[0];
  const { document: larger, ids: added } = withAdded(document, shifted(group, by));
  return { document: larger, selected: added };
}

function stepsOn(group: readonly Blank[], { problem }: SheetFrame): Point[] {
  const along = leastGroupStep(problem, group, 'x') * (problem.lay === 'left' ? 1 : -1);
  const away = leastGroupStep(problem, group, 'y');
  return [{ x: along, y: 0 }, { x: 0, y: away }, { x: -along, y: 0 }, { x: 0, y: -away }];
}

function isFree(group: readonly Blank[], standing: readonly Placement[], by: Point, frame: SheetFrame): boolean {
  const room = innerFit(blankArea(frame.problem), boxAround(frame, group)!);
  if (!room || by.x < room.minX || by.x > room.maxX || by.y < room.minY || by.y > room.maxY) return false;
  return groupShifts(frame.problem, group, standing, 'x', by.y).some(({ from, to }) => from <= by.x && by.x <= to);
}

function shifted(group: readonly Blank[], by: Point): Placement[] {
  return group.map((blank) => ({ ...blank, x: blank.x + by.x, y: blank.y + by.y }));
}
