import type { CommandName } from './commands/command.ts';
import type { NudgeStep } from './interaction/nudge-steps.ts';

/** One row of the list of keys. `keys` are as a browser names them, modifiers first; `Arrow` stands for all four. */
export interface KeyRow {
  readonly keys: readonly string[];
  readonly does: CommandName | KeyMove;
}

/** What the arrow keys do with different modifiers. */
export type KeyMove = `nudge-${KeyAmount}` | 'align-arrows';
export type KeyAmount = NudgeStep | 'step' | 'contact';

/**
 * Every key that the hand knows; the page shows this list. `Control` stands for Command on a Mac as well. With nothing selected
 * the arrow keys go from blank to blank.
 */
export const HAND_KEYS: readonly KeyRow[] = [
  { keys: ['Arrow'], does: 'nudge-plain' },
  { keys: ['Alt+Arrow'], does: 'nudge-fine' },
  { keys: ['Shift+Arrow'], does: 'nudge-step' },
  { keys: ['Control+Arrow'], does: 'nudge-contact' },
  { keys: ['Alt+Shift+Arrow'], does: 'align-arrows' },
  { keys: ['n', 'PageDown'], does: 'select-next' },
  { keys: ['p', 'PageUp'], does: 'select-previous' },
  { keys: ['Control+a'], does: 'select-all' },
  { keys: ['Escape'], does: 'release' },
  { keys: ['r'], does: 'turn-next' },
  { keys: ['Shift+r'], does: 'turn-back' },
  { keys: ['Alt+r'], does: 'turn-quarter' },
  { keys: ['d', 'Control+d'], does: 'duplicate' },
  { keys: ['Delete', 'Backspace'], does: 'remove' },
  { keys: ['l'], does: 'lock' },
  { keys: ['e'], does: 'equal-steps' },
  { keys: ['g'], does: 'gather' },
  { keys: ['v'], does: 'align-above' },
  { keys: ['h'], does: 'align-beside' },
  { keys: ['b'], does: 'rows-and-columns' },
  { keys: ['s'], does: 'solve-rest' },
  { keys: ['t'], does: 'tidy' },
  { keys: ['m'], does: 'measure' },
  { keys: ['Control+z'], does: 'undo' },
  { keys: ['Control+Shift+z', 'Control+y'], does: 'redo' },
  { keys: ['+'], does: 'zoom-in' },
  { keys: ['-'], does: 'zoom-out' },
  { keys: ['0'], does: 'whole-sheet' },
  { keys: ['1'], does: 'zoom-selection' },
  { keys: ['f'], does: 'whole-window' },
  { keys: ['?'], does: 'keys' },
];

/** The fields of a keyboard event that decide. */
export interface KeyPress {
  readonly key: string;
  readonly code?: string;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
}

const byKeys = new Map(HAND_KEYS.flatMap(({ keys, does }) => keys.map((key) => [key, does] as const)));

/** What a key press means; undefined for keys that the hand leaves alone. */
export function meaningOf(press: KeyPress): KeyRow['does'] | undefined {
  const name = press.key.startsWith('Arrow') ? 'Arrow' : letterOf(press);
  const isSign = name.length === 1 && !/[a-z]/.test(name);
  const modifiers = [
    press.ctrlKey || press.metaKey ? 'Control+' : '',
    press.altKey ? 'Alt+' : '',
    // Signs such as ? and + already hold their Shift.
    press.shiftKey && !isSign ? 'Shift+' : '',
  ];
  return byKeys.get(modifiers.join('') + name);
}

/** With Alt some systems write another letter (® for r); the key's own name tells which it was. */
function letterOf({ key, code, altKey }: KeyPress): string {
  const letter = altKey ? /^Key([A-Z])$/.exec(code ?? '')?.[1] : undefined;
  return letter?.toLowerCase() ?? (key.length === 1 ? key.toLowerCase() : key);
}
