import { CHART_TEXT } from './chart-marks.ts';
import { plain } from './plain.ts';
import { FONTS } from './svg.ts';
import { element, escapeXml } from './xml.ts';

/** Labels along an axis of powers of ten; more would touch one another. */
const MOST_TICKS = 4;

/** A chart as one SVG picture. Lines take the colour of the text around it, so that it can stand on dark ground. */
export function chartSvg(title: string, width: number, height: number, parts: readonly string[]): string {
  const root = { xmlns: 'http://www.w3.org/2000/svg', viewBox: `0 0 ${plain(width)} ${plain(height)}`, width: plain(width), height: plain(height), role: 'img', color: '#1f2428', 'font-family': FONTS, 'font-size': CHART_TEXT };
  return `${element('svg', root, `\n${[element('title', {}, escapeXml(title)), ...parts].join('\n')}\n`)}\n`;
}

/** Powers of ten from `least`, itself one, to `most`. */
export function decades(least: number, most: number): number[] {
  const count = Math.round(Math.log10(most / least));
  const stride = Math.ceil(count / MOST_TICKS);
  return Array.from({ length: Math.floor(count / stride) + 1 }, (_, i) => least * 10 ** (i * stride));
}

/** Places along an axis on which equal shares are equal ways. */
export interface LogScale {
  (value: number): number;
  readonly least: number;
  readonly most: number;
  readonly from: number;
  readonly to: number;
}

/** From the least value at `from` to the most at `to`. */
export function logScale(values: readonly number[], from: number, to: number): LogScale {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const at = (value: number) => from + ((to - from) * Math.log(value / least)) / Math.max(Math.log(most / least), 1e-9);
  return Object.assign(at, { least, most, from, to });
}

/** 1, 2 and 5 times the powers of ten within the range. */
export function roundFigures(least: number, most: number): number[] {
  const figures: number[] = [];
  for (let power = 10 ** Math.floor(Math.log10(least)); power <= most; power *= 10) figures.push(power, 2 * power, 5 * power);
  return figures.filter((figure) => figure >= least && figure <= most);
}

/** Even steps of 1, 2 or 5 times a power of ten, at most `most` of them, from at or above `low` to at or below `high`. */
export function evenFigures(low: number, high: number, most: number): number[] {
  const rough = (high - low) / most;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((size) => size >= rough)!;
  const first = Math.ceil(low / step);
  return Array.from({ length: Math.max(0, Math.floor(high / step) - first + 1) }, (_, i) => (first + i) * step);
}
