import { isWithin, type Range } from '../../press/figure-ranges.ts';
import { keptFigure } from './typed-figure.ts';

/** A comma that may stand between thousands. */
const GROUPED = /(?<!\d)\d{1,3},\d{3}(?!\d)/;

/** `5 000`, `5000`, `0.35`; undefined for an empty field. A lone comma, as older jobs have it, is read as a decimal sign. */
export function numberOf(text: string): number | 'fault' | undefined {
  const plain = keptFigure(text, '.');
  if (plain === '') return undefined;
  const value = Number(plain);
  return Number.isFinite(value) && value >= 0 ? value : 'fault';
}

/** One that such a figure may be. */
export function figureIn(range: Range, text: string): number | 'fault' | undefined {
  const value = numberOf(text);
  return typeof value === 'number' && !isWithin(value, range) ? 'fault' : value;
}

/** A whole number, as pieces are counted: here a comma or a point between thousands can mean nothing else. */
export function wholeOf(text: string): number | 'fault' | undefined {
  const value = numberOf(/^\s*\d{1,3}([.,])\d{3}(\1\d{3})*\s*$/.test(text) ? text.replace(/[.,]/g, '') : text);
  return typeof value === 'number' && !Number.isInteger(value) ? 'fault' : value;
}

/**
 * Several, with commas or semicolons between. `5,000` may be one or two of them. It is one where a comma between them has a
 * space after it throughout, as in `5,000, 20,000`, and none of them goes without what stands between thousands.
 */
export function wholesOf(text: string): readonly number[] | 'fault' {
  const isGrouped = GROUPED.test(text);
  const parts = text.split(isGrouped ? /,\s+|;/ : /[,;]/);
  if (isGrouped && (parts.length < 2 || parts.some((part) => !/^\s*\d{1,3}(,\d{3})*\s*$/.test(part)))) return 'fault';
  const values = parts.map(wholeOf);
  return values.every((value) => typeof value === 'number' && value >= 1) ? (values as number[]) : 'fault';
}
