import { InputError } from '../../base/issue.ts';
import type { EntryReply } from '../../wire/library.ts';
import { useDesk } from '../desk-context.ts';
import { Block } from '../panels/fields.tsx';
import { IssueList } from '../panels/issue-list.tsx';
import { useAnswer } from '../panels/use-answer.ts';
import { dateLocale, useWords } from '../words/words.ts';
import { BatchView } from './batch-view.tsx';
import { factName, factText } from './fact-names.ts';
import { canBePut, putOnDesk } from './putting.ts';
import type { EntryKind, ServedLibrary } from './served-library.ts';
import { Thumbnail } from './thumbnail.tsx';

interface Props {
  readonly library: ServedLibrary;
  readonly kind: EntryKind;
  readonly id: string;
  /** Something was put on the desk. */
  readonly onPut: () => void;
}

/** One entry: what it is, what it was before, and the way onto the desk. */
export function EntryView({ library, kind, id, onPut }: Props) {
  const parts = useDesk();
  const { say, issue } = useWords();
  const answer = useAnswer(() => library.entry(kind, id), [kind, id]);
  if (answer.kind === 'issues') return <IssueList issues={answer.issues} />;
  if (answer.kind !== 'answer') return <p>{say('reading')}</p>;
  const entry = answer.answer;
  const put = async () => {
    try {
      await putOnDesk(parts, library, entry);
      onPut();
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      parts.desk.notice.value = error.issues.map(issue).join(' ');
    }
  };
  return (
    <>
      <div class="library-entry">
        {entry.picture && <Thumbnail picture={entry.picture} />}
        <div>
          <h3>{say(`kind-${kind}`)} {id}</h3>
          {kind !== 'batch' && <Facts entry={entry} />}
          {canBePut(entry) && <button type="button" class="primary" onClick={() => void put()}>{say('put-on-desk')}</button>}
        </div>
      </div>
      {kind === 'batch' ? <BatchView library={library} id={id} onPut={onPut} /> : <Tables entry={entry} />}
      <Revisions entry={entry} />
    </>
  );
}

function Facts({ entry: { facts } }: { readonly entry: EntryReply }) {
  const words = useWords();
  // Said by the kind.
  const told = facts.filter(([field]) => !['format', 'version', 'convention'].includes(field));
  if (told.length === 0) return null;
  return (
    <dl class="facts">
      {told.map(([field, value]) => (
        <>
          <dt key={field}>{factName(field, words)}</dt>
          <dd>{factText(field, value, words)}</dd>
        </>
      ))}
    </dl>
  );
}

function Tables({ entry: { tables } }: { readonly entry: EntryReply }) {
  const words = useWords();
  return (
    <>
      {tables.map(({ field, head, rows, more }) => (
        <div key={field} class="scrolls" tabIndex={0} role="group" aria-label={factName(field, words)}>
          <table>
            <caption>{factName(field, words)}{more > 0 && ` (${words.say('more-rows', { count: more })})`}</caption>
            <thead><tr>{head.map((name) => <th key={name} scope="col">{factName(name, words)}</th>)}</tr></thead>
            <tbody>{rows.map((row, i) => <tr key={i}>{row.map((cell, j) => <td key={j} class={typeof cell === 'number' ? 'number' : ''}>{factText(head[j]!, cell, words)}</td>)}</tr>)}</tbody>
          </table>
        </div>
      ))}
    </>
  );
}

function Revisions({ entry: { history, moreRevisions } }: { readonly entry: EntryReply }) {
  const words = useWords();
  const { say, locale } = words;
  const text = (field: string, value: string | null) => (value === null ? say('nothing') : factText(field, value, words));
  return (
    <Block title={say('library-history')}>
      <ol class="library-history">
        {history.map(({ revision, at, removed, changes }) => (
          <li key={revision}>
            {say('library-revision', { revision })} · <time dateTime={at}>{new Date(at).toLocaleString(dateLocale(locale))}</time>
            {removed && ` · ${say('library-removed')}`}
            {changes.length > 0 && <span class="card-facts"> {changes.map(({ field, from, to }) => (field === 'drawing' ? say('drawing-changed') : `${factName(field, words)}: ${text(field, from)} → ${text(field, to)}`)).join('; ')}</span>}
          </li>
        ))}
      </ol>
      {moreRevisions > 0 && <p class="hint">{say('more-rows', { count: moreRevisions })}</p>}
    </Block>
  );
}
