import { CHART_TEXT, rule, write } from './chart-marks.ts';
import { chartSvg, evenFigures, logScale, roundFigures, type LogScale } from './chart-parts.ts';
import type { CompareFacts, ComparedSheetFacts } from './compare-facts.ts';
import type { Format } from './format.ts';
import type { CompareWords } from './messages/english-compare.ts';
import { takeOvers } from './take-overs.ts';
import { plain } from './plain.ts';
import { textWidth } from './text-width.ts';
import { element } from './xml.ts';

/** Pixels at the charts' own size. */
const WIDTH = 720;
const LINE_HEIGHT = CHART_TEXT * 1.5;

/**
 * How one sheet looks in all charts: a letter, a colour that stands on white and on dark ground, a dash. Earlier ones are
 * drawn wider and below, so that lines that coincide are all seen.
 */
interface Look {
  readonly letter: string;
  readonly colour: string;
  readonly dash: string | undefined;
  readonly width: number;
}

const LOOKS: readonly Look[] = [
  { letter: 'A', colour: 'currentColor', dash: undefined, width: 1.6 },
  { letter: 'B', colour: '#c8503f', dash: '9 4', width: 4 },
  { letter: 'C', colour: '#2f86b5', dash: '3 3', width: 3.3 },
  { letter: 'D', colour: '#b07d12', dash: '11 3 3 3', width: 2.7 },
  { letter: 'E', colour: '#8a6fc7', dash: '6 3 1 3', width: 2.1 },
];

/** The sheets that have a look of their own, by index: the usual one, then the winners that the chart shows. */
type Looks = ReadonlyMap<number, Look>;

export function looksOf(facts: CompareFacts): Looks {
  const { winners, sheets, leastBoard } = facts;
  const shown = sheets.flatMap(({ curve }) => curve.map(({ quantity }) => quantity));
  const [least, most] = [Math.min(...shown), Math.max(...shown)];
  const winning = winners.filter(({ fromQuantity }, i) => fromQuantity <= most && (winners[i + 1]?.fromQuantity ?? Infinity) > least);
  const named = [...new Set([0, ...(shown.length > 0 ? winning.flatMap(({ candidate, turns = [candidate] }) => turns) : [leastBoard])])];
  return new Map(named.slice(0, LOOKS.length).map((index, i) => [index, LOOKS[i]!]));
}

/**
 * Cost per thousand over quantity, both axes logarithmic, so that equal shares are equal heights; below it the same
 * against the usual sheet, where lines cross at the break-even quantities. The usual sheet and the winners have lines with
 * names, the others are thin and grey. Undefined where no cost is known.
 */
export function costChart(facts: CompareFacts, words: CompareWords, format: Format): string | undefined {
  const { sheets } = facts;
  const known = [...sheets.keys()].filter((index) => sheets[index]!.curve.length > 1);
  const named = [...looksOf(facts)].filter(([index]) => known.includes(index)).map(([index, look]): Named => ({ index, look, label: `${look.letter} · ${words.size(sheets[index]!, format)}, ${words.ups(sheets[index]!.ups)}` }));
  if (named.length === 0 || known.length === 0) return undefined;
  const right = WIDTH - 22 - SAMPLE - Math.max(...named.map(({ label }) => textWidth(label, CHART_TEXT, true)));
  const x = logScale(known.flatMap((index) => sheets[index]!.curve.map(({ quantity }) => quantity)), 52, right);
  const top = costPlot(facts, known, named, x, { top: 44, base: 244 }, words, format);
  const below = againstPlot(facts, known, named, x, { top: 322, base: 466 }, words, format);
  return chartSvg(words.chart.costTitle, WIDTH, below.length > 0 ? 508 : 286, [...top, ...below]);
}

interface Named {
  readonly index: number;
  readonly look: Look;
  readonly label: string;
}

interface Plot {
  readonly top: number;
  readonly base: number;
}

function costPlot({ sheets, currency, quantities, winners }: CompareFacts, known: readonly number[], named: readonly Named[], x: LogScale, { top, base }: Plot, words: CompareWords, format: Format): string[] {
  const y = logScale(known.flatMap((index) => sheets[index]!.curve.map(({ cost }) => cost)), base, top);
  return [
    write(words.chart.cost(currency), 8, top - 28, 'start', true),
    ...roundFigures(y.least, y.most).map((tick) => rule(x.from, y(tick), x.to, y(tick), 0.12) + write(format.number(tick, 2), x.from - 6, y(tick) + CHART_TEXT * 0.36, 'end')),
    ...quantityAxis(x, base, words, format),
    ...lines(sheets, known, named, ({ curve }) => curve.map(({ quantity, cost }) => [x(quantity), y(cost)])),
    ...quantities.filter((quantity) => quantity >= x.least && quantity <= x.most).map((quantity) => rule(x(quantity), base, x(quantity), top, 0.15, '2 3')),
    ...endLabels(named, ({ index }) => y(sheets[index]!.curve.at(-1)!.cost), x.to, base),
    ...takeOverMarks(winners, x, top, base, format),
  ];
}

/** Every line as a share of the usual sheet's cost; empty where its cost is not known. */
function againstPlot({ sheets, winners }: CompareFacts, known: readonly number[], named: readonly Named[], x: LogScale, { top, base }: Plot, words: CompareWords, format: Format): string[] {
  const usual = new Map(sheets[0]!.curve.map(({ quantity, cost }) => [quantity, cost]));
  const against = ({ curve }: ComparedSheetFacts) => curve.flatMap(({ quantity, cost }) => (usual.has(quantity) ? [{ quantity, share: cost / usual.get(quantity)! - 1 }] : []));
  const shown = named.flatMap(({ index }) => against(sheets[index]!).map(({ share }) => share));
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
    ...endLabels(named, ({ index }) => y(against(sheets[index]!).at(-1)?.share ?? 0), x.to, base),
    ...takeOverMarks(winners, x, top, base, format),
  ];
}

