import { useState } from 'preact/hooks';
import { nearMissSection } from '../../render/near-miss-section.ts';
import type { NearMiss, NearMissFacts } from '../../render/near-miss-facts.ts';
import { termsOnDesk } from '../comparing.ts';
import { useDesk } from '../desk-context.ts';
import type { Asked } from '../desk.ts';
import type { KeptLayout } from '../job/job.ts';
import { layoutFromFile } from '../job/layouts.ts';
import { wholeOf } from '../job/number-of.ts';
import { answered } from '../reading.ts';
import { searchOf } from '../searching.ts';
import { useWords } from '../words/words.ts';
import { Block, TextField } from './fields.tsx';
import { IssueList } from './issue-list.tsx';
import { SectionView } from './report-view.tsx';

/** Which single small change would bring one more up; each can be looked at. */
export function NearMisses({ layout }: { readonly layout: KeptLayout }) {
  const { desk } = useDesk();
  const { say, locale, format, nearMiss } = useWords();
  const [yearly, setYearly] = useState('');
  const [state, setState] = useState<Asked<NearMissFacts>>({ kind: 'none' });
  const inDate = layout.inputs === desk.inputs.value && layout.state === 'sound';
  const find = async () => {
    const ask = searchOf(desk);
    const quote = termsOnDesk(desk);
    const { drawing } = desk.job.value;
    if (!ask || !quote || !drawing) return;
    setState({ kind: 'waiting' });
    desk.helper.tell('begin');
    const style = drawing.kind === 'style' ? { id: drawing.style, values: drawing.values } : undefined;
    const cartons = wholeOf(yearly);
    setState(await answered(() => desk.helper.ask('nearMisses', { job: ask.job, file: layout.file, style, quote, yearly: typeof cartons === 'number' && cartons > 0 ? cartons : undefined })));
  };
  const show = ({ thing, from, to, layout: file }: NearMiss) => {
    const kept: KeptLayout = { ...layoutFromFile(file, 'sound', ''), changed: { thing, ...(from !== undefined && to !== undefined && { from, to }) } };
    desk.change((job) => ({ ...job, layouts: [...job.layouts, kept], chosen: kept.id }));
    desk.panel.value = 'layouts';
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
            {state.answer.found.map((miss, i) => {
              const change = nearMiss.change(miss, format);
              return (
                <li key={i}>
                  <span>{change}: {say('ups', { ups: miss.ups })}</span>
                  <button type="button" class="small" onClick={() => show(miss)} aria-label={`${say('show-it')}: ${change}`}>{say('show-it')}</button>
                </li>
              );
            })}
          </ul>
          <SectionView section={nearMissSection(state.answer, { locale, nearMiss }, format)} />
        </>
      )}
    </Block>
  );
}
