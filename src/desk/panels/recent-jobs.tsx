import { useDesk } from '../desk-context.ts';
import { isReadable } from '../job/keep.ts';
import { useWords } from '../words/words.ts';
import { Block } from './fields.tsx';

const MOST_SHOWN = 5;

/** The jobs last worked on, where a new one has nothing on it yet. */
export function RecentJobs() {
  const { desk, saving } = useDesk();
  const { say } = useWords();
  const named = saving.jobs.value.filter(isReadable).filter(({ job }) => job.drawing || job.layouts.length > 0).slice(0, MOST_SHOWN);
  if (desk.job.value.drawing || named.length === 0) return null;
  return (
    <Block isForDoing title={say('recent-jobs')}>
      <ul class="opened-list">
        {named.map(({ id, job }) => (
          <li key={id}><button type="button" class="small" onClick={() => void saving.open(id)}>{job.name || say('unnamed')}</button></li>
        ))}
      </ul>
    </Block>
  );
}
