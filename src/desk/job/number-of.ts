import { keptFigure } from './typed-figure.ts';

/** `5 000`, `5000`, `0.35`; undefined for an empty field. A lone comma, as older jobs have it, is read as a decimal sign. */
export function numberOf(text: string): number | 'fault' | undefined {
  const plain = keptFigure(text, '.');
  if (plain === '') return undefined;
  const value = Number(plain);
  return Number.isFinite(value) && value >= 0 ? value : 'fault';
}

/** A whole number, as pieces are counted: here a comma or a point between thousands can mean nothing else. */
export function wholeOf(text: string): number | 'fault' | undefined {
  const value = numberOf(/^\s*\d{1,3}([.,])\d{3}(\1\d{3})*\s*$/.test(text) ? text.replace(/[.,]/g, '') : text);
  return typeof value === 'number' && !Number.isInteger(value) ? 'fault' : value;
}

/** Several, with commas or semicolons between. `5,000` may be one or two of them: a comma between them has a space after it. */
export function wholesOf(text: string): readonly number[] | 'fault' {
  if (/(?<!\d)\d{1,3},\d{3}(?!\d)/.test(text)) return 'fault';
  const values = text.split(/[,;]/).map(wholeOf);
  return values.every((value) => typeof value === 'number' && value >= 1) ? (values as number[]) : 'fault';
}
