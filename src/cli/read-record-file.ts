import { inputError } from '../base/issue.ts';
import { isList, nameIn, readTable, type TableKind } from '../press/tables/record-tables.ts';
import { readJson, readText } from './files.ts';

/** The file of `boards.csv#GC1 300`. */
export function fileOfRecord(path: string): string {
  return /\.csv#/i.test(path) ? path.slice(0, path.lastIndexOf('#')) : path;
}

/**
 * A record's JSON, from a JSON file or a table. Of a table of several, such as boards or presses, one is taken: the one
 * named behind `#`, or the only one. Throws an InputError that names line and field.
 */
export function readRecordFile(path: string, kind: TableKind): unknown {
  const file = fileOfRecord(path);
  if (!/\.csv$/i.test(file)) return readJson(path);
  if (!isList(kind)) return readTable(kind, readText(file), file);
  const records = readTable(kind, readText(file), file);
  const name = file === path ? undefined : path.slice(file.length + 1);
  const record = name === undefined ? (records.length === 1 ? records[0] : undefined) : records.find((one) => nameIn(one) === name);
  // Names hold commas of their own, so each stands in quotes.
  if (!record) throw inputError(name === undefined ? 'record-not-chosen' : 'record-not-listed', { where: file, facts: { kind, name: name ?? '', names: records.map((one) => `"${nameIn(one) ?? '?'}"`).join(', '), file } });
  return record;
}
