import type { Desk } from './desk.ts';
import { joinRecords, nameOfRecord, type NamedRecord, type RecordKind, type Records } from './job/records.ts';
import { answered } from './reading.ts';
import { wordsIn } from './words/words.ts';

/** Machines and boards that a job names; lists of sheets and rates count by being there. */
const FIELD_OF: Readonly<Partial<Record<RecordKind, 'press' | 'cutter' | 'board'>>> = { presses: 'press', cutters: 'cutter', boards: 'board' };

/** Records from a file, JSON or CSV: remembered, and taken for the job where there is one of them. What is wrong in it is said. */
export async function takeRecordFile(desk: Desk, name: string, bytes: Uint8Array, own: NonNullable<NamedRecord['own']> = 'remembered'): Promise<void> {
  const { say, issue } = wordsIn(desk.locale.value);
  const taken = await answered(() => desk.engine.ask('record', { name, bytes }));
  if (taken.kind === 'issues') {
    desk.notice.value = taken.issues.map(issue).join(' ');
    return;
  }
  const { kind, records } = taken.answer;
  desk.records.value = joinRecords(desk.records.value, { [kind]: records.map((one) => ({ ...one, own })) });
  if (own === 'opened') return;
  desk.notice.value = say('records-taken', { list: records.map(nameOfRecord).join(', ') });
  const [first, ...others] = records;
  const field = FIELD_OF[kind];
  if (field && first && others.length === 0) desk.change((job) => ({ ...job, sheet: { ...job.sheet, [field]: first.id } }));
  if (kind === 'rates' && first) desk.change((job) => ({ ...job, money: { ...job.money, ratesRecord: first.id } }));
}

/** Forgets a record that was taken in; one that came with the desk under the same name is back at the next start. */
export function forgetRecord(desk: Desk, kind: RecordKind, id: string): void {
  const { value: records } = desk.records;
  desk.records.value = { ...records, [kind]: records[kind].filter((one) => one.id !== id) } satisfies Records;
}
