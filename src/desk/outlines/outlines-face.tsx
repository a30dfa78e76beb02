import { useDesk } from '../desk-context.ts';
import { Block, TextField } from '../panels/fields.tsx';
import { NumberField } from '../panels/length-field.tsx';
import { IssueList } from '../panels/issue-list.tsx';
import { Layout } from '../panels/layout.tsx';
import { letterOf } from '../job/versions.ts';
import { OversFields } from '../panels/overs-fields.tsx';
import { OwnOvers } from '../panels/own-overs.tsx';
import { currencyOf } from '../job/job.ts';
import { useWords } from '../words/words.ts';
import { OutlineForms } from './outline-forms.tsx';
import { OutlineRows } from './outline-rows.tsx';
import { OutlineSharing } from './outline-sharing.tsx';
import { changeOutlines, outlinesJob, seekForms, stopSeeking } from './outlines-work.ts';

/** Several drawings on common forms: quantities at one side, the forms found at the other. */
export function OutlinesFace() {
  const { desk } = useDesk();
  const { say } = useWords();
  const { plan } = desk.job.value.outlines;
  return <Layout controls={<Controls />} picture={plan ? <OutlineForms plan={plan} /> : <p class="empty">{say('no-forms-yet')}</p>} />;
}

function Controls() {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const { outlines, money } = desk.job.value;
  const { phase, issues } = desk.outlinesRun.value;
  const job = outlinesJob(desk);
  const faults = job && 'faults' in job ? job.faults : [];
  const has = (field: string) => faults.some((fault) => fault.field === field);
  const ownFaults = faults.flatMap((fault) => (fault.field === 'ownOvers' ? [fault.row] : []));
  const set = (field: 'forms' | 'formCost' | 'pressingCost') => (text: string) => changeOutlines(desk, (now) => ({ ...now, [field]: text }), `outlines ${field}`);
  const currency = currencyOf(money);
  const typed = outlines.list.some(({ quantity }) => quantity !== '');
  return (
    <>
      <Block isForDoing title={say('face-outlines')}>
        <p class="hint">{job ? say('hint-outlines', { sheet: format.size(job.sheet.width, job.sheet.height) }) : say('outlines-need-sheet')}</p>
        <OutlineRows faults={faults} />
        {outlines.list.length > 1 && <OutlineSharing />}
        {typed && (has('name') || has('quantity')) && <p class="hint">{say('outline-faults')}</p>}
      </Block>
      <Block title={say('forms-and-costs')}>
        <div class="row">
          <TextField label={say('field-forms')} numeric value={outlines.forms} fault={has('forms') ? say('fault-forms-outlines') : undefined} onInput={set('forms')} />
          <NumberField label={say('field-formCost')} unit={currency} value={outlines.formCost} fault={has('formCost') ? say('fault-number') : undefined} onInput={set('formCost')} />
          <NumberField label={say('field-pressingCost')} unit={currency} value={outlines.pressingCost} fault={has('pressingCost') ? say('fault-number') : undefined} onInput={set('pressingCost')} />
        </div>
        <p class="hint">{say('hint-gang-costs')}</p>
        <OversFields overs={outlines.overs} isFaulty={has('overs')} onInput={(overs) => changeOutlines(desk, (now) => ({ ...now, overs }), 'outlines overs')} />
        {outlines.list.length > 1 && (
          <OwnOvers rows={outlines.list.map(({ name, overs }, row) => ({ name: name.trim() || letterOf(row), overs }))} all={outlines.overs} faulty={ownFaults}
            onInput={(row, overs) => changeOutlines(desk, (now) => ({ ...now, list: now.list.with(row, { ...now.list[row]!, overs }) }), `outline overs ${row}`)} />
        )}
        <div class="buttons">
          <button type="button" class="primary" disabled={phase !== 'idle' || !job || faults.length > 0 || outlines.list.length < 2} onClick={() => void seekForms(desk)}>{say('seek-forms')}</button>
          {phase !== 'idle' && <button type="button" onClick={() => stopSeeking(desk)}>{say(phase === 'stopping' ? 'give-up' : 'stop')}</button>}
        </div>
        {phase !== 'idle' && <p role="status">{say(phase === 'stopping' ? 'forms-stopping' : 'seeking-forms')}</p>}
        <IssueList issues={issues} />
      </Block>
    </>
  );
}
