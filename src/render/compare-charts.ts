import { CHART_TEXT, rule, write } from './chart-marks.ts';
import { chartSvg, evenFigures, roundFigures } from './chart-parts.ts';
import type { CompareFacts, ComparedSheetFacts } from './compare-facts.ts';
import type { Format } from './format.ts';
import type { CompareWords } from './messages/english-compare.ts';
import { plain } from './plain.ts';
import { textWidth } from './text-width.ts';
import { element } from './xml.ts';

/** Pixels at the charts' own size. */
const WIDTH = 720;
const LINE_HEIGHT = CHART_TEXT * 1.5;
/** Sheets with a line of their own: the usual one and the winners. They tell themselves apart in black and white too. */
const DASHES = [undefined, '7 3', '2 3', '10 3 2 3', '5 2 1 2 1 2'] as const;
const ACCENT = '#a63426';

/**
 * Cost per thousand over quantity, both axes logarithmic, so that equal shares are equal heights; below it the same
 * against the usual sheet, where lines cross at the break-even quantities. The usual sheet and the winners have thick
 * lines with names, the others are thin. Undefined where no cost is known.
 */
export function costChart(facts: CompareFacts, words: CompareWords, format: Format): string | undefined {
  const named = namedSheets(facts).slice(0, DASHES.length);
  const known = [...facts.sheets.keys()].filter((index) => facts.sheets[index]!.curve.length > 1);
  if (named.length === 0 || known.length === 0) return undefined;
  const labels = named.map((index) => `${words.size(facts.sheets[index]!, format)}, ${facts.sheets[index]!.ups} ups`);
  const right = WIDTH - 16 - Math.max(...labels.map((label) => textWidth(label, CHART_TEXT, true)));
  const x = logScale(known.flatMap((index) => facts.sheets[index]!.curve.map(({ quantity }) => quantity)), 52, right);
  const top = costPlot(facts, known, named, labels, x, { top: 44, base: 244 }, words, format);
  const below = againstPlot(facts, known, named, labels, x, { top: 322, base: 466 }, words, format);
  return chartSvg(words.chart.costTitle, WIDTH, below.length > 0 ? 508 : 286, [...top, ...below]);
}

/** The usual sheet, then the winners at the quantities that the chart shows, first to last. */
function namedSheets({ winners, sheets }: CompareFacts): number[] {
  const shown = sheets.flatMap(({ curve }) => curve.map(({ quantity }) => quantity));
  const [least, most] = [Math.min(...shown), Math.max(...shown)];
  const winning = winners.filter(({ fromQuantity }, i) => fromQuantity <= most && (winners[i + 1]?.fromQuantity ?? Infinity) > least);
  return [...new Set([0, ...winning.map(({ candidate }) => candidate)])].filter((index) => sheets[index]!.curve.length > 1);
}

interface Scale {
  (value: number): number;
  readonly least: number;
  readonly most: number;
  readonly from: number;
  readonly to: number;
}

function logScale(values: readonly number[], from: number, to: number): Scale {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const at = (value: number) => from + ((to - from) * Math.log(value / least)) / Math.max(Math.log(most / least), 1e-9);
  return Object.assign(at, { least, most, from, to });
}

interface Plot {
  readonly top: number;
  readonly base: number;
}

function costPlot({ sheets, currency, quantities, winners }: CompareFacts, known: readonly number[], named: readonly number[], labels: readonly string[], x: Scale, { top, base }: Plot, words: CompareWords, format: Format): string[] {
  const y = logScale(known.flatMap((index) => sheets[index]!.curve.map(({ cost }) => cost)), base, top);
  return [
    write(words.chart.cost(currency), 8, top - 28, 'start', true),
    ...roundFigures(y.least, y.most).map((tick) => rule(x.from, y(tick), x.to, y(tick), 0.12) + write(format.number(tick, 2), x.from - 6, y(tick) + CHART_TEXT * 0.36, 'end')),
    ...quantityAxis(x, base, words, format),
    ...lines(sheets, known, named, ({ curve }) => curve.map(({ quantity, cost }) => [x(quantity), y(cost)])),
    ...quantities.filter((quantity) => quantity >= x.least && quantity <= x.most).map((quantity) => rule(x(quantity), base, x(quantity), top, 0.15, '2 3')),
    ...endLabels(labels, named.map((index) => y(sheets[index]!.curve.at(-1)!.cost)), x.to + 6, base),
    ...takeOvers(winners, x, top, base, format),
  ];
}

