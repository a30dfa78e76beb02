import { useDesk } from '../desk-context.ts';
import { jobSummary, jobTitle } from '../job/job-title.ts';
import { isReadable } from '../job/keep.ts';
import { useWords } from '../words/words.ts';
import { Block } from './fields.tsx';

const MOST_SHOWN = 5;

/** The jobs last worked on, where a new one has nothing on it yet. */
export function RecentJobs() {
  const { desk, saving } = useDesk();
  const words = useWords();
  const { say } = words;
  const named = saving.jobs.value.filter(isReadable).filter(({ job }) => job.drawing || job.layouts.length > 0).slice(0, MOST_SHOWN);
  if (desk.job.value.drawing || named.length === 0) return null;
  return (
    <Block isForDoing title={say('recent-jobs')}>
      <ul class="opened-list">
        {named.map(({ id, job }) => (
          <li key={id}><button type="button" class="small" onClick={() => void saving.open(id)}>{jobTitle(job, words)}</button> <span class="job-summary">{jobSummary(job, words)}</span></li>
        ))}
      </ul>
    </Block>
  );
}
