import { toMicrons } from '../../../base/units.ts';
import type { Format } from '../../../render/format.ts';
import type { HandWords } from '../../../render/messages/hand-words.ts';
import { wholeOf } from '../../job/number-of.ts';
import { keptLength, mmOf } from '../../job/typed-length.ts';
import type { GridSteps, GridWish } from '../commands/rows-and-columns.ts';
import { html } from './elements.ts';

const MOST_COUNT = 500;

export interface GridOffer {
  /** Whether the whole sheet is meant unless somebody says otherwise, and whether there is a choice. */
  readonly whole: boolean;
  readonly choice: boolean;
  /** What fits; `columns`: how many are wanted, where it is known. */
  readonly most: (steps: GridSteps, columns?: number) => { readonly rows: number; readonly columns: number };
}

/** Asks for rows, columns and steps, and says how many fit. Lengths without a unit are taken in the unit shown. */
export function gridForm(words: HandWords, format: Format, offer: GridOffer, done: (wish: GridWish) => void): HTMLDialogElement {
  const field = (text: string, hint?: string) => {
    const input = html('input', { type: 'text', inputmode: 'decimal', ...(hint && { placeholder: hint }) });
    // What is typed replaces what stands there.
    input.addEventListener('focus', () => input.select());
    return { input, row: html('label', {}, [`${text} `, input]) };
  };
  const whole = html('input', { type: 'checkbox' });
  whole.checked = offer.whole;
  whole.disabled = !offer.choice;
  const [rows, columns] = [field(words.grid.rows), field(words.grid.columns)];
  const [along, away] = [field(words.grid.stepAlong, words.grid.tightest), field(words.grid.stepAway, words.grid.tightest)];
  const fits = html('p', { class: 'hand-fits', role: 'status' });
  const wrong = html('p', { class: 'hand-wrong', role: 'alert' });
  const leave = html('button', { type: 'button' }, [words.grid.leave]);
  const typed = () => readWish({ whole: whole.checked, rows: rows.input.value, columns: columns.input.value, along: along.input.value, away: away.input.value }, format);
  const sayMost = () => {
    const wish = typed();
    const most = wish && offer.most(wish, wish.columns);
    fits.textContent = most ? words.grid.most(most.rows, most.columns) : '';
  };
  /** All that fits on a whole sheet; of a selection a few, to begin with. */
  const suggest = () => {
    const most = offer.most({ whole: whole.checked });
    rows.input.value = String(whole.checked ? most.rows : Math.min(2, most.rows));
    columns.input.value = String(whole.checked ? most.columns : Math.min(3, most.columns));
    sayMost();
  };
  const form = html('form', { method: 'dialog' }, [
    rows.row, columns.row, along.row, away.row, html('label', { class: 'hand-check' }, [whole, ` ${words.grid.whole}`]), fits, wrong,
    html('div', { class: 'hand-choices' }, [leave, html('button', { type: 'submit' }, [words.grid.done])]),
  ]);
  const dialog = html('dialog', { class: 'hand-dialog', 'aria-label': words.grid.title }, [html('h2', {}, [words.grid.title]), form]);
  suggest();
  whole.addEventListener('change', suggest);
  form.addEventListener('input', sayMost);
  leave.addEventListener('click', () => dialog.close());
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const wish = typed();
    const most = wish && offer.most(wish, wish.columns);
    wrong.textContent = !most ? words.grid.notANumber : wish.rows > most.rows || wish.columns > most.columns ? words.notices['grid-does-not-fit'] : '';
    if (!wish || wrong.textContent !== '') return;
    dialog.close();
    done(wish);
  });
  return dialog;
}

/** What was typed, or undefined where it makes no sense. */
export function readWish(typed: { whole: boolean; rows: string; columns: string; along: string; away: string }, format: Format): GridWish | undefined {
  const [rows, columns] = [count(typed.rows), count(typed.columns)];
  const [stepAlong, stepAway] = [step(typed.along, format), step(typed.away, format)];
  if (rows === undefined || columns === undefined || stepAlong === 0 || stepAway === 0) return undefined;
  return { whole: typed.whole, rows, columns, stepAlong, stepAway };
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
