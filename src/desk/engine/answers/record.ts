import { inputError } from '../../../base/issue.ts';
import { readRecord } from '../../../press/records.ts';
import { readRows } from '../../../press/tables/rows.ts';
import { columnsOf, isList, nameIn, readTable, schemaOf } from '../../../press/tables/record-tables.ts';
import { stem } from '../../job/name-of-drawing.ts';
import { kindOfRecord, type NamedRecord, type RecordKind } from '../../job/records.ts';
import type { RecordAnswer, RecordAsk } from '../protocol.ts';

const KINDS: readonly RecordKind[] = ['sheets', 'rates', 'presses', 'cutters', 'boards'];

/** A record as JSON or a table as CSV, checked whole. Throws an InputError that names line and field of every fault. */
export function takeRecords({ name, bytes }: RecordAsk): RecordAnswer {
  const text = new TextDecoder().decode(bytes);
  const id = stem(name);
  return /\.json$/i.test(name) ? fromJson(id, name, text) : fromTable(id, name, text);
}

function fromJson(id: string, name: string, text: string): RecordAnswer {
  const record = JSON.parse(text) as Record<string, unknown>;
  const kind = kindOfRecord(record);
  if (!kind) throw inputError('record-of-no-kind', { where: name });
  readRecord(schemaOf(kind), record, name);
  return { kind, records: [{ id, record }] };
}

function fromTable(id: string, name: string, text: string): RecordAnswer {
  const kind = kindOfTable(text, name);
  const read = readTable(kind, text, name);
  if (!isList(kind)) return { kind, records: [{ id, record: read as NamedRecord['record'] }] };
  return { kind, records: [read].flat().map((record, i) => ({ id: nameIn(record) ?? `${id} ${i + 1}`, record })) };
}

/** The kind that knows most of the columns; of several the first. */
function kindOfTable(text: string, name: string): RecordKind {
  const { head } = readRows(text, name);
  const known = KINDS.map((kind) => head.filter((column) => columnsOf(kind).includes(column)).length);
  const most = Math.max(...known);
  if (most === 0) throw inputError('record-of-no-kind', { where: name });
  return KINDS[known.indexOf(most)]!;
}
