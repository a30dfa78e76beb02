import { useDesk } from '../desk-context.ts';
import { downloadJob } from '../files/files.ts';
import { jobToFile } from '../job/job-file.ts';
import { useWords } from '../words/words.ts';

/** Whether the job is kept; where another tab has changed it, or it cannot be kept, the person decides. */
export function SavingMark() {
  const { desk, saving } = useDesk();
  const { say } = useWords();
  const state = saving.state.value;
  if (state === 'saved' || state === 'saving') return <span class="saving">{say(`saving-${state}`)}</span>;
  if (state !== 'changed elsewhere') {
    return (
      <div class="conflict" role="alert">
        <p>{say(state === 'not kept' ? 'saving-not-kept' : `saving-${state}`)}</p>
        <button type="button" onClick={() => downloadJob(desk.job.value.name, jobToFile(desk.job.value))}>{say('job-to-file')}</button>
      </div>
    );
  }
  return (
    <div class="conflict" role="alert">
      <p>{say('changed-elsewhere')}</p>
      <button type="button" onClick={() => void saving.takeTheirs()}>{say('take-theirs')}</button>
      <button type="button" onClick={saving.keepAsCopy}>{say('keep-as-copy')}</button>
    </div>
  );
}

/** A newer build of the page that waits. */
export function NewVersion() {
  const { desk } = useDesk();
  const { say } = useWords();
  if (!desk.newVersion.value) return null;
  return (
    <div class="conflict" role="status">
      <p>{say('new-version')}</p>
      <button type="button" onClick={() => location.reload()}>{say('load-anew')}</button>
    </div>
  );
}
