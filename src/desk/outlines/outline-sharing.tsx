import { useState } from 'preact/hooks';
import { useDesk } from '../desk-context.ts';
import { SHARING_FIELDS, type SharingField } from '../job/outlines.ts';
import { letterOf } from '../job/versions.ts';
import { TextField } from '../panels/fields.tsx';
import { useWords } from '../words/words.ts';
import { changeOutlines } from './outlines-work.ts';

/** What keeps drawings off one form: said for each that has something to say. */
export function OutlineSharing() {
  const { desk } = useDesk();
  const { say } = useWords();
  const { list } = desk.job.value.outlines;
  const set = (row: number, field: SharingField, text: string) => changeOutlines(desk, (now) => ({ ...now, list: now.list.with(row, { ...now.list[row]!, sharing: { ...now.list[row]!.sharing, [field]: text } }) }), `outline ${row} ${field}`);
  // Open from the start where something is typed; after that as the person leaves it.
  const [isTyped] = useState(list.some(({ sharing }) => sharing && Object.values(sharing).some((text) => text.trim() !== '')));
  return (
    <details class="outline-sharing" open={isTyped}>
      <summary>{say('sharing')}</summary>
      <p class="hint">{say('hint-sharing')}</p>
      {list.map(({ id, name, sharing = {} }, row) => (
        <fieldset key={id}>
          <legend>{letterOf(row)} {name}</legend>
          <div class="row">
            {SHARING_FIELDS.map((field) => <TextField key={field} label={say(`sharing-${field}`)} value={sharing[field] ?? ''} onInput={(text) => set(row, field, text)} />)}
          </div>
        </fieldset>
      ))}
    </details>
  );
}
