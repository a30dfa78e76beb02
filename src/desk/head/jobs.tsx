import type { RefObject } from 'preact';
import { useDesk } from '../desk-context.ts';
import { downloadJob } from '../files/files.ts';
import { jobToFile, keptToFile } from '../job/job-file.ts';
import { jobSummary, jobTitle } from '../job/job-title.ts';
import { isReadable, type StoredJob } from '../job/keep.ts';
import type { FileContent } from '../fetched.ts';
import { FilePicker } from '../panels/file-picker.tsx';
import { takeFile } from '../taking.ts';
import { dateLocale, useWords } from '../words/words.ts';

/** The jobs kept in this browser; a job as a file. */
export function Jobs({ dialog }: { readonly dialog: RefObject<HTMLDialogElement | null> }) {
  const { desk, saving } = useDesk();
  const words = useWords();
  const { say } = words;
  // Of what a newer desk kept only the name is known.
  const titleOf = (stored: StoredJob) => (isReadable(stored) ? jobTitle(stored.job, words) : stored.job.name || say('unnamed'));
  const open = async (id?: string) => {
    await saving.open(id);
    dialog.current?.close();
  };
  const take = async (name: string, content: FileContent) => {
    dialog.current?.close();
    await takeFile(desk, name, content);
  };
  return (
    <dialog ref={dialog} aria-labelledby="jobs-title">
      <h2 id="jobs-title">{say('jobs')}</h2>
      <div class="buttons">
        <button type="button" class="primary" onClick={() => void open()}>{say('new-job')}</button>
        <button type="button" onClick={() => downloadJob(desk.job.value.name, jobToFile(desk.job.value))}>{say('job-to-file')}</button>
      </div>
      <FilePicker accept=".json" label={say('job-from-file')} hint={say('hint-job-file')} onFile={(name, bytes) => void take(name, bytes)} />
      <ul class="jobs">
        {saving.jobs.value.map((stored) => ({ ...stored, title: titleOf(stored), isOurs: isReadable(stored) })).map(({ id, job, savedAt, title, isOurs }) => (
          <li key={id}>
            {isOurs ? <button type="button" onClick={() => void open(id)}>{title}</button> : <button type="button" onClick={() => downloadJob(job.name, keptToFile(job))}>{say('save-newer', { name: title })}</button>}
            <span class="job-summary">{isOurs && jobSummary(job, words)}</span>
            <time dateTime={new Date(savedAt).toISOString()}>{new Date(savedAt).toLocaleString(dateLocale(desk.locale.value))}</time>
            <button type="button" class="small" onClick={() => void saving.remove(id)} aria-label={say('remove-job', { name: title })}>{say('remove')}</button>
          </li>
        ))}
      </ul>
      {saving.removed.value.length > 0 && (
        <ul class="jobs removed" aria-label={say('removed-jobs')}>
          {saving.removed.value.map((one) => (
            <li key={one.id} role="status">
              <span>{say('job-removed', { name: titleOf(one) })}</span>
              <button type="button" class="small" onClick={() => void saving.takeBack(one)} aria-label={say('take-back-job', { name: titleOf(one) })}>{say('take-back')}</button>
            </li>
          ))}
        </ul>
      )}
      <button type="button" onClick={() => dialog.current?.close()}>{say('close')}</button>
    </dialog>
  );
}
