import type { Axis } from '../../../geometry/no-fit-slices.ts';
import { groupShifts } from '../../../nesting/group-shifts.ts';
import { intersect } from '../../../nesting/finish/free-places.ts';
import { innerFit } from '../../../geometry/inner-fit.ts';
import { blankArea } from '../../../layout/problem.ts';
import { leastGroupStep } from '../commands/repeat.ts';
import type { Notice } from '../commands/change.ts';
import { movable } from '../document.ts';
import { boxAround, type SheetFrame } from '../sheet-frame.ts';
import { committed, type Situation } from '../situation.ts';
import { beginMove, type Moving } from '../snapping/snap.ts';
import { others, tried } from './dragging.ts';
import type { Interaction } from './interaction.ts';

type Nudging = Extract<Interaction, { kind: 'nudging' }>;

export type Direction = 'left' | 'right' | 'gripper' | 'tail';
/** µm; or `step`: one place on in an endless row; `contact`: as far as it slides. */
export type Amount = number | 'step' | 'contact';

/**
 * Moves the chosen blanks by a key. A run of such keys is one step to undo: it ends when the key is let go or something
 * else is done, and Escape takes all of it back.
 */
export function nudge(situation: Situation, direction: Direction, amount: Amount, frame: SheetFrame): Situation {
  const state = situation.interaction.kind === 'nudging' ? situation.interaction : beginNudging(situation, frame);
  if (!state) return { ...situation, notice: situation.selected.size === 0 ? 'nothing-selected' : 'all-locked' };
  const axis: Axis = direction === 'left' || direction === 'right' ? 'x' : 'y';
  const sign = direction === 'left' || direction === 'gripper' ? -1 : 1;
  const along = stepFor(state, axis, sign, amount, frame);
  const by = { ...state.by, [axis]: state.by[axis] + along };
  return {
    ...situation,
    interaction: { ...state, by },
    notice: along === 0 ? noticeOf(situation) : undefined,
    ...tried(situation, state.mark, state.moving, by, frame, undefined),
  };
}

function beginNudging({ history: { present }, selected }: Situation, frame: SheetFrame): Nudging | undefined {
  const group = movable(present, selected);
  return group.length === 0 ? undefined : { kind: 'nudging', mark: present, moving: beginMove(group, others(present, selected), frame), by: { x: 0, y: 0 } };
}

function stepFor({ moving, by }: Nudging, axis: Axis, sign: -1 | 1, amount: Amount, frame: SheetFrame): number {
  switch (amount) {
    case 'step':
      return sign * leastGroupStep(frame.problem, moving.group, axis);
    case 'contact':
      return slide(moving, by, axis, sign, frame);
    default:
      return sign * amount;
  }
}

/** To the end of the free stretch it stands in; from a faulty place to the next free one that way. 0 where there is none. */
function slide({ group, standing }: Moving, by: { x: number; y: number }, axis: Axis, sign: -1 | 1, frame: SheetFrame): number {
  const room = innerFit(blankArea(frame.problem), boxAround(frame, group)!);
  const across = axis === 'x' ? 'y' : 'x';
  if (!room || by[across] < (across === 'x' ? room.minX : room.minY) || by[across] > (across === 'x' ? room.maxX : room.maxY)) return 0;
  const inRoom = axis === 'x' ? { from: room.minX, to: room.maxX } : { from: room.minY, to: room.maxY };
  const free = intersect(groupShifts(frame.problem, group, standing.blanks, axis, by[across]), [inRoom], 0);
  const at = by[axis];
  const stretch = free.find(({ from, to }) => from <= at && at <= to);
  if (stretch) return (sign < 0 ? stretch.from : stretch.to) - at + 0;
  const next = sign > 0 ? free.find(({ from }) => from > at)?.from : free.findLast(({ to }) => to < at)?.to;
  return next === undefined ? 0 : next - at;
}

/** Why it did not slide. */
function noticeOf({ faults, selected }: Situation): Notice {
  return faults.some(({ blanks }) => blanks.some((id) => selected.has(id))) ? 'no-free-place-that-way' : 'no-contact-that-way';
}

/** What the last key could not do stays said. */
export function endNudging(situation: Situation): Situation {
  if (situation.interaction.kind !== 'nudging' || !situation.draft) return situation;
  const { notice } = situation;
  return committed(situation, { document: situation.draft, ...(notice && { notice }) }, 'move');
}
