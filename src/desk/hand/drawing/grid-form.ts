import { toMicrons } from '../../../base/units.ts';
import type { Format } from '../../../render/format.ts';
import type { HandWords } from '../../../render/messages/hand-words.ts';
import { wholeOf } from '../../job/number-of.ts';
import { keptLength, mmOf } from '../../job/typed-length.ts';
import type { GridWish } from '../commands/rows-and-columns.ts';
import { html } from './elements.ts';

const MOST_COUNT = 200;

/** Asks for rows, columns and steps. Lengths without a unit are taken in the unit shown. */
export function gridForm(words: HandWords, format: Format, done: (wish: GridWish) => void): HTMLDialogElement {
  const field = (text: string, value: string, hint?: string) => {
    const input = html('input', { type: 'text', inputmode: 'decimal', value, ...(hint && { placeholder: hint }) });
    return { input, row: html('label', {}, [`${text} `, input]) };
  };
  const rows = field(words.grid.rows, '2');
  const columns = field(words.grid.columns, '3');
  const along = field(words.grid.stepAlong, '', words.grid.tightest);
  const away = field(words.grid.stepAway, '', words.grid.tightest);
  const wrong = html('p', { class: 'hand-wrong', role: 'alert' });
  const leave = html('button', { type: 'button' }, [words.grid.leave]);
  const form = html('form', { method: 'dialog' }, [rows.row, columns.row, along.row, away.row, wrong, html('div', { class: 'hand-choices' }, [leave, html('button', { type: 'submit' }, [words.grid.done])])]);
  const dialog = html('dialog', { class: 'hand-dialog', 'aria-label': words.grid.title }, [html('h2', {}, [words.grid.title]), form]);
  leave.addEventListener('click', () => dialog.close());
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const wish = readWish({ rows: rows.input.value, columns: columns.input.value, along: along.input.value, away: away.input.value }, format);
    wrong.textContent = wish ? '' : words.grid.notANumber;
    if (!wish) return;
    dialog.close();
    done(wish);
  });
  return dialog;
}

/** What was typed, or undefined where it makes no sense. */
export function readWish(typed: { rows: string; columns: string; along: string; away: string }, format: Format): GridWish | undefined {
  const [rows, columns] = [count(typed.rows), count(typed.columns)];
  const [stepAlong, stepAway] = [step(typed.along, format), step(typed.away, format)];
  if (rows === undefined || columns === undefined || stepAlong === 0 || stepAway === 0) return undefined;
  return { rows, columns, stepAlong, stepAway };
}

function count(text: string): number | undefined {
  const value = wholeOf(text);
  return typeof value === 'number' && value >= 1 && value <= MOST_COUNT ? value : undefined;
}

/** µm; undefined for nothing typed, 0 for what is no length. */
function step(text: string, format: Format): number | undefined {
  if (text.trim() === '') return undefined;
  const mm = mmOf(keptLength(text, format));
  return mm !== undefined && mm > 0 ? Math.max(0, toMicrons(mm)) : 0;
}
