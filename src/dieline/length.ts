import { UNIT_IN_MM } from '../base/units.ts';

/** Of CSS there is also the quarter of a millimetre, which nobody types on a command line. */
export const SVG_UNIT_IN_MM: Readonly<Record<string, number>> = { ...UNIT_IN_MM, q: 0.25 };

/** A length as SVG writes it. */
export interface SvgLength {
  readonly value: number;
  /** `mm`, `in`, …, `%`; empty for user units. Font-relative units are kept as written. */
  readonly unit: string;
}

const LENGTH = /^\s*([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*([a-z]+|%)?\s*$/i;

export function parseSvgLength(text: string | undefined): SvgLength | undefined {
  if (text === undefined) return undefined;
  const plain = text === '' ? NaN : Number(text);
  if (Number.isFinite(plain) && !/^\s*$|x/i.test(text)) return { value: plain, unit: '' };
  const match = LENGTH.exec(text);
  const value = Number(match?.[1]);
  return match && Number.isFinite(value) ? { value, unit: (match[2] ?? '').toLowerCase() } : undefined;
}

/** Whether the length stands for a fixed number of millimetres on paper; pixels do not, they are counted at 96 an inch. */
export function isPhysical({ unit }: SvgLength): boolean {
  return unit !== 'px' && SVG_UNIT_IN_MM[unit] !== undefined;
}

/** CSS pixels in a font-relative unit, for the initial font size of 16 px. */
const FONT_UNITS: Readonly<Record<string, number>> = { em: 16, rem: 16, ex: 8, ch: 8 };

/** In CSS pixels, 1/96 in. Percentages are of `whole`. */
export function inPixels({ value, unit }: SvgLength, whole: number): number {
  if (unit === '') return value;
  if (unit === '%') return (value / 100) * whole;
  return value * (FONT_UNITS[unit] ?? (SVG_UNIT_IN_MM[unit] ?? UNIT_IN_MM.px) / UNIT_IN_MM.px);
}

/** All numbers of a list separated by spaces or commas; undefined when something else is in it. */
export function parseNumbers(text: string): number[] | undefined {
  const words = text.trim().split(/[\s,]+/).filter((word) => word !== '');
  const numbers = words.map(Number);
  return numbers.every(Number.isFinite) ? numbers : undefined;
}
