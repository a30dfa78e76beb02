import { useDesk } from '../desk-context.ts';
import type { Desk, Panel } from '../desk.ts';
import { useWords } from '../words/words.ts';

/** Where there is no layout yet: why, and the one step that brings it. */
export function NothingYet() {
  const { desk } = useDesk();
  const { say } = useWords();
  const [reason, panel] = whatIsMissing(desk);
  return (
    <div class="empty">
      <p>{say(reason)}</p>
      {panel && desk.panel.value !== panel && <button type="button" class="primary" onClick={() => (desk.panel.value = panel)}>{say(`to-${panel}`)}</button>}
    </div>
  );
}

type Missing = readonly [reason: 'empty-drawing' | 'empty-unreadable' | 'empty-fields' | 'empty-search' | 'empty-waiting', panel?: Panel & ('drawing' | 'sheet' | 'layouts')];

function whatIsMissing({ reading, faultyFields, searchIssues, frame }: Desk): Missing {
  if (reading.value.kind === 'none') return ['empty-drawing', 'drawing'];
  if (reading.value.kind === 'issues') return ['empty-unreadable', 'drawing'];
  if (faultyFields.value.length > 0 || frame.value.kind === 'issues') return ['empty-fields', 'sheet'];
  if (searchIssues.value.length > 0) return ['empty-search', 'layouts'];
  return ['empty-waiting'];
}
