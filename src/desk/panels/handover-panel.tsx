import { useDesk } from '../desk-context.ts';
import type { HandoverFields, Job, KeptLayout } from '../job/job.ts';
import { betterThan, isShownOnly, upsOf } from '../job/layouts.ts';
import { wholeOf } from '../job/number-of.ts';
import { boardOf, type Records } from '../job/records.ts';
import { LayoutPicture } from '../picture/layout-picture.tsx';
import { useWords } from '../words/words.ts';
import type { HandoverDetails } from '../../render/handover-facts.ts';
import { Block, TextField } from './fields.tsx';
import { HandoverFiles } from './handover-files.tsx';
import { Layout } from './layout.tsx';
import { NothingYet } from './nothing-yet.tsx';
import { StateMark } from './state-mark.tsx';
import { TakeChange } from './take-change.tsx';

export function HandoverPanel() {
  const { desk } = useDesk();
  const { say, foundBy, changeOf } = useWords();
  const { handover } = desk.job.value;
  const chosen = desk.chosen.value;
  const state = desk.chosenState.value;
  const set = (field: keyof HandoverFields, text: string) => desk.change((job) => ({ ...job, handover: { ...job.handover, [field]: text } }), field);
  const field = (name: keyof HandoverFields) => <TextField key={name} label={say(`field-${name}`)} value={handover[name]} fault={name === 'quantity' && wholeOf(handover.quantity) === 'fault' ? say('fault-whole') : undefined} onInput={(text) => set(name, text)} />;
  return (
    <Layout
      controls={<Block title={say('on-every-page')}>{(['layoutNumber', 'revision', 'product', 'quantity', 'approvedBy', 'date'] as const).map(field)}</Block>}
      picture={
        <div class={chosen && 'handover'}>
          {chosen && state ? (
            <p>
              {say('handed-over', { ups: chosen.file.placements.length, source: foundBy(chosen) })} <StateMark state={state} />
            </p>
          ) : (
            <NothingYet />
          )}
          {chosen && isShownOnly(chosen) && <p class="warning">{say('shown-only-handover', { change: changeOf(chosen) })} <TakeChange layout={chosen} /></p>}
          {chosen && <Better than={chosen} />}
          {chosen && <LayoutPicture isSmall layout={chosen} name="handed-over" />}
          {chosen && state !== 'sound' && <p class="warning">{say(`not-handed-over-${state === 'out of date' ? 'out-of-date' : state === 'faulty' ? 'faulty' : 'not-judged'}`)}</p>}
          {chosen && state === 'sound' && <HandoverFiles layout={chosen} details={detailsOf(desk.job.value, desk.records.value)} />}
          <p class="caution">{say('caution')}</p>
        </div>
      }
    />
  );
}

/** What a search found meanwhile does not take the place of what is being handed over; the person has it shown. */
function Better({ than }: { readonly than: KeptLayout }) {
  const { desk } = useDesk();
  const { say } = useWords();
  const best = betterThan(than, desk.layouts.value.filter((one) => desk.stateOf(one) === 'sound'), desk.inputs.value);
  if (!best) return null;
  return (
    <p class="note better" role="status">
      {say('better-found', { ups: upsOf(best) })} <button type="button" class="small" onClick={() => desk.change((job) => ({ ...job, chosen: best.id }))}>{say('show-better')}</button>
    </p>
  );
}

function detailsOf({ handover, sheet }: Job, records: Records): HandoverDetails {
  const board = boardOf(records, sheet.board);
  const { sheetGrain } = sheet;
  const quantity = wholeOf(handover.quantity);
  const filled = Object.fromEntries(Object.entries(handover).filter(([name, text]) => name !== 'quantity' && text !== ''));
  return {
    ...filled,
    ...(typeof quantity === 'number' && quantity > 0 && { quantity }),
    ...(board && { board: board as HandoverDetails['board'] }),
    ...((sheetGrain === 'x' || sheetGrain === 'y') && { grain: sheetGrain }),
  };
}
