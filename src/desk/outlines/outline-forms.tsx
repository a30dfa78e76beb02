import { writeLayoutFile } from '../../layout/layout-file.ts';
import { useDesk } from '../desk-context.ts';
import { download } from '../files/files.ts';
import type { OutlinesPlan } from '../job/outlines.ts';
import { letterOf } from '../job/versions.ts';
import { StateMark } from '../panels/state-mark.tsx';
import { useAnswer } from '../panels/use-answer.ts';
import { Picture } from '../picture/picture.tsx';
import { currencyOf } from '../job/job.ts';
import { useWords } from '../words/words.ts';
import { outlinesJob, takeForm } from './outlines-work.ts';

/** The forms found: what they come to, what is proved, each as a picture with the counts of every drawing. */
export function OutlineForms({ plan }: { readonly plan: OutlinesPlan }) {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const { names, quantities, forms, overs, cost, lowerBound, separate, doubtful, apart = [] } = plan;
  const job = outlinesJob(desk);
  const inDate = job !== undefined && 'asked' in job && job.asked === plan.asked;
  const total = forms.reduce((sum, { pressings }) => sum + pressings, 0);
  const whole = (value: number) => format.number(value, 0);
  const soMany = (count: number) => (count === 1 ? say('one-form') : say('so-many-forms', { count }));
  const money = (value: number) => format.money(value, currencyOf(desk.job.value.money));
  const kind = cost === undefined ? '' : '-cost';
  const whyApart = ({ designs: [a, b], because, says: [first, second] }: NonNullable<OutlinesPlan['apart']>[number]) =>
    because === 'inks' ? say('apart-inks', { a, b, inks: first ?? '', units: second ?? '' }) : say('apart-field', { a, b, field: say(`apart-${because}`), first: first ?? say('apart-open'), second: second ?? say('apart-open') });
  const isProved = (cost ?? total) <= lowerBound + LEAST_MONEY;
  return (
    <div class="outline-plan">
      <p class="answer" role="status">
        {say('gang-pressings', { pressings: whole(total), forms: soMany(forms.length) })}
        {cost !== undefined && say('gang-cost', { cost: money(cost) })}. <StateMark state={inDate ? 'sound' : 'out of date'} />
      </p>
      <p>{lowerBound === 0 ? say('forms-open') : isProved ? say(`gang-proved${kind}`) : say(`forms-bound${kind}`, { bound: cost === undefined ? whole(lowerBound) : money(lowerBound) })}</p>
      {separate && <p class="hint holds">{say('forms-separate', { pressings: whole(separate.pressings), forms: soMany(separate.forms) })}</p>}
      {apart.length > 0 && <ul class="apart">{apart.map((one, i) => <li key={i}>{whyApart(one)}</li>)}</ul>}
      {doubtful.length > 0 && <p class="warning">{say('outlines-doubtful', { names: doubtful.join(', ') })}</p>}
      <ol class="outline-forms">{forms.map((form, number) => <FormCard key={number} form={form} number={number + 1} names={names} />)}</ol>
      <div class="scrolls" tabIndex={0} role="region" aria-label={say('outlines-table')}>
        <table class="versions-table">
          <caption>{say('outlines-table')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('column-drawing')}</th>
              {[say('column-ordered'), say('column-made'), say('column-over'), ...forms.map((_, form) => say('column-ups-of', { number: form + 1 }))].map((text) => <th key={text} scope="col" class="number">{text}</th>)}
            </tr>
          </thead>
          <tbody>
            {names.map((name, row) => (
              <tr key={row}>
                <th scope="row">{letterOf(row)} {name}</th>
                <td class="number">{whole(quantities[row]!)}</td>
                <td class="number">{whole(quantities[row]! + overs[row]!)}</td>
                <td class="number">{whole(overs[row]!)} ({format.percent(overs[row]! / quantities[row]!)})</td>
                {forms.map(({ counts }, form) => <td key={form} class="number">{counts[row] === 0 ? '–' : counts[row]}</td>)}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class="hint holds">{say('pressings-are-good')}</p>
    </div>
  );
}

/** Sums of money carry a float's dust. */
const LEAST_MONEY = 1e-6;

function FormCard({ form, number, names }: { readonly form: OutlinesPlan['forms'][number]; readonly number: number; readonly names: readonly string[] }) {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const { file, counts, pressings } = form;
  const picture = useAnswer(() => desk.engine.ask('picture', { file, grain: undefined, small: true }), [file, format]);
  const size = format.size(file.sheet.width, file.sheet.height);
  const heading = say('form-pressings', { number, pressings: format.number(pressings, 0) });
  return (
    <li class="card">
      <h3>{heading}</h3>
      {picture.kind === 'answer' ? <Picture still scene={picture.answer} name={`outlines${number}`} label={say('picture-of-layout', { ups: file.placements.length, size })} /> : <p class="empty">{say('drawing-picture')}</p>}
      <ul class="outline-counts">{counts.map((count, row) => count > 0 && <li key={row}><b>{count} ×</b> {letterOf(row)} {names[row]}</li>)}</ul>
      <div class="buttons">
        <button type="button" class="small" aria-label={`${heading}: ${say('take-form')}`} onClick={() => takeForm(desk, form)}>{say('take-form')}</button>
        <button type="button" class="small" aria-label={`${heading}: ${say('save-form')}`} onClick={() => download(`form-${number}.json`, writeLayoutFile(file))}>{say('save-form')}</button>
      </div>
    </li>
  );
}