/** Every line as a share of the usual sheet's cost; empty where its cost is not known. */
function againstPlot({ sheets, winners }: CompareFacts, known: readonly number[], named: readonly number[], labels: readonly string[], x: Scale, { top, base }: Plot, words: CompareWords, format: Format): string[] {
  const usual = new Map(sheets[0]!.curve.map(({ quantity, cost }) => [quantity, cost]));
  const against = ({ curve }: ComparedSheetFacts) => curve.flatMap(({ quantity, cost }) => (usual.has(quantity) ? [{ quantity, share: cost / usual.get(quantity)! - 1 }] : []));
  const shown = named.flatMap((index) => against(sheets[index]!).map(({ share }) => share));
  if (usual.size < 2 || named.length < 2) return [];
  // The named lines and a little around them; a sheet far dearer than the usual one leaves the plot.
  const room = 0.25 * (Math.max(0, ...shown) - Math.min(0, ...shown)) + 0.002;
  const [low, high] = [Math.min(0, ...shown) - room, Math.min(0.5, Math.max(0, ...shown) + room)];
  const y = (share: number) => base - ((base - top) * (Math.min(high, share) - low)) / (high - low);
  const inside = (sheet: ComparedSheetFacts) => against(sheet).filter(({ share }) => share <= high && share >= low);
  return [
    write(words.chart.against, 8, top - 28, 'start', true),
    ...evenFigures(low, high, 6).map((tick) => rule(x.from, y(tick), x.to, y(tick), Math.abs(tick) < 1e-9 ? 0.6 : 0.12) + write(`${format.number(tick * 100, 1)} %`, x.from - 6, y(tick) + CHART_TEXT * 0.36, 'end')),
    ...quantityAxis(x, base, words, format),
    ...lines(sheets, known, named, (sheet) => inside(sheet).map(({ quantity, share }) => [x(quantity), y(share)])),
    ...endLabels(labels, named.map((index) => y(against(sheets[index]!).at(-1)?.share ?? 0)), x.to + 6, base),
    ...takeOvers(winners, x, top, base, format),
  ];
}

function quantityAxis(x: Scale, base: number, words: CompareWords, format: Format): string[] {
  const ticks = roundFigures(x.least, x.most);
  return [
    rule(x.from, base, x.to, base, 0.6),
    ...ticks.map((tick) => rule(x(tick), base, x(tick), base + 4, 0.6) + write(format.number(tick, 0), x(tick), base + 4 + CHART_TEXT * 1.2, 'middle')),
    write(words.chart.cartons, x.to, base + 4 + CHART_TEXT * 2.5, 'end'),
  ];
}

function lines(sheets: readonly ComparedSheetFacts[], known: readonly number[], named: readonly number[], points: (sheet: ComparedSheetFacts) => (readonly number[])[]): string[] {
  const path = (index: number) => points(sheets[index]!).map(([px, py], i) => `${i === 0 ? 'M' : 'L'}${plain(px!)} ${plain(py!)}`).join('');
  const drawn = (index: number, look: Record<string, string | number | undefined>) => (path(index) === '' ? '' : element('path', { d: path(index), fill: 'none', 'stroke-linejoin': 'round', ...look }));
  return [
    ...known.filter((index) => !named.includes(index)).map((index) => drawn(index, { stroke: 'currentColor', 'stroke-opacity': 0.25 })),
    ...named.map((index, i) => drawn(index, { class: i === named.length - 1 ? 'chart-stair' : undefined, stroke: i === named.length - 1 ? ACCENT : 'currentColor', 'stroke-width': 2.2, 'stroke-dasharray': DASHES[i] })),
  ];
}

