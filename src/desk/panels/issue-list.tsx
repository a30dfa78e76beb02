import type { Issue } from '../../base/issue.ts';
import { useDesk } from '../desk-context.ts';
import { STOPPED } from '../reading.ts';
import { useWords } from '../words/words.ts';

interface Props {
  readonly issues: readonly Issue[];
  /** Numbers as in the picture. */
  readonly numbers?: ReadonlyMap<Issue, number>;
  readonly onGoTo?: (issue: Issue) => void;
  /** What else can be done about an issue. */
  readonly actions?: (issue: Issue) => preact.ComponentChildren;
}

/** What is wrong or doubtful; one with a place is a button that goes there. */
export function IssueList({ issues, numbers, onGoTo, actions }: Props) {
  const { say, issue: sentence } = useWords();
  if (issues.length === 0) return null;
  // The same said of two rotations is said once.
  const distinct = issues.filter((issue, i) => issue.place !== undefined || issues.findIndex((other) => sentence(other) === sentence(issue)) === i);
  return (
    <ul class="issues">
      {distinct.map((issue, i) => (
        <li key={i} class={`issue issue-${issue.severity}`}>
          <span class="severity">{say(`severity-${issue.severity}`)}</span>
          {issue.place && onGoTo ? (
            <button type="button" class="go-to" onClick={() => onGoTo(issue)} title={say('go-there')}>
              <span class="number">{numbers?.get(issue)}</span> {sentence(issue)}
            </button>
          ) : (
            <p>{sentence(issue)}</p>
          )}
          {issue.code === STOPPED && <AskAgain />}
          {actions?.(issue)}
        </li>
      ))}
    </ul>
  );
}

/** Asks anew what the stopped thread left open. */
function AskAgain() {
  const { desk, searching } = useDesk();
  const { say } = useWords();
  const again = () => {
    desk.again.value++;
    if (desk.search.value.phase === 'failed') searching.start();
  };
  return <button type="button" onClick={again}>{say('ask-again')}</button>;
}
