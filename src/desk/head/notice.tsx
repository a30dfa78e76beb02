import { useDesk } from '../desk-context.ts';
import { useWords } from '../words/words.ts';

/** What has just happened, for as long as it takes to read it; the region stays, so that a reader hears what comes into it. */
export function Notice() {
  const { desk: { notice } } = useDesk();
  const { say } = useWords();
  return (
    <div class="notice">
      <p role="status">{notice.value}</p>
      {notice.value && <button type="button" aria-label={say('dismiss')} onClick={() => (notice.value = '')}>×</button>}
    </div>
  );
}
