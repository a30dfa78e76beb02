import type { Format } from './format.ts';
import type { ReportWords } from './messages/words.ts';
import type { Improvement, NestFacts } from './nest-facts.ts';
import { plain } from './plain.ts';
import { FONTS } from './svg.ts';
import { textWidth } from './text-width.ts';
import { element, escapeXml } from './xml.ts';

/** Pixels at the chart's own size. */
const WIDTH = 640;
const HEIGHT = 220;
const PLOT = { left: 46, right: 24, top: 26, bottom: 38 } as const;
const TEXT = 11;

/**
 * Ups against time (or counted work where no time was taken) as a small SVG: a stair that rises with every improvement,
 * and the limit as a broken line above it. The time axis is logarithmic, since most improvements come early. Lines take
 * the colour of the text around them, so that the chart can stand on dark ground.
 * @returns undefined when nothing improved: there is nothing to show.
 */
export function historyChart({ history, limit }: Pick<NestFacts, 'history' | 'limit'>, words: ReportWords, format: Format): string | undefined {
  if (history.length === 0) return undefined;
  const timed = history.every(({ seconds }) => seconds !== undefined);
  const moment = (step: Improvement) => Math.max(timed ? step.seconds! : step.work, timed ? 0.01 : 1);
  const moments = history.map(moment);
  const least = 10 ** Math.floor(Math.log10(Math.min(...moments)));
  const most = Math.max(10 * least, 10 ** Math.ceil(Math.log10(Math.max(...moments) * 1.05)));
  const ups = history.map((step) => step.ups);
  const low = Math.max(0, Math.min(...ups) - 1);
  const high = Math.max(...ups, limit?.ups ?? 0) + 0.4;

  const x = (value: number) => PLOT.left + ((WIDTH - PLOT.left - PLOT.right) * Math.log10(value / least)) / Math.log10(most / least);
  const y = (value: number) => HEIGHT - PLOT.bottom - ((HEIGHT - PLOT.top - PLOT.bottom) * (value - low)) / (high - low);
  const right = WIDTH - PLOT.right;
  const base = HEIGHT - PLOT.bottom;

  const stair = history.map((step, i) => (i === 0 ? `M${plain(x(moments[0]!))} ${plain(y(step.ups))}` : `H${plain(x(moments[i]!))}V${plain(y(step.ups))}`)).join('');
  const parts = [
    ...upsTicks(low, high).map((tick) => rule(PLOT.left, y(tick), right, y(tick), 0.15) + write(String(tick), PLOT.left - 8, y(tick) + TEXT * 0.36, 'end')),
    ...decades(least, most).map((tick) => rule(x(tick), base, x(tick), base + 4, 0.6) + write(format.number(tick, 2), x(tick), base + 4 + TEXT * 1.2, 'middle')),
    rule(PLOT.left, base, right, base, 0.6),
    write(words.axes.ups, PLOT.left - 8, PLOT.top - 12, 'end'),
    write(timed ? words.axes.seconds : words.axes.work, right, HEIGHT - 4, 'end'),
    ...(limit ? [limitLine(`${words.labels.limit} ${limit.ups}`, PLOT.left, right, y(limit.ups))] : []),
    element('path', { class: 'chart-stair', d: `${stair}H${plain(right)}`, fill: 'none', stroke: '#a63426', 'stroke-width': 2.5, 'stroke-linejoin': 'round' }),
    ...stepLabels(history, moments.map(x), y),
  ];
  const title = element('title', {}, escapeXml(`${words.headings.history}: ${history.map((step) => words.improvement(step, format)).join('; ')}`));
  const root = { xmlns: 'http://www.w3.org/2000/svg', viewBox: `0 0 ${WIDTH} ${HEIGHT}`, width: WIDTH, height: HEIGHT, role: 'img', color: '#1f2428', 'font-family': FONTS, 'font-size': TEXT };
  return `${element('svg', root, `\n${[title, ...parts].join('\n')}\n`)}\n`;
}

function rule(x1: number, y1: number, x2: number, y2: number, strength: number): string {
  return element('path', { d: `M${plain(x1)} ${plain(y1)}L${plain(x2)} ${plain(y2)}`, stroke: 'currentColor', 'stroke-opacity': strength, fill: 'none' });
}

function write(text: string, x: number, y: number, anchor: 'end' | 'middle' | 'start', bold = false): string {
  return element('text', { x: plain(x), y: plain(y), 'text-anchor': anchor, 'font-weight': bold ? 'bold' : undefined, fill: 'currentColor' }, escapeXml(text));
}

function limitLine(text: string, left: number, right: number, y: number): string {
  return element('path', { d: `M${plain(left)} ${plain(y)}H${plain(right)}`, stroke: 'currentColor', 'stroke-dasharray': '7 4', fill: 'none' }) + write(text, right, y - 5, 'end', true);
}

/** The number of ups above every step, left out where it would touch the one before; the last always stands. */
function stepLabels(history: readonly Improvement[], xs: readonly number[], y: (ups: number) => number): string[] {
  const labels: string[] = [];
  let free = Infinity;
  for (let i = history.length - 1; i >= 0; i--) {
    const text = String(history[i]!.ups);
    const start = xs[i]! + 4;
    if (start + textWidth(text, TEXT, true) + 4 > free) continue;
    labels.push(write(text, start, y(history[i]!.ups) - 5, 'start', true));
    free = start;
  }
  return labels.toReversed();
}

/** At most six whole numbers from the bottom to the top. */
function upsTicks(low: number, high: number): number[] {
  const step = Math.max(1, Math.ceil((high - low) / 6));
  return Array.from({ length: Math.floor((high - low) / step) + 1 }, (_, i) => low + i * step);
}

function decades(least: number, most: number): number[] {
  const ticks: number[] = [];
  for (let tick = least; tick <= most * 1.001; tick *= 10) ticks.push(tick);
  return ticks;
}
