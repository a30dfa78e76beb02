import type { Box, Point } from '../../geometry/point.ts';
import { EDITS, isEdit, type CommandName } from './commands/command.ts';
import { rowsAndColumns, type GridWish } from './commands/rows-and-columns.ts';
import type { SheetDocument } from './document.ts';
import { settled } from './facts/settled-faults.ts';
import { redo, undo } from './history.ts';
import { beginDragging, drag, drop } from './interaction/dragging.ts';
import { clicked, pressInIdle } from './interaction/idle.ts';
import { CLICK_PX, IDLE, type Pointer } from './interaction/interaction.ts';
import { drawMarquee, endMarquee } from './interaction/marquee.ts';
import { beginMeasuring, endMeasuring, measure } from './interaction/measuring.ts';
import { endNudging, nudge, type Amount, type Direction } from './interaction/nudging.ts';
import { endPanning, pan } from './interaction/panning.ts';
import { selectAll, selectBeside, selectNone, selectTowards } from './selection.ts';
import { boxAround, type SheetFrame } from './sheet-frame.ts';
import { cancelled, committed, shown, type Situation } from './situation.ts';
import { fitted, panBy, resized, turnedOver, zoomAt } from './view.ts';

/** Everything that can happen to the hand. */
export type HandEvent =
  | { readonly kind: 'press' | 'move' | 'lift'; readonly pointer: Pointer }
  /** The pointer is taken away by the system, or the page loses it. */
  | { readonly kind: 'lost' }
  | { readonly kind: 'pinch'; readonly at: Point; readonly factor: number; readonly by: Point }
  | { readonly kind: 'resize'; readonly width: number; readonly height: number }
  | { readonly kind: 'look'; readonly box: Box }
  | { readonly kind: 'side'; readonly mirrored: boolean }
  | { readonly kind: 'command'; readonly name: CommandName }
  | { readonly kind: 'grid'; readonly wish: GridWish }
  | { readonly kind: 'arrow'; readonly direction: Direction; readonly amount: Amount }
  /** The arrow key was let go. */
  | { readonly kind: 'arrow-up' }
  | { readonly kind: 'select'; readonly ids: ReadonlySet<number>; readonly active?: number }
  /** Another document is put in place of the present one: a search's answer. */
  | { readonly kind: 'replace'; readonly document: SheetDocument; readonly done: string };

/** The situation after an event. Pure: the same event in the same situation gives the same again. */
export function respond(situation: Situation, event: HandEvent, frame: SheetFrame): Situation {
  const next = respondTo(keepsNudging(event) ? situation : endNudging(situation), event, frame);
  return settled(situation, next, frame);
}

function keepsNudging(event: HandEvent): boolean {
  return event.kind === 'arrow' || event.kind === 'resize' || event.kind === 'look' || event.kind === 'side' || event.kind === 'pinch' || event.kind === 'move' || (event.kind === 'command' && event.name === 'release');
}

function respondTo(situation: Situation, event: HandEvent, frame: SheetFrame): Situation {
  switch (event.kind) {
    case 'press':
      return press(situation, event.pointer, frame);
    case 'move':
      return moveTo(situation, event.pointer, frame);
    case 'lift':
      return lift(situation, event.pointer);
    case 'lost':
      return cancelled(situation);
    case 'pinch':
      return { ...situation, view: panBy(zoomAt(situation.view, event.at, event.factor), event.by.x, event.by.y) };
    case 'resize':
      return { ...situation, view: resized(situation.view, event.width, event.height) };
    case 'look':
      return { ...situation, view: fitted(situation.view, event.box) };
    case 'side':
      return { ...situation, view: turnedOver(situation.view, event.mirrored) };
    case 'command':
      return command(situation, event.name, frame);
    case 'grid':
      return committed(situation, rowsAndColumns(situation.history.present, situation.selected, frame, event.wish), 'rows-and-columns');
    case 'arrow':
      return situation.selected.size === 0 ? selectTowards(situation, event.direction, frame) : nudge(situation, event.direction, event.amount, frame);
    case 'arrow-up':
      return situation;
    case 'select':
      return { ...situation, selected: event.ids, active: event.active ?? situation.active };
    case 'replace':
      return withSelectionKept(committed(situation, { document: event.document }, event.done));
  }
}

function press(situation: Situation, pointer: Pointer, frame: SheetFrame): Situation {
  switch (situation.interaction.kind) {
    case 'idle':
      return pressInIdle(situation, pointer);
    case 'ready-to-measure':
      return pointer.pans ? pressInIdle(situation, pointer) : beginMeasuring(situation, pointer, frame);
    default:
      return situation;
  }
}

