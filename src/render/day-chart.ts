import { CHART_TEXT as TEXT, rule, write } from './chart-marks.ts';
import type { DayFacts, DayFormFacts } from './day-facts.ts';
import type { DayWords } from './messages/english-day.ts';
import { plain } from './plain.ts';
import { FONTS } from './svg.ts';
import { textWidth } from './text-width.ts';
import { element, escapeXml } from './xml.ts';

/** Pixels at the chart's own size. */
const WIDTH = 720;
const RIGHT = 704;
const TOP = 30;
const ROW = 26;
const BAR = 14;
/** Names longer than this are cut. */
const LONGEST_NAME = 150;

/**
 * The day as a stair of bars, one row a form: changeover, makeready and run, and a flag where a form is due.
 * @returns undefined where clock times are open.
 */
export function dayChart({ forms, start }: DayFacts, words: DayWords): string | undefined {
  const timed = forms.flatMap((form) => (form.times ? [{ form, times: form.times }] : []));
  if (timed.length === 0) return undefined;
  const names = timed.map(({ form }) => shortened(form.id));
  const left = 20 + Math.max(...names.map((name) => textWidth(name, TEXT, true)));
  const from = Math.floor(start / 60) * 60;
  const end = Math.max(...timed.map(({ form, times }) => Math.max(times.to, form.due ?? 0)));
  const to = Math.max(from + 60, Math.ceil(end / 60) * 60);
  const x = (minutes: number) => left + ((RIGHT - left) * (minutes - from)) / (to - from);
  const base = TOP + timed.length * ROW;
  const parts = [
    ...hours(from, to).flatMap((at) => [rule(x(at), TOP - 4, x(at), base, 0.15), write(words.clock(at).slice(0, 5), x(at), TOP - 9, 'middle')]),
    rule(left, base, RIGHT, base, 0.6),
    ...timed.flatMap(({ form, times }, i) => [write(names[i]!, left - 8, TOP + i * ROW + ROW / 2 + TEXT * 0.36, 'end', true), ...bars(form, times, TOP + i * ROW + (ROW - BAR) / 2, x)]),
    ...legend(words, left, base + 22, timed.some(({ form }) => form.due !== undefined)),
  ];
  const height = base + 36;
  const title = element('title', {}, escapeXml(words.timeline(start, timed.at(-1)!.times.to, timed.length)));
  const root = { xmlns: 'http://www.w3.org/2000/svg', viewBox: `0 0 ${WIDTH} ${plain(height)}`, width: WIDTH, height: plain(height), role: 'img', color: '#1f2428', 'font-family': FONTS, 'font-size': TEXT };
  return `${element('svg', root, `\n${[title, ...parts].join('\n')}\n`)}\n`;
}

const LOOKS = {
  changeover: { class: 'chart-bar', fill: '#a63426' },
  makeready: { fill: 'currentColor', 'fill-opacity': 0.12, stroke: 'currentColor', 'stroke-width': 0.8 },
  run: { fill: 'currentColor', 'fill-opacity': 0.55 },
} as const;

function bars({ changeMinutes, makeready = 0, due }: DayFormFacts, times: { readonly from: number; readonly to: number }, y: number, x: (minutes: number) => number): string[] {
  const [ready, runs] = [times.from + changeMinutes, times.from + changeMinutes + makeready];
  const bar = (a: number, b: number, look: (typeof LOOKS)[keyof typeof LOOKS]) => (b > a ? [element('rect', { x: plain(x(a)), y: plain(y), width: plain(x(b) - x(a)), height: BAR, ...look })] : []);
  return [...bar(times.from, ready, LOOKS.changeover), ...bar(ready, runs, LOOKS.makeready), ...bar(runs, times.to, LOOKS.run), ...(due === undefined ? [] : [flag(x(due), y)])];
}

function flag(x: number, y: number): string {
  return element('path', { d: `M${plain(x)} ${plain(y + BAR + 4)}V${plain(y - 4)}L${plain(x + 8)} ${plain(y - 0.5)}L${plain(x)} ${plain(y + 3)}`, stroke: 'currentColor', fill: 'currentColor', 'stroke-width': 1.2 });
}

function legend({ legend: texts }: DayWords, left: number, y: number, withDue: boolean): string[] {
  const marks: string[] = [];
  let at = left;
  for (const name of ['changeover', 'makeready', 'run', ...(withDue ? (['due'] as const) : [])] as const) {
    marks.push(name === 'due' ? element('g', { transform: `translate(${plain(at + 6)} ${plain(y - 9)}) scale(.7)` }, flag(0, 0)) : element('rect', { x: plain(at), y: plain(y - 8), width: 14, height: 9, ...LOOKS[name] }));
    marks.push(write(texts[name], at + 20, y, 'start'));
    at += 20 + textWidth(texts[name], TEXT, false) + 22;
  }
  return marks;
}

function hours(from: number, to: number): number[] {
  const step = 60 * Math.ceil((to - from) / 60 / 14);
  return Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => from + i * step);
}

function shortened(name: string): string {
  if (textWidth(name, TEXT, true) <= LONGEST_NAME) return name;
  let kept = name;
  while (kept !== '' && textWidth(`${kept}…`, TEXT, true) > LONGEST_NAME) kept = kept.slice(0, -1);
  return `${kept}…`;
}
