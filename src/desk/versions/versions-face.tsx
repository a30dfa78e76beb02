import { useState } from 'preact/hooks';
import type { Issue } from '../../base/issue.ts';
import { useDesk } from '../desk-context.ts';
import { currencyOf, type KeptLayout } from '../job/job.ts';
import { nameOf, printedRows, versionsJobOf } from '../job/versions.ts';
import { NO_OVERS } from '../job/overs.ts';
import { upsOf } from '../job/layouts.ts';
import { Block, TextField } from '../panels/fields.tsx';
import { NumberField } from '../panels/length-field.tsx';
import { IssueList } from '../panels/issue-list.tsx';
import { OversFields } from '../panels/overs-fields.tsx';
import { OwnOvers } from '../panels/own-overs.tsx';
import { Layout } from '../panels/layout.tsx';
import { StateMark } from '../panels/state-mark.tsx';
import { useAnswer } from '../panels/use-answer.ts';
import { useWords } from '../words/words.ts';
import { FormView } from './form-view.tsx';
import { PlanFigures, settledForms } from './plan-figures.tsx';
import { VersionRows } from './version-rows.tsx';
import { beginByHand, changeVersions, shareOutStations } from './versions-work.ts';

/** Several versions on the chosen layout: quantities at one side, forms and what they make at the other. */
export function VersionsFace({ layout }: { readonly layout: KeptLayout | undefined }) {
  const { say } = useWords();
  if (!layout || upsOf(layout) === 0) return <p class="empty">{say('versions-need-layout')}</p>;
  return <Layout controls={<Controls layout={layout} />} picture={<Plan layout={layout} />} />;
}

function Controls({ layout }: { readonly layout: KeptLayout }) {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [busy, setBusy] = useState(false);
  const { versions, money } = desk.job.value;
  const stations = upsOf(layout);
  const job = versionsJobOf(versions, stations);
  const faults = 'faults' in job ? job.faults : [];
  const has = (field: string) => faults.some((fault) => fault.field === field);
  const ownFaults = faults.flatMap((fault) => (fault.field === 'ownOvers' ? [fault.row] : []));
  const set = (field: 'forms' | 'formCost' | 'pressingCost') => (text: string) => changeVersions(desk, (now) => ({ ...now, [field]: text }), field);
  const share = async () => {
    setBusy(true);
    setIssues((await shareOutStations(desk, stations)) ?? []);
    setBusy(false);
  };
  const typed = versions.list.some(({ name, quantity }) => name !== '' || quantity !== '');
  const currency = currencyOf(money);
  return (
    <>
      <Block isForDoing title={say('versions')}>
        <p>{say('ups', { ups: stations })}, {format.size(layout.file.sheet.width, layout.file.sheet.height)} <StateMark state={desk.stateOf(layout)} /></p>
        <p class="hint">{say('hint-versions')}</p>
        <VersionRows faults={faults} />
        {typed && (has('name') || has('quantity')) && <p class="hint">{say('version-faults')}</p>}
      </Block>
      <Block title={say('forms-and-costs')}>
        <div class="row">
          <TextField label={say('field-forms')} numeric value={versions.forms} fault={has('forms') ? say('fault-whole') : undefined} onInput={set('forms')} />
          <NumberField label={say('field-formCost')} unit={currency} value={versions.formCost} fault={has('formCost') ? say('fault-number') : undefined} onInput={set('formCost')} />
          <NumberField label={say('field-pressingCost')} unit={currency} value={versions.pressingCost} fault={has('pressingCost') ? say('fault-number') : undefined} onInput={set('pressingCost')} />
        </div>
        <p class="hint">{say('hint-gang-costs')}</p>
        <OversFields overs={versions.overs ?? NO_OVERS} isFaulty={has('overs')} onInput={(overs) => changeVersions(desk, (now) => ({ ...now, overs }), 'overs')} />
        {versions.list.length > 1 && (
          <OwnOvers rows={versions.list.map(({ name, overs }, row) => ({ name: nameOf(name, row), overs }))} all={versions.overs ?? NO_OVERS} faulty={ownFaults}
            onInput={(row, overs) => changeVersions(desk, (now) => ({ ...now, list: now.list.with(row, { ...now.list[row]!, overs }) }), `overs ${row}`)} />
        )}
        <div class="buttons">
          <button type="button" class="primary" disabled={busy || faults.length > 0 || versions.list.length === 0} onClick={() => void share()}>{say('share-out', { stations })}</button>
          {busy && <button type="button" onClick={() => desk.planner.restart()}>{say('stop')}</button>}
          {!busy && !versions.plan && versions.list.length > 0 && <button type="button" onClick={() => beginByHand(desk, stations)}>{say('by-hand-instead')}</button>}
        </div>
        {busy && <p role="status">{say('sharing-out')}</p>}
        <IssueList issues={issues} />
      </Block>
    </>
  );
}

function Plan({ layout }: { readonly layout: KeptLayout }) {
  const { desk } = useDesk();
  const { say } = useWords();
  const { versions } = desk.job.value;
  const job = versionsJobOf(versions, upsOf(layout));
  const ask = 'ask' in job && job.ask.versions.length > 0 ? job.ask : undefined;
  const printed = printedRows(versions, upsOf(layout));
  const settled = ask && printed.length > 0 ? settledForms(ask, printed) : undefined;
  const weighed = useAnswer(settled && (() => desk.engine.ask('weigh', settled)), [JSON.stringify(settled)]);
  const answer = weighed.kind === 'answer' ? weighed.answer : undefined;
  // While new figures are on their way the old ones belong to other versions or forms.
  const fits = answer && ask && answer.overs.length === ask.versions.length && answer.pressings.length === printed.length;
  return (
    <>
      <FormView layout={layout} printed={printed} pressings={fits ? answer.pressings : undefined} />
      {ask && settled && fits && <PlanFigures ask={ask} printed={printed} weighed={answer} />}
      {printed.length === 0 && <p class="hint">{say(versions.list.length === 0 ? 'empty-versions' : 'gang-open')}</p>}
    </>
  );
}
