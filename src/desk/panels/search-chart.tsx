import { useDesk } from '../desk-context.ts';
import { useWords } from '../words/words.ts';
import type { KeptLayout } from '../job/job.ts';

const WIDTH = 300;
const HEIGHT = 90;
const EDGE = 30;

/** Best and limit over time: the stair that rises and the one that comes down to meet it. */
export function SearchChart() {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const { inputs, seconds } = desk.search.value;
  const latest = desk.job.value.layouts.filter((layout) => layout.inputs === inputs).at(-1);
  if (!latest || latest.history.length === 0) return null;
  const { best, limits, ticks, x, y, low, high } = chartOf(latest, seconds);
  const stair = (steps: readonly Step[]) => steps.map(({ at, ups }, i) => (i === 0 ? `M${x(at)} ${y(ups)}` : `H${x(at)}V${y(ups)}`)).join('') + `H${WIDTH - EDGE}`;
  return (
    <svg class="chart" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={say('chart-of-search', { best: best.at(-1)!.ups, limit: limits.at(-1)?.ups ?? '?' })}>
      <path d={`M${EDGE} ${HEIGHT - EDGE}H${WIDTH - EDGE}`} class="axis" />
      <path d={stair(best)} class="stair-best" />
      {limits.length > 0 && <path d={stair(limits)} class="stair-limit" />}
      <text x={EDGE - 4} y={y(low) + 4} text-anchor="end">{low}</text>
      {high > low && <text x={EDGE - 4} y={y(high) + 4} text-anchor="end">{high}</text>}
      {ticks.map((at) => (
        <g key={at}>
          <path d={`M${x(at)} ${HEIGHT - EDGE}v4`} class="axis" />
          <text x={x(at)} y={HEIGHT - EDGE + 16} text-anchor="middle">{format.number(at, 2)}</text>
        </g>
      ))}
      <text x={WIDTH} y={HEIGHT - EDGE + 16} text-anchor="end">s</text>
    </svg>
  );
}

interface Step {
  readonly at: number;
  readonly ups: number;
}

/** The first instant that can be told apart, seconds; the axis is logarithmic, for most comes early. */
const FIRST = 0.01;

/** Seconds that stand under the axis, as far as it goes. */
const TICKS = [FIRST, 0.1, 1, 10, 100, 1000];

function chartOf({ history, limits: limitSteps }: KeptLayout, seconds: number) {
  const steps = (list: readonly { readonly seconds?: number; readonly ups: number }[]) => list.map((step): Step => ({ at: Math.max(FIRST, step.seconds ?? FIRST), ups: step.ups }));
  const best = steps(history);
  const limits = steps(limitSteps);
  const all = [...best, ...limits].map(({ ups }) => ups);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const end = Math.max(seconds, ...best.map(({ at }) => at), ...limits.map(({ at }) => at), 1);
  const x = (at: number) => EDGE + ((WIDTH - 2 * EDGE) * Math.log(at / FIRST)) / Math.log(end / FIRST);
  const y = (ups: number) => HEIGHT - EDGE - (HEIGHT - EDGE - 12) * (high === low ? 0.5 : (ups - low) / (high - low));
  const ticks = TICKS.filter((at) => at <= end);
  return { best, limits, ticks, low, high, x: (at: number) => Math.round(x(at) * 10) / 10, y: (ups: number) => Math.round(y(ups) * 10) / 10 };
}
