import { useState } from 'preact/hooks';
import { nearMissSection } from '../../render/near-miss-section.ts';
import type { NearMiss } from '../../render/near-miss-facts.ts';
import { useDesk } from '../desk-context.ts';
import type { KeptLayout } from '../job/job.ts';
import { wholeOf } from '../job/number-of.ts';
import { besideFields } from '../job/with-change.ts';
import { layoutOfMiss, showChange } from '../taking-changes.ts';
import { isTrying, stopTrying, tryChanges } from '../trying-changes.ts';
import { useWords } from '../words/words.ts';
import { Block, TextField } from './fields.tsx';
import { IssueList } from './issue-list.tsx';
import { SectionView } from './report-view.tsx';
import { TakeChange } from './take-change.tsx';

/** Which single small change would bring one more up; each can be looked at. */
export function NearMisses({ layout }: { readonly layout: KeptLayout }) {
  const { desk } = useDesk();
  const { say, locale, format, nearMiss } = useWords();
  const [yearly, setYearly] = useState('');
  const inDate = layout.inputs === desk.inputs.value && layout.state === 'sound';
  const misses = desk.misses.value?.file === layout.file ? desk.misses.value : undefined;
  const find = () => {
    const cartons = wholeOf(yearly);
    void tryChanges(desk, layout, typeof cartons === 'number' && cartons > 0 ? cartons : undefined);
  };
  return (
    <Block isForDoing={!misses?.facts} title={say('near-misses')}>
      <p class="hint">{say('hint-near-misses')}</p>
      <div class="on-screen">
        <TextField label={say('field-yearly')} numeric value={yearly} fault={wholeOf(yearly) === 'fault' ? say('fault-whole') : undefined} onInput={setYearly} />
      </div>
      <div class="buttons">
        <button type="button" disabled={!inDate || isTrying(desk)} onClick={find}>{say('find-near-misses')}</button>
        {isTrying(desk) && <button type="button" onClick={() => stopTrying(desk)}>{say('stop')}</button>}
      </div>
      {isTrying(desk) && <Progress of={layout} />}
      {misses && misses.issues.length > 0 && <IssueList issues={misses.issues} />}
      {misses?.facts && (
        <>
          <ul class="misses">
            {misses.facts.found.map((miss) => <Miss key={`${miss.thing} ${miss.to}`} miss={miss} of={misses.of} />)}
          </ul>
          {misses.phase === 'ended' && <SectionView section={nearMissSection(misses.facts, { locale, nearMiss }, format)} />}
        </>
      )}
    </Block>
  );
}

/** How far the changes are that are being tried. */
function Progress({ of }: { readonly of: KeptLayout }) {
  const { desk } = useDesk();
  const { say } = useWords();
  const { file, phase, facts } = desk.misses.value!;
  return (
    <p role="status">
      {file !== of.file && `${say('changes-of-another')} `}
      {facts ? say('changes-tried', { tried: facts.tried, changes: facts.changes }) : say('finding-near-misses')}
      {phase === 'stopping' && ` ${say('stopping')}`}
    </p>
  );
}

/** One change: it can be looked at, and taken into the settings where a field holds it. */
function Miss({ miss, of }: { readonly miss: NearMiss; readonly of: string }) {
  const { desk } = useDesk();
  const { say, format, nearMiss } = useWords();
  const change = nearMiss.change(miss, format);
  const beside = besideFields(miss.thing);
  const kept = layoutOfMiss(desk, miss, of);
  return (
    <li>
      <span>
        {change}: {say('ups', { ups: miss.ups })}
        {beside && <span class="note">{say(`change-in-${beside}`)}</span>}
      </span>
      <span class="buttons">
        <button type="button" class="small" onClick={() => showChange(desk, kept)} aria-label={`${say('show-it')}: ${change}`}>{say('show-it')}</button>
        <TakeChange layout={kept} />
      </span>
    </li>
  );
}
