import { CHART_TEXT as TEXT, rule, write } from './chart-marks.ts';
import { chartSvg, decades } from './chart-parts.ts';
import type { Format } from './format.ts';
import type { ReportWords } from './messages/words.ts';
import type { Moment, NestFacts } from './nest-facts.ts';
import { plain } from './plain.ts';
import { textWidth } from './text-width.ts';
import { element } from './xml.ts';

/** Pixels at the chart's own size. */
const WIDTH = 640;
const HEIGHT = 220;
const PLOT = { left: 46, right: 616, top: 26, base: 182 } as const;
/** Earlier moments are drawn as this one: a hundredth of a second, one step of work. */
const FIRST_MOMENT = { seconds: 0.01, work: 1 } as const;

interface Step {
  readonly at: number;
  readonly ups: number;
}

/**
 * Ups against time (or counted work where no time was taken) as a small SVG: a stair that rises with every improvement,
 * and the limit above it, coming down in a broken line where its earlier values are known. The time axis is logarithmic,
 * since most improvements come early. Lines take the colour of the text around them, so that the chart can stand on dark
 * ground.
 * @returns undefined when nothing improved: there is nothing to show.
 */
export function historyChart({ history, limit, limits = [] }: Pick<NestFacts, 'history' | 'limit' | 'limits'>, words: ReportWords, format: Format): string | undefined {
  if (history.length === 0) return undefined;
  const clock = [...history, ...limits].every(({ seconds }) => seconds !== undefined) ? 'seconds' : 'work';
  const moment = (step: Moment) => Math.max(step[clock]!, FIRST_MOMENT[clock]);
  const best = history.map((step): Step => ({ at: moment(step), ups: step.ups }));
  const known = limits.map((step): Step => ({ at: moment(step), ups: step.ups }));
  const { least, most, x, y, low, high } = axesFor([...best, ...known, ...(limit ? [{ at: best[0]!.at, ups: limit.ups }] : [])]);
  const stair = (steps: readonly Step[]) => steps.map(({ at, ups }, i) => (i === 0 ? `M${plain(x(at))} ${plain(y(ups))}` : `H${plain(x(at))}V${plain(y(ups))}`)).join('') + `H${PLOT.right}`;

  const parts = [
    ...upsTicks(low, high).map((tick) => rule(PLOT.left, y(tick), PLOT.right, y(tick), 0.15) + write(String(tick), PLOT.left - 8, y(tick) + TEXT * 0.36, 'end')),
    ...decades(least, most).map((tick) => rule(x(tick), PLOT.base, x(tick), PLOT.base + 4, 0.6) + write(format.number(tick, 2), x(tick), PLOT.base + 4 + TEXT * 1.2, tick < most ? 'middle' : 'end')),
    rule(PLOT.left, PLOT.base, PLOT.right, PLOT.base, 0.6),
    write(words.axes.ups, PLOT.left - 8, PLOT.top - 12, 'end'),
    write(words.axes[clock], PLOT.right, HEIGHT - 4, 'end'),
    element('path', { class: 'chart-stair', d: stair(best), fill: 'none', stroke: '#a63426', 'stroke-width': 2.5, 'stroke-linejoin': 'round' }),
    ...stepLabels(best, x, y),
  ];
  if (limit) {
    const isMet = limit.ups === best.at(-1)!.ups;
    parts.push(
      element('path', { class: 'chart-limit', d: stair(known.length > 0 ? known : [{ at: least, ups: limit.ups }]), fill: 'none', stroke: 'currentColor', 'stroke-dasharray': '7 4' }),
      write(`${words.labels.limit} ${limit.ups}`, PLOT.right, y(limit.ups) + (isMet ? TEXT * 1.3 : -5), 'end', true),
    );
  }
  return chartSvg(`${words.headings.history}: ${history.at(-1)!.ups} ${words.axes.ups}`, WIDTH, HEIGHT, parts);
}

/** Whole decades of time that hold all steps; ups from just below the lowest to just above the highest. */
function axesFor(steps: readonly Step[]) {
  const moments = steps.map(({ at }) => at);
  const ups = steps.map((step) => step.ups);
  const least = 10 ** Math.floor(Math.log10(Math.min(...moments)));
  const most = Math.max(10 * least, 10 ** Math.ceil(Math.log10(Math.max(...moments) * 1.05)));
  const low = Math.max(0, Math.min(...ups) - 1);
  const high = Math.max(...ups) + 0.4;
  const x = (at: number) => PLOT.left + ((PLOT.right - PLOT.left) * Math.log10(at / least)) / Math.log10(most / least);
  const y = (value: number) => PLOT.base - ((PLOT.base - PLOT.top) * (value - low)) / (high - low);
  return { least, most, low, high, x, y };
}

/** The number of ups above every step that is long enough for it; the last one always is named. */
function stepLabels(steps: readonly Step[], x: (at: number) => number, y: (ups: number) => number): string[] {
  return steps.flatMap(({ at, ups }, i) => {
    const next = steps[i + 1];
    const start = x(at) + 4;
    const hasRoom = !next || start + textWidth(String(ups), TEXT, true) + 2 <= x(next.at);
    return hasRoom ? [write(String(ups), start, y(ups) - 5, 'start', true)] : [];
  });
}

/** At most seven whole numbers from the bottom to the top. */
function upsTicks(low: number, high: number): number[] {
  const step = Math.max(1, Math.ceil((high - low) / 6));
  return Array.from({ length: Math.floor((high - low) / step) + 1 }, (_, i) => low + i * step);
}
