import { useDesk } from '../desk-context.ts';
import { useWords } from '../words/words.ts';

/** Whether the job is kept; where another tab has changed it, the person decides. */
export function SavingMark() {
  const { saving } = useDesk();
  const { say } = useWords();
  const state = saving.state.value;
  if (state !== 'changed elsewhere') return <span class="saving">{say(state === 'not kept' ? 'saving-not-kept' : `saving-${state}`)}</span>;
  return (
    <div class="conflict" role="alert">
      <p>{say('changed-elsewhere')}</p>
      <button type="button" onClick={() => void saving.takeTheirs()}>{say('take-theirs')}</button>
      <button type="button" onClick={saving.keepAsCopy}>{say('keep-as-copy')}</button>
    </div>
  );
}
