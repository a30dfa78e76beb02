import type { InkZones } from '../estimate/ink-zones.ts';
import { CHART_TEXT as TEXT, rule, write } from './chart-marks.ts';
import { chartSvg } from './chart-parts.ts';
import type { Format } from './format.ts';
import { plain } from './plain.ts';
import { element } from './xml.ts';

/** Pixels at the chart's own size. */
const WIDTH = 640;
const PLOT = { left: 46, right: 616 } as const;
const TOP = 24;
const PANEL = 84;
const BARS = 52;
/** Every so many zones carry their number. */
const NUMBERED = 5;

export interface InkChartWords {
  readonly title: string;
  readonly zone: string;
  readonly asLaid: string;
  readonly upright: string;
}

/** Coverage of each ink by zones, one row of bars an ink; a stroke where the zone stood if every blank stood upright. */
export function inkChart(inks: readonly { readonly name: string; readonly zones: InkZones }[], words: InkChartWords, format: Format): string {
  const count = inks[0]!.zones.shares.length;
  const step = (PLOT.right - PLOT.left) / count;
  const panels = inks.flatMap(({ name, zones }, i) => panel(name, zones, TOP + i * PANEL, step, format));
  const base = TOP + inks.length * PANEL;
  const numbers = Array.from({ length: count }, (_, zone) => zone).filter((zone) => zone === 0 || (zone + 1) % NUMBERED === 0);
  return chartSvg(words.title, WIDTH, base + 40, [
    ...panels,
    ...numbers.map((zone) => write(String(zone + 1), PLOT.left + (zone + 0.5) * step, base + 2, 'middle')),
    write(words.zone, PLOT.left - 8, base + 2, 'end'),
    element('rect', { class: 'chart-bar', x: PLOT.left, y: base + 18, width: 12, height: 10, fill: '#a63426' }),
    write(words.asLaid, PLOT.left + 18, base + 27, 'start'),
    rule(PLOT.left + 180, base + 23, PLOT.left + 196, base + 23, 1),
    write(words.upright, PLOT.left + 202, base + 27, 'start'),
  ]);
}

function panel(name: string, { shares, upright }: InkZones, top: number, step: number, format: Format): string[] {
  const most = Math.max(...shares, ...upright, Number.MIN_VALUE);
  const base = top + BARS + 12;
  const y = (share: number) => base - (BARS * share) / most;
  return [
    write(name, PLOT.left, top + TEXT * 0.4, 'start', true),
    write(format.percent(most), PLOT.left - 8, y(most) + TEXT * 0.36, 'end'),
    rule(PLOT.left, base, PLOT.right, base, 0.6),
    ...shares.map((share, zone) => element('rect', { class: 'chart-bar', x: plain(PLOT.left + zone * step + 1), y: plain(y(share)), width: plain(step - 2), height: plain(base - y(share)), fill: '#a63426' })),
    ...upright.map((share, zone) => rule(PLOT.left + zone * step + 1, y(share), PLOT.left + (zone + 1) * step - 1, y(share), 1)),
  ];
}