function quantityAxis(x: LogScale, base: number, words: CompareWords, format: Format): string[] {
  const ticks = roundFigures(x.least, x.most);
  return [
    rule(x.from, base, x.to, base, 0.6),
    ...ticks.map((tick) => rule(x(tick), base, x(tick), base + 4, 0.6) + write(format.number(tick, 0), x(tick), base + 4 + CHART_TEXT * 1.2, 'middle')),
    write(words.chart.cartons, x.to, base + 4 + CHART_TEXT * 2.5, 'end'),
  ];
}

function lines(sheets: readonly ComparedSheetFacts[], known: readonly number[], named: readonly Named[], points: (sheet: ComparedSheetFacts) => (readonly number[])[]): string[] {
  const path = (index: number) => points(sheets[index]!).map(([px, py], i) => `${i === 0 ? 'M' : 'L'}${plain(px!)} ${plain(py!)}`).join('');
  const drawn = (index: number, look: Record<string, string | number | undefined>) => (path(index) === '' ? '' : element('path', { d: path(index), fill: 'none', 'stroke-linejoin': 'round', ...look }));
  const widestFirst = named.toSorted((a, b) => b.look.width - a.look.width);
  return [
    ...known.filter((index) => !named.some((one) => one.index === index)).map((index) => drawn(index, { stroke: 'currentColor', 'stroke-opacity': 0.25 })),
    ...widestFirst.map(({ index, look }) => drawn(index, strokeOf(look))),
  ];
}

function strokeOf({ colour, dash, width }: Look) {
  return { stroke: colour, 'stroke-width': width, 'stroke-dasharray': dash };
}

/** Width of the piece of line beside a name. */
const SAMPLE = 30;

/** Names at the right ends of their lines, each with a piece of its line, moved apart where they would touch. */
function endLabels(named: readonly Named[], heightOf: (one: Named) => number, right: number, base: number): string[] {
  const order = named.toSorted((a, b) => heightOf(a) - heightOf(b));
  const places: number[] = [];
  let free = -Infinity;
  for (const one of order) {
    places.push(Math.max(heightOf(one), free));
    free = places.at(-1)! + LINE_HEIGHT;
  }
  const over = Math.max(0, free - LINE_HEIGHT - base);
  return order.flatMap(({ look, label }, i) => {
    const y = places[i]! - over;
    const from = right + 8;
    return [element('path', { d: `M${plain(from)} ${plain(y)}H${plain(from + SAMPLE)}`, fill: 'none', ...strokeOf(look) }), write(label, from + SAMPLE + 6, y + CHART_TEXT * 0.36, 'start', true)];
  });
}

/** Where one winner takes over from another. */
function takeOverMarks(winners: CompareFacts['winners'], x: LogScale, top: number, base: number, format: Format): string[] {
  return takeOvers(winners)
    .filter(({ fromQuantity }) => fromQuantity > x.least && fromQuantity < x.most)
    .map(({ fromQuantity }) => rule(x(fromQuantity), top - 4, x(fromQuantity), base, 0.5, '5 3') + write(format.number(fromQuantity, 0), x(fromQuantity), top - 8, 'middle', true));
}

/** Sheets with a bar of their own. */
const MOST_BARS = 24;

/** Board per thousand by sheet as bars, least first; the sheets with a look of their own always among them. */
export function boardChart(facts: CompareFacts, words: CompareWords, format: Format): string {
  const { sheets, leastBoard } = facts;
  const order = [...sheets.keys()].toSorted((a, b) => sheets[a]!.boardM2PerThousand - sheets[b]!.boardM2PerThousand);
  const looks = looksOf(facts);
  const shown = order.filter((index, rank) => rank < MOST_BARS || looks.has(index));
  const label = (index: number) => `${looks.has(index) ? `${looks.get(index)!.letter} · ` : ''}${words.size(sheets[index]!, format)}, ${words.origin(sheets[index]!, format)}${index === 0 ? `, ${words.usual}` : ''}`;
  const left = 12 + Math.max(...shown.map((index) => textWidth(label(index), CHART_TEXT, true)));
  const value = (index: number) => `${format.bareBoard(sheets[index]!.boardM2PerThousand, 2)}  (${words.ups(sheets[index]!.ups)}${index === leastBoard ? `, ${words.chart.leastBoard}` : ''})`;
  const right = WIDTH - 8 - Math.max(...shown.map((index) => textWidth(value(index), CHART_TEXT, true)));
  const most = Math.max(...shown.map((index) => sheets[index]!.boardM2PerThousand));
  const pitch = 18;
  const top = 32;
  const bars = shown.flatMap((index, row) => {
    const y = top + row * pitch;
    const width = ((right - left) * sheets[index]!.boardM2PerThousand) / most;
    const look = looks.get(index);
    const isBold = look !== undefined || index === leastBoard;
    return [
      write(label(index), left - 6, y + 10, 'end', isBold),
      element('rect', { x: plain(left), y: plain(y), width: plain(width), height: pitch - 5, fill: look?.colour ?? 'currentColor', 'fill-opacity': look ? 0.85 : 0.3 }),
      write(value(index), left + width + 5, y + 10, 'start', isBold),
    ];
  });
  return chartSvg(words.chart.boardTitle, WIDTH, top + shown.length * pitch + 8, [write(words.chart.board(format), 8, 16, 'start', true), ...bars]);
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
