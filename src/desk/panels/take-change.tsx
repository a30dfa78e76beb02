import { useDesk } from '../desk-context.ts';
import type { KeptLayout } from '../job/job.ts';
import { canTake, takeChange } from '../taking-changes.ts';
import { useWords } from '../words/words.ts';

/** Puts the change that a layout shows into the settings of the job; nothing where they have changed since, or hold it nowhere. */
export function TakeChange({ layout }: { readonly layout: KeptLayout }) {
  const { desk } = useDesk();
  const { say, changeOf } = useWords();
  if (!canTake(desk, layout)) return null;
  return <button type="button" class="small" onClick={() => takeChange(desk, layout)} aria-label={`${say('take-change')}: ${changeOf(layout)}`}>{say('take-change')}</button>;
}
