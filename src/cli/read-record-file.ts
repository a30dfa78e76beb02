import { inputError } from '../base/issue.ts';
import { readTable, type TableKind } from '../press/tables/record-tables.ts';
import { readJson, readText } from './files.ts';

/** The file of `boards.csv#GC1 300`. */
export function fileOfRecord(path: string): string {
  return /\.csv#/i.test(path) ? path.slice(0, path.lastIndexOf('#')) : path;
}

/**
 * A record's JSON, from a JSON file or a table. Of a table of boards one is taken: the one named behind `#`, or the only
 * one. Throws an InputError that names line and field.
 */
export function readRecordFile(path: string, kind: TableKind): unknown {
  const file = fileOfRecord(path);
  if (!/\.csv$/i.test(file)) return readJson(path);
  if (kind !== 'boards') return readTable(kind, readText(file), file);
  const boards = readTable(kind, readText(file), file);
  const name = file === path ? undefined : path.slice(file.length + 1);
  const board = name === undefined ? (boards.length === 1 ? boards[0] : undefined) : boards.find((one) => one['name'] === name);
  if (!board) throw inputError('board-not-chosen', { where: path, facts: { names: boards.map((one) => String(one['name'] ?? '?')).join(', '), file } });
  return board;
}