function moveTo(situation: Situation, pointer: Pointer, frame: SheetFrame): Situation {
  const { interaction } = situation;
  switch (interaction.kind) {
    case 'pressed':
      return isClick(interaction.start, pointer) ? situation : dragOn(beginDragging(situation, interaction.start, frame), pointer, frame);
    case 'dragging':
      return drag(situation, interaction, pointer, frame);
    case 'marquee':
      return drawMarquee(situation, interaction, pointer, frame);
    case 'panning':
      return pan(situation, interaction, pointer);
    case 'measuring':
      return measure(situation, interaction, pointer, frame);
    default:
      return situation;
  }
}

function dragOn(situation: Situation, pointer: Pointer, frame: SheetFrame): Situation {
  return situation.interaction.kind === 'dragging' ? drag(situation, situation.interaction, pointer, frame) : situation;
}

function isClick(start: Pointer, { screen }: Pointer): boolean {
  return Math.abs(screen.x - start.screen.x) < CLICK_PX && Math.abs(screen.y - start.screen.y) < CLICK_PX;
}

function lift(situation: Situation, pointer: Pointer): Situation {
  const { interaction } = situation;
  switch (interaction.kind) {
    case 'pressed':
      return clicked(situation, interaction.id, interaction.wasSelected, pointer.shift);
    case 'dragging':
      return drop(situation, interaction);
    case 'marquee':
      return endMarquee(situation);
    case 'panning':
      return endPanning(situation, interaction);
    case 'measuring':
      return endMeasuring(situation);
    default:
      return situation;
  }
}

function command(situation: Situation, name: CommandName, frame: SheetFrame): Situation {
  if (isEdit(name)) return committed(situation, EDITS[name](situation.history.present, situation.selected, frame), name);
  switch (name) {
    case 'undo':
      return withSelectionKept({ ...cancelled(situation), history: undo(situation.history), notice: undefined });
    case 'redo':
      return withSelectionKept({ ...cancelled(situation), history: redo(situation.history), notice: undefined });
    case 'release':
      return release(situation);
    case 'measure':
      return situation.interaction.kind === 'ready-to-measure' ? release(situation) : { ...cancelled(situation), interaction: { kind: 'ready-to-measure' } };
    case 'select-all':
      return selectAll(situation);
    case 'select-none':
      return selectNone(situation);
    case 'select-next':
      return selectBeside(situation, 1, frame);
    case 'select-previous':
      return selectBeside(situation, -1, frame);
    case 'zoom-in':
    case 'zoom-out':
      return { ...situation, view: zoomAt(situation.view, middleOf(situation), name === 'zoom-in' ? ZOOM_STEP : 1 / ZOOM_STEP) };
    case 'whole-sheet':
      return { ...situation, view: fitted(situation.view, { minX: 0, minY: 0, maxX: frame.problem.sheet.width, maxY: frame.problem.sheet.height }) };
    case 'zoom-selection':
      return zoomToSelection(situation, frame);
    // Asked of the page, which answers with another document.
    case 'solve-rest':
    case 'tidy':
    case 'stop':
    case 'keys':
    case 'whole-window':
    case 'rows-and-columns':
      return situation;
  }
}

const ZOOM_STEP = 1.5;

function middleOf({ view }: Situation): Point {
  return { x: view.width / 2, y: view.height / 2 };
}

/** Escape: first what is under way, then the tool, then the measure, then the selection. */
function release(situation: Situation): Situation {
  if (situation.draft || (situation.interaction.kind !== 'idle' && situation.interaction.kind !== 'ready-to-measure')) return { ...cancelled(situation), selected: keptIn(situation.history.present, situation.selected) };
  if (situation.interaction.kind === 'ready-to-measure' || situation.measured) return { ...situation, interaction: IDLE, measured: undefined };
  return selectNone(situation);
}

function zoomToSelection(situation: Situation, frame: SheetFrame): Situation {
  const box = boxAround(frame, shown(situation).blanks.filter(({ id }) => situation.selected.has(id)));
  return box ? { ...situation, view: fitted(situation.view, box) } : { ...situation, notice: 'nothing-selected' };
}

/** Blanks that are no longer there are no longer selected. */
function withSelectionKept(situation: Situation): Situation {
  const selected = keptIn(situation.history.present, situation.selected);
  return { ...situation, selected, active: selected.has(situation.active ?? -1) ? situation.active : undefined };
}

function keptIn({ blanks }: SheetDocument, ids: ReadonlySet<number>): ReadonlySet<number> {
  return new Set(blanks.filter(({ id }) => ids.has(id)).map(({ id }) => id));
}
