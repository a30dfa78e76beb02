import { useState } from 'preact/hooks';
import { nearMissSection } from '../../render/near-miss-section.ts';
import type { NearMiss, NearMissFacts } from '../../render/near-miss-facts.ts';
import { termsOnDesk } from '../comparing.ts';
import { useDesk } from '../desk-context.ts';
import type { Asked } from '../desk.ts';
import type { KeptLayout } from '../job/job.ts';
import { wholeOf } from '../job/number-of.ts';
import { besideFields } from '../job/with-change.ts';
import { answered } from '../reading.ts';
import { searchOf } from '../searching.ts';
import { layoutOfMiss, showChange } from '../taking-changes.ts';
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
  const [state, setState] = useState<Asked<NearMissFacts>>({ kind: 'none' });
  const [of, setOf] = useState('');
  const inDate = layout.inputs === desk.inputs.value && layout.state === 'sound';
  const find = async () => {
    const ask = searchOf(desk);
    const quote = termsOnDesk(desk);
    const { drawing, drawnFrom } = desk.job.value;
    if (!ask || !quote || !drawing) return;
    setState({ kind: 'waiting' });
    setOf(desk.inputs.value!);
    desk.helper.tell('begin');
    const style = drawing.kind === 'style' && drawnFrom === 'printed' ? { id: drawing.style, values: drawing.values } : undefined;
    const cartons = wholeOf(yearly);
    setState(await answered(() => desk.helper.ask('nearMisses', { job: ask.job, file: layout.file, style, quote, yearly: typeof cartons === 'number' && cartons > 0 ? cartons : undefined })));
  };
  return (
    <Block isForDoing={state.kind !== 'answer'} title={say('near-misses')}>
      <p class="hint">{say('hint-near-misses')}</p>
      <div class="on-screen">
        <TextField label={say('field-yearly')} numeric value={yearly} fault={wholeOf(yearly) === 'fault' ? say('fault-whole') : undefined} onInput={setYearly} />
      </div>
      <div class="buttons">
        <button type="button" disabled={!inDate || state.kind === 'waiting'} onClick={() => void find()}>{say('find-near-misses')}</button>
        {state.kind === 'waiting' && <button type="button" onClick={() => desk.helper.tell('stop')}>{say('stop')}</button>}
      </div>
      {state.kind === 'waiting' && <p role="status">{say('finding-near-misses')}</p>}
      {state.kind === 'issues' && <IssueList issues={state.issues} />}
      {state.kind === 'answer' && (
        <>
          <ul class="misses">
            {state.answer.found.map((miss, i) => <Miss key={i} miss={miss} of={of} />)}
          </ul>
          <SectionView section={nearMissSection(state.answer, { locale, nearMiss }, format)} />
        </>
      )}
    </Block>
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
