import { toMillimetres } from '../../../base/units.ts';
import type { Format } from '../../../render/format.ts';
import { nudgeStep, type NudgeStep } from '../interaction/nudge-steps.ts';
import { HAND_KEYS, type KeyRow } from '../keys.ts';
import type { HandWords } from '../../../render/messages/hand-words.ts';
import { html } from './elements.ts';

/** `Control+Shift+z` as people read it. */
export function keyText(keys: string, { keyNames }: HandWords): string {
  const parts = keys === '+' ? ['+'] : keys.split('+');
  return parts.map((part) => keyNames[part] ?? (part === '-' ? '−' : part.toUpperCase())).join(' ');
}

/** The list of keys and gestures in a dialog, closed at first. */
export function keyList(words: HandWords, lengths: Format): HTMLDialogElement {
  const row = (first: string, second: string) => html('tr', {}, [html('th', { scope: 'row' }, [first]), html('td', {}, [second])]);
  const close = html('button', { type: 'button' }, [words.close]);
  const dialog = html('dialog', { class: 'hand-dialog', 'aria-label': words.keysTitle }, [
    // First, so that opening the list does not scroll to its end.
    html('div', { class: 'hand-dialog-head' }, [html('h2', {}, [words.keysTitle]), close]),
    html('table', {}, HAND_KEYS.map(({ keys, does }) => row(keys.map((key) => keyText(key, words)).join(', '), doesOf(does, words, lengths)))),
    html('h2', {}, [words.pointerTitle]),
    html('table', {}, words.gestures.map(([gesture, does]) => row(gesture, does))),
  ]);
  close.addEventListener('click', () => dialog.close());
  return dialog;
}

const NUDGES: Readonly<Partial<Record<KeyRow['does'], NudgeStep>>> = { 'nudge-plain': 'plain', 'nudge-fine': 'fine' };

/** What a key does, with the length that it moves by. */
function doesOf(name: KeyRow['does'], { commands }: HandWords, lengths: Format): string {
  const step = NUDGES[name];
  const { does } = commands[name];
  return step ? does.replace('{step}', lengths.length(toMillimetres(nudgeStep(step, lengths.unit)))) : does;
}