/** Names at the right ends of their lines, moved apart where they would touch. */
function endLabels(labels: readonly string[], heights: readonly number[], x: number, base: number): string[] {
  const order = [...labels.keys()].toSorted((a, b) => heights[a]! - heights[b]!);
  const places: number[] = [];
  let free = -Infinity;
  for (const index of order) {
    places[index] = Math.max(heights[index]!, free);
    free = places[index]! + LINE_HEIGHT;
  }
  const over = Math.max(0, free - LINE_HEIGHT - base);
  return order.map((index) => write(labels[index]!, x, places[index]! - over + CHART_TEXT * 0.36, 'start', true));
}

/** Where one winner takes over from another. */
function takeOvers(winners: CompareFacts['winners'], x: Scale, top: number, base: number, format: Format): string[] {
  return winners
    .filter(({ fromQuantity }) => fromQuantity > x.least && fromQuantity < x.most)
    .map(({ fromQuantity }) => rule(x(fromQuantity), top - 4, x(fromQuantity), base, 0.5, '5 3') + write(format.number(fromQuantity, 0), x(fromQuantity), top - 8, 'middle', true));
}

/** Sheets with a bar of their own. */
const MOST_BARS = 24;

/** Board per thousand by sheet as bars, least first; the usual sheet always among them. */
export function boardChart(facts: CompareFacts, words: CompareWords, format: Format): string {
  const { sheets, leastBoard } = facts;
  const order = [...sheets.keys()].toSorted((a, b) => sheets[a]!.boardM2PerThousand - sheets[b]!.boardM2PerThousand);
  const shown = order.filter((index, rank) => rank < MOST_BARS || index === 0);
  const label = (index: number) => `${words.size(sheets[index]!, format)}, ${words.origin(sheets[index]!, format)}${index === 0 ? `, ${words.usual}` : ''}`;
  const left = 12 + Math.max(...shown.map((index) => textWidth(label(index), CHART_TEXT, true)));
  const value = (index: number) => `${format.number(sheets[index]!.boardM2PerThousand, 2, true)}  (${sheets[index]!.ups} ups)`;
  const right = WIDTH - 8 - Math.max(...shown.map((index) => textWidth(value(index), CHART_TEXT, true)));
  const most = Math.max(...shown.map((index) => sheets[index]!.boardM2PerThousand));
  const pitch = 18;
  const top = 32;
  const bars = shown.flatMap((index, row) => {
    const y = top + row * pitch;
    const width = ((right - left) * sheets[index]!.boardM2PerThousand) / most;
    const isBold = index === 0 || index === leastBoard;
    return [
      write(label(index), left - 6, y + 10, 'end', isBold),
      element('rect', { x: plain(left), y: plain(y), width: plain(width), height: pitch - 5, class: index === leastBoard ? 'chart-bar' : undefined, fill: index === leastBoard ? ACCENT : 'currentColor', 'fill-opacity': index === leastBoard ? 1 : index === 0 ? 0.75 : 0.35 }),
      write(value(index), left + width + 5, y + 10, 'start', isBold),
    ];
  });
  return chartSvg(words.chart.boardTitle, WIDTH, top + shown.length * pitch + 8, [write(words.chart.board, 8, 16, 'start', true), ...bars]);
}

/** Both charts one below the other, as one picture. */
export function stackedCharts(title: string, charts: readonly string[]): string {
  const sizes = charts.map((chart) => Number(/ height="([\d.]+)"/.exec(chart)![1]));
  let y = 0;
  const placed = charts.map((chart, i) => {
    const at = y;
    y += sizes[i]!;
    return chart.replace('<svg ', `<svg y="${plain(at)}" `);
  });
  return chartSvg(title, WIDTH, y, [element('rect', { width: WIDTH, height: plain(y), fill: '#ffffff' }), ...placed]);
}
