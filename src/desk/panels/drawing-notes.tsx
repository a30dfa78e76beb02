import { useDesk } from '../desk-context.ts';
import { jobTitle } from '../job/job-title.ts';
import { takeAsOwnJob, takeAsRevision } from '../putting-drawings.ts';
import { useWords } from '../words/words.ts';
import { IssueList } from './issue-list.tsx';

/** The last file, where it is no drawing: the desk stayed as it was. */
export function NotTaken() {
  const { desk } = useDesk();
  const { say } = useWords();
  const refused = desk.refused.value;
  if (!refused) return null;
  return (
    <div class="warning" role="alert">
      <p>{say(desk.job.value.drawing ? 'file-not-taken' : 'file-no-drawing', { name: refused.name })}</p>
      <IssueList issues={refused.issues} />
      <button type="button" class="small" onClick={() => (desk.refused.value = undefined)}>{say('close')}</button>
    </div>
  );
}

/** A drawing began a job of its own: the way back, and what to do where it is the same job after all. */
export function BeganAJob() {
  const { desk, saving } = useDesk();
  const words = useWords();
  const { say } = words;
  const begun = desk.begun.value;
  const { renewed, job } = desk;
  // A step back brings the drawing before, and with it nothing to say.
  if (renewed.value?.id === job.value.id && renewed.value.drawing !== job.value.drawing) return <RenewedDrawing />;
  if (begun?.id !== desk.job.value.id) return null;
  const name = jobTitle(begun.before, words);
  return (
    <div class="begun">
      <p>{say('job-begun', { name })}</p>
      <div class="buttons">
        <button type="button" class="small" onClick={() => void saving.open(begun.before.id)}>{say('back-to-job', { name })}</button>
        <button type="button" class="small" onClick={() => void takeAsRevision({ desk, saving })}>{say('as-revision', { name })}</button>
      </div>
    </div>
  );
}

/** A file of the same name took the drawing's place: many cartons come as one name. */
function RenewedDrawing() {
  const { desk } = useDesk();
  const { say } = useWords();
  const { drawing } = desk.job.value;
  if (drawing?.kind !== 'file') return null;
  return (
    <div class="begun">
      <p>{say('drawing-renewed', { name: drawing.name })}</p>
      <div class="buttons">
        <button type="button" class="small" onClick={() => takeAsOwnJob(desk)}>{say('as-own-job')}</button>
      </div>
    </div>
  );
}
