import type { Format } from './format.ts';

/** From here on smaller parts are dust beside what was estimated. */
const WHOLE_FROM = 1000;

/** A sum of a gang job: in its currency, or bare where it names none. `round`: down for what is proved, so that it stays true. */
export function gangSum(amount: number, currency: string | undefined, format: Format, round: (value: number) => number = Math.round): string {
  if (Math.abs(amount) < WHOLE_FROM) return currency === undefined ? format.number(amount, Number.isInteger(amount) ? 0 : 2, true) : format.money(amount, currency);
  return `${format.number(round(amount), 0)}${currency === undefined ? '' : ` ${currency}`}`;
}
