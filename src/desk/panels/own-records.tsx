import { useDesk } from '../desk-context.ts';
import { nameOfRecord, type RecordKind } from '../job/records.ts';
import { forgetRecord } from '../taking-records.ts';
import { useWords } from '../words/words.ts';

/** Records of the person, each with a button that forgets it. */
export function OwnRecords({ kinds }: { readonly kinds: readonly RecordKind[] }) {
  const { desk } = useDesk();
  const { say } = useWords();
  const own = kinds.flatMap((kind) => desk.records.value[kind].filter((one) => one.own !== undefined).map((one) => ({ kind, one })));
  if (own.length === 0) return null;
  return (
    <ul class="own-records" aria-label={say('own-records')}>
      {own.map(({ kind, one }) => (
        <li key={`${kind} ${one.id}`}>
          {say(`records-${kind}`)}: {nameOfRecord(one)}{' '}
          <button type="button" class="small" aria-label={`${say('forget-record')}: ${nameOfRecord(one)}`} onClick={() => forgetRecord(desk, kind, one.id)}>{say('forget-record')}</button>
        </li>
      ))}
    </ul>
  );
}
