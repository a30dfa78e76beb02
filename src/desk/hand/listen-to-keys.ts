import type { Direction } from './interaction/nudging.ts';
import { meaningOf, type KeyAmount, type KeyRow } from './keys.ts';

export interface KeyEvents {
  /** Returns whether it was for the hand; the page may have a use for what was not. */
  command(name: Exclude<KeyRow['does'], `nudge-${KeyAmount}` | 'align-arrows'>): boolean;
  arrow(direction: Direction, amount: KeyAmount): void;
  align(direction: Direction): void;
  arrowUp(): void;
}

/**
 * Hears the hand's keys wherever on the page they are pressed, so that nobody has to point at the picture first: not while
 * somebody types in a field, chooses in a list or answers a dialog. Outside the hand, keys that scroll the page do so unless
 * there is something chosen for them to move. Returns what takes the listeners away.
 */
export function listenToKeys(root: HTMLElement, state: () => { readonly mirrored: boolean; readonly anySelected: boolean }, on: KeyEvents): () => void {
  const stop = new AbortController();
  const { signal } = stop;
  const heard = (event: KeyboardEvent): boolean => {
    const meaning = meaningOf(event);
    if (!meaning) return false;
    if (SCROLLING.test(event.key) && !state().anySelected && !root.contains(event.target as Node)) return false;
    const direction = directionOf(event.key, state().mirrored);
    if (direction && meaning === 'align-arrows') on.align(direction);
    else if (direction && meaning.startsWith('nudge-')) on.arrow(direction, meaning.slice('nudge-'.length) as KeyAmount);
    else return on.command(meaning as Parameters<KeyEvents['command']>[0]);
    return true;
  };
  addEventListener('keydown', (event) => {
    if (!event.defaultPrevented && !isTakenUp(event.target) && heard(event)) event.preventDefault();
  }, { signal });
  addEventListener('keyup', (event) => {
    if (DIRECTIONS[event.key]) on.arrowUp();
  }, { signal });
  return () => stop.abort();
}

const SCROLLING = /^(Arrow|Page)/;

/** Whether keys belong to what has the focus, or to a dialog that lies over the page. */
function isTakenUp(target: EventTarget | null): boolean {
  if (document.querySelector('dialog[open]')) return true;
  return target instanceof HTMLElement && (target.isContentEditable || target.matches('textarea, select, input:not([type=checkbox], [type=radio])'));
}

const DIRECTIONS: Readonly<Record<string, Direction | undefined>> = { ArrowLeft: 'left', ArrowRight: 'right', ArrowDown: 'gripper', ArrowUp: 'tail' };

/** Arrows go where they point, from whichever side the sheet is seen. */
function directionOf(key: string, mirrored: boolean): Direction | undefined {
  return DIRECTIONS[mirrored ? (OPPOSITE[key] ?? key) : key];
}

const OPPOSITE: Readonly<Record<string, string | undefined>> = { ArrowLeft: 'ArrowRight', ArrowRight: 'ArrowLeft' };
