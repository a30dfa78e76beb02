import { countStations } from '../../estimate/gang/deal-stations.ts';
import type { WeighedForms } from '../../pipeline/gang/weigh-stations.ts';
import { ranges } from '../../render/ranges.ts';
import { useDesk } from '../desk-context.ts';
import type { VersionsAsk } from '../engine/protocol.ts';
import { StateMark } from '../panels/state-mark.tsx';
import { currencyOf } from '../job/job.ts';
import { useWords } from '../words/words.ts';
import { Swatch } from './version-looks.tsx';

interface Props {
  readonly ask: VersionsAsk;
  readonly printed: readonly (readonly (number | undefined)[])[];
  readonly weighed: WeighedForms;
}

/** What the stations as they are come to: pressings, what is proved, and what is over of each version. */
export function PlanFigures({ ask, printed, weighed }: Props) {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const { plan } = desk.job.value.versions;
  const { money } = desk.job.value;
  const { pressings, overs, missing, tooMany } = weighed;
  const forms = pressings.filter((run) => run > 0).length;
  const total = pressings.reduce((sum, run) => sum + run, 0);
  const cost = ask.costs && forms * ask.costs.form + total * ask.costs.pressing;
  const inDate = plan?.asked === JSON.stringify(ask);
  const state = missing.length + tooMany.length > 0 ? 'faulty' : inDate || plan?.asked === '' ? 'sound' : 'out of date';
  const whole = (value: number) => format.number(value, 0);
  return (
    <div class="plan-figures">
      <p class="answer" role="status">
        {say('gang-pressings', { pressings: whole(total), forms: forms === 1 ? say('one-form') : say('so-many-forms', { count: forms }) })}
        {cost !== undefined && say('gang-cost', { cost: format.money(cost, currencyOf(money)) })}. <StateMark state={state} />
      </p>
      {missing.length > 0 && <p class="warning">{say('version-missing', { names: missing.map((row) => ask.versions[row]!.id).join(', ') })}</p>}
      {tooMany.length > 0 && <p class="warning">{say('version-too-many', { names: tooMany.map((row) => ask.versions[row]!.id).join(', ') })}</p>}
      {missing.length === 0 && <p>{bound()}</p>}
      <div class="scrolls" tabIndex={0} role="region" aria-label={say('versions-table')}>
        <table class="versions-table">
          <caption>{say('versions-table')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('column-version')}</th>
              <th scope="col" class="number">{say('column-ordered')}</th>
              <th scope="col" class="number">{say('column-made')}</th>
              <th scope="col" class="number">{say('column-over')}</th>
              {printed.map((_, form) => <th key={form} scope="col">{say('column-stations-of', { number: form + 1 })}</th>)}
            </tr>
          </thead>
          <tbody>
            {ask.versions.map(({ id, quantity }, row) => (
              <tr key={row}>
                <th scope="row"><Swatch row={row} prefix="table" /> {id}</th>
                <td class="number">{whole(quantity)}</td>
                <td class="number">{whole(quantity + overs[row]!)}</td>
                <td class="number">{whole(overs[row]!)} ({format.percent(overs[row]! / quantity)})</td>
                {printed.map((form, f) => <td key={f}>{stationsOf(form, row)}</td>)}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );

  function bound(): string {
    if (plan?.asked === '') return say('gang-open');
    if (!inDate) return say('gang-out-of-date');
    const { lowerBound } = plan;
    const kind = cost === undefined ? '' : '-cost';
    if ((cost ?? total) <= lowerBound + LEAST_MONEY) return say(`gang-proved${kind}`);
    return say(`gang-bound${kind}`, { bound: cost === undefined ? whole(lowerBound) : format.money(lowerBound, currencyOf(money)) });
  }
}

/** Sums of money carry a float's dust. */
const LEAST_MONEY = 1e-6;

function stationsOf(form: readonly (number | undefined)[], row: number): string {
  return ranges(form.flatMap((printed, station) => (printed === row ? [station + 1] : []))) || '–';
}

/** What the engine is asked about stations as they are. */
export function settledForms({ versions }: VersionsAsk, printed: Props['printed']) {
  return { quantities: versions.map(({ quantity }) => quantity), counts: countStations(printed, versions.length), ...(versions[0]?.overs && { limits: versions.map(({ overs }) => overs ?? { least: 0 }) }) };
}
