import type { QuoteRow } from '../engine/protocol.ts';
import { useWords } from '../words/words.ts';

const WIDTH = 480;
const BAR = 26;
const LEFT = 90;
const RIGHT = 90;

/** Cost of a thousand by quantity; only board where a rate is open. */
export function MoneyChart({ rows, currency }: { readonly rows: readonly QuoteRow[]; readonly currency: string }) {
  const { say, format } = useWords();
  const whole = rows.every(({ costPerThousand }) => costPerThousand !== null);
  const valueOf = (row: QuoteRow) => (whole ? row.costPerThousand : row.boardCostPerThousand);
  const most = Math.max(...rows.map((row) => valueOf(row) ?? 0));
  if (most <= 0) return null;
  const title = say(whole ? 'chart-cost' : 'chart-board', { currency });
  return (
    <figure>
      <figcaption>{title}</figcaption>
      <svg class="chart" viewBox={`0 0 ${WIDTH} ${rows.length * BAR}`} role="img" aria-label={title}>
        {rows.map((row, i) => {
          const value = valueOf(row) ?? 0;
          const length = ((WIDTH - LEFT - RIGHT) * value) / most;
          const board = Math.min(length, ((WIDTH - LEFT - RIGHT) * (row.boardCostPerThousand ?? 0)) / most);
          return (
            <g key={row.quantity} transform={`translate(0 ${i * BAR})`}>
              <text x={LEFT - 8} y={17} text-anchor="end">{format.number(row.quantity, 0)}</text>
              <rect x={LEFT} y={5} width={length} height={BAR - 10} class="bar" />
              <rect x={LEFT} y={5} width={board} height={BAR - 10} class="bar-board" />
              <text x={LEFT + length + 6} y={17}>{format.number(value, 2, true)}</text>
            </g>
          );
        })}
      </svg>
    </figure>
  );
}
