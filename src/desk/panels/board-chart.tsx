import { logScale, roundFigures } from '../../render/chart-parts.ts';
import type { Format } from '../../render/format.ts';
import { decidingFigure, winnerAt, type CompareFacts, type ComparedSheetFacts } from '../../render/compare-facts.ts';
import { comparedSize } from '../../render/messages/compare-figures.ts';
import { useWords } from '../words/words.ts';

const WIDTH = 720;
const HEIGHT = 260;
const [LEFT, RIGHT, TOP, BASE] = [56, 220, 14, 220];
const LINE = 16;
/** Lines that can be told apart by letter and dash. */
const DASHES = ['', '9 4', '3 3', '11 3 3 3', '6 3 1 3'];

interface Line {
  readonly index: number;
  readonly points: readonly { readonly quantity: number; readonly value: number }[];
}

/** Cost, or board where cost is open, of a thousand over quantity: the usual sheet and those that are best at the quantity asked. */
export function BoardChart({ facts }: { readonly facts: CompareFacts }) {
  const { say, format } = useWords();
  const lines = bestFew(facts).map((index): Line => ({ index, points: pointsOf(facts.sheets[index]!, facts.measure, format) })).filter(({ points }) => points.length > 1);
  const all = lines.flatMap(({ points }) => points);
  if (all.length === 0) return null;
  const x = logScale(all.map(({ quantity }) => quantity), LEFT, WIDTH - RIGHT);
  const y = logScale(all.map(({ value }) => value), BASE, TOP);
  const title = say(facts.measure === 'money' ? 'chart-cost-over-quantity' : 'chart-board-over-quantity', { currency: facts.currency, area: format.boardUnit.name });
  const places = apart(lines.map(({ points }) => y(points.at(-1)!.value)));
  const asked = facts.quantities[0]!;
  return (
    <figure>
      <figcaption>{title}</figcaption>
      <svg class="chart" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={title}>
        <line x1={LEFT} y1={BASE} x2={WIDTH - RIGHT} y2={BASE} stroke="currentColor" />
        {roundFigures(x.least, x.most).map((tick) => <text key={`x${tick}`} x={x(tick)} y={BASE + LINE} text-anchor="middle">{format.number(tick, 0)}</text>)}
        {roundFigures(y.least, y.most).map((tick) => <g key={`y${tick}`}><line x1={LEFT} x2={WIDTH - RIGHT} y1={y(tick)} y2={y(tick)} stroke="currentColor" stroke-opacity={0.15} /><text x={LEFT - 6} y={y(tick) + 4} text-anchor="end">{format.number(tick, 0)}</text></g>)}
        {asked > x.least && asked < x.most && <line x1={x(asked)} x2={x(asked)} y1={TOP} y2={BASE} stroke="currentColor" stroke-opacity={0.4} stroke-dasharray="2 3" />}
        {lines.map(({ index, points }, i) => (
          <g key={index} fill="none" stroke="currentColor" stroke-width={i === 0 ? 1.4 : 2.2} stroke-dasharray={DASHES[i]}>
            <path d={points.map(({ quantity, value }, at) => `${at === 0 ? 'M' : 'L'}${x(quantity).toFixed(1)} ${y(value).toFixed(1)}`).join('')} />
            <path d={`M${WIDTH - RIGHT + 6} ${places[i]}h26`} />
          </g>
        ))}
        {lines.map(({ index }, i) => <text key={index} x={WIDTH - RIGHT + 38} y={places[i]! + 4}>{`${'ABCDE'[i]} · ${comparedSize(facts.sheets[index]!, format)}, ${say('ups', { ups: facts.sheets[index]!.ups })}`}</text>)}
        <text x={WIDTH - RIGHT} y={HEIGHT - 6} text-anchor="end">{say('chart-quantity')}</text>
      </svg>
    </figure>
  );
}

function bestFew(facts: CompareFacts): number[] {
  const figure = (index: number) => decidingFigure(facts, index, 0) ?? Infinity;
  const order = [...facts.sheets.keys()].toSorted((a, b) => figure(a) - figure(b) || a - b);
  const winner = winnerAt(facts, facts.quantities[0]!);
  return [...new Set([0, ...(winner === undefined ? [] : [winner]), ...order])].slice(0, DASHES.length);
}

/** Cost, or board in the unit in which it is read. */
function pointsOf({ curve, boardCurve = [] }: ComparedSheetFacts, measure: CompareFacts['measure'], { boardUnit }: Format): Line['points'] {
  return measure === 'money' ? curve.map(({ quantity, cost }) => ({ quantity, value: cost })) : boardCurve.map(({ quantity, m2 }) => ({ quantity, value: m2 * boardUnit.perM2 }));
}

/** Names at the ends of lines, moved down where they would touch. */
function apart(heights: readonly number[]): number[] {
  const places = [...heights];
  let free = -Infinity;
  for (const i of [...heights.keys()].toSorted((a, b) => heights[a]! - heights[b]!)) {
    places[i] = Math.max(heights[i]!, free);
    free = places[i]! + LINE;
  }
  const over = Math.max(0, Math.max(...places) - BASE);
  return places.map((place) => place - over);
}
