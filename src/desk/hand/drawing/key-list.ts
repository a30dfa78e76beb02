import { HAND_KEYS } from '../keys.ts';
import type { HandWords } from '../../../render/messages/hand-words.ts';
import { html } from './elements.ts';

/** `Control+Shift+z` as people read it. */
export function keyText(keys: string, { keyNames }: HandWords): string {
  const parts = keys === '+' ? ['+'] : keys.split('+');
  return parts.map((part) => keyNames[part] ?? (part === '-' ? '−' : part.toUpperCase())).join(' ');
}

/** The list of keys and gestures in a dialog, closed at first. */
export function keyList(words: HandWords): HTMLDialogElement {
  const row = (first: string, second: string) => html('tr', {}, [html('th', { scope: 'row' }, [first]), html('td', {}, [second])]);
  const close = html('button', { type: 'button' }, [words.close]);
  const dialog = html('dialog', { class: 'hand-dialog', 'aria-label': words.keysTitle }, [
    // First, so that opening the list does not scroll to its end.
    html('div', { class: 'hand-dialog-head' }, [html('h2', {}, [words.keysTitle]), close]),
    html('table', {}, HAND_KEYS.map(({ keys, does }) => row(keys.map((key) => keyText(key, words)).join(', '), words.commands[does].does))),
    html('h2', {}, [words.pointerTitle]),
    html('table', {}, words.gestures.map(([gesture, does]) => row(gesture, does))),
  ]);
  close.addEventListener('click', () => dialog.close());
  return dialog;
}
