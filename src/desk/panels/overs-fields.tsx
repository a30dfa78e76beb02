import type { OversFields as Typed } from '../job/overs.ts';
import { useWords } from '../words/words.ts';
import { TextField } from './fields.tsx';

/** Least and greatest copies beyond every quantity. */
export function OversFields({ overs, isFaulty, onInput }: { readonly overs: Typed; readonly isFaulty: boolean; readonly onInput: (overs: Typed) => void }) {
  const { say } = useWords();
  return (
    <>
      <div class="row">
        <TextField label={say('field-oversLeast')} placeholder="0" value={overs.least} fault={isFaulty ? say('fault-overs') : undefined} onInput={(least) => onInput({ ...overs, least })} />
        <TextField label={say('field-oversGreatest')} placeholder={say('any-overs')} value={overs.greatest} onInput={(greatest) => onInput({ ...overs, greatest })} />
      </div>
      <p class="hint">{say('hint-overs')}</p>
    </>
  );
}
