import type { SheetDocument } from '../document.ts';
import type { SheetFrame } from '../sheet-frame.ts';
import { align } from './align.ts';
import type { Change } from './change.ts';
import { duplicate } from './duplicate.ts';
import { equalSteps } from './equal-steps.ts';
import { gather } from './gather.ts';
import { lock } from './lock.ts';
import { remove } from './remove.ts';
import { turn } from './turn.ts';

type EditCommand = (document: SheetDocument, ids: ReadonlySet<number>, frame: SheetFrame) => Change;

/** Everything that changes the chosen blanks and needs no figures, by name. Each is one step to undo. */
export const EDITS = {
  'turn-next': (document, ids, frame) => turn(document, ids, frame, 'next'),
  'turn-back': (document, ids, frame) => turn(document, ids, frame, 'back'),
  'turn-quarter': (document, ids, frame) => turn(document, ids, frame, 'quarter'),
  duplicate,
  remove,
  lock,
  gather,
  'equal-steps': equalSteps,
  'align-left': (document, ids, frame) => align(document, ids, frame, 'left'),
  'align-right': (document, ids, frame) => align(document, ids, frame, 'right'),
  'align-gripper': (document, ids, frame) => align(document, ids, frame, 'gripper'),
  'align-tail': (document, ids, frame) => align(document, ids, frame, 'tail'),
  'align-above': (document, ids, frame) => align(document, ids, frame, 'above'),
  'align-beside': (document, ids, frame) => align(document, ids, frame, 'beside'),
} as const satisfies Readonly<Record<string, EditCommand>>;

export type EditName = keyof typeof EDITS;

/** What can be asked for that changes nothing on the sheet, and what somebody else must do. */
export type OtherCommand =
  | 'undo' | 'redo'
  | 'select-all' | 'select-none' | 'select-next' | 'select-previous'
  | 'zoom-in' | 'zoom-out' | 'whole-sheet' | 'zoom-selection'
  | 'measure' | 'rows-and-columns' | 'solve-rest' | 'tidy' | 'stop' | 'keys' | 'release' | 'whole-window';

export type CommandName = EditName | OtherCommand;

export function isEdit(name: string): name is EditName {
  return name in EDITS;
}
