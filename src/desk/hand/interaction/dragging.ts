import type { Point } from '../../../geometry/point.ts';
import { move } from '../commands/move.ts';
import { chosen, movable, withAdded, type SheetDocument } from '../document.ts';
import { sideDistances } from '../facts/distances.ts';
import type { SheetFrame } from '../sheet-frame.ts';
import { committed, cancelled, type Situation } from '../situation.ts';
import { beginMove, snap, type Moving } from '../snapping/snap.ts';
import { onSheet } from '../view.ts';
import { IDLE, NEAR_PX, SNAP_PX, type Interaction, type Pointer } from './interaction.ts';

type Dragging = Extract<Interaction, { kind: 'dragging' }>;

/** From now on the chosen blanks, or copies of them, follow the pointer. The document as it is now is the mark to go back to. */
export function beginDragging(situation: Situation, start: Pointer, frame: SheetFrame): Situation {
  const present = situation.history.present;
  const copies = start.control ? withAdded(present, chosen(present, situation.selected)) : undefined;
  const mark = copies?.document ?? present;
  const selected = copies?.ids ?? situation.selected;
  const moving = beginMove(movable(mark, selected), others(mark, selected), frame);
  if (moving.group.length === 0) return { ...situation, interaction: IDLE, notice: 'all-locked' };
  return { ...situation, selected, interaction: { kind: 'dragging', start: start.at, mark, moving, copied: copies !== undefined } };
}

/** Everything that stays: what is not chosen, and what is locked. */
export function others(document: SheetDocument, ids: ReadonlySet<number>) {
  return document.blanks.filter(({ id, locked }) => locked || !ids.has(id));
}

/** Computed from the mark each time, never from the step before. */
export function drag(situation: Situation, state: Dragging, pointer: Pointer, frame: SheetFrame): Situation {
  const wanted = wantedShift(state.start, pointer);
  const reach = pointer.alt ? 0 : onSheet(situation.view, SNAP_PX);
  const snapped = snap(frame, state.moving, wanted, reach);
  const shift = pointer.shift ? alongOneAxis(snapped.shift, wanted) : snapped.shift;
  const isKept = shift === snapped.shift && snapped.snapped;
  return { ...situation, ...tried(situation, state.mark, state.moving, shift, frame, isKept ? snapped : undefined) };
}

/** What is shown while blanks stand tentatively moved by a shift. */
export function tried(situation: Situation, mark: SheetDocument, moving: Moving, by: Point, frame: SheetFrame, snapped: ReturnType<typeof snap> | undefined): Pick<Situation, 'draft' | 'live'> {
  const draft = move(mark, new Set(moving.group.map(({ id }) => id)), by).document;
  const group = movable(draft, new Set(moving.group.map(({ id }) => id)));
  return { draft, live: { by, snapped, distances: sideDistances(group, moving.standing, frame, onSheet(situation.view, NEAR_PX)) } };
}

function wantedShift(start: Point, { at, shift }: Pointer): Point {
  const by = { x: at.x - start.x, y: at.y - start.y };
  if (!shift) return by;
  return Math.abs(by.x) >= Math.abs(by.y) ? { x: by.x, y: 0 } : { x: 0, y: by.y };
}

/** With Shift the other axis does not change, whatever is near. */
function alongOneAxis(snapped: Point, wanted: Point): Point {
  if (wanted.y === 0 && snapped.y !== 0) return { x: Math.round(wanted.x), y: 0 };
  if (wanted.x === 0 && snapped.x !== 0) return { x: 0, y: Math.round(wanted.y) };
  return snapped;
}

export function drop(situation: Situation, state: Dragging): Situation {
  return situation.draft ? committed(situation, { document: situation.draft }, state.copied ? 'duplicate' : 'move') : cancelled(situation);
}
