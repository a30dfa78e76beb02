import { dirname, resolve } from 'node:path';
import type { LoadJson } from '../pipeline/record-reader.ts';
import type { TableKind } from '../press/tables/record-tables.ts';
import { readJson } from './files.ts';
import { fileOfRecord, readRecordFile } from './read-record-file.ts';

export interface OpenJob {
  readonly json: unknown;
  readonly load: LoadJson;
  readonly resolve: (file: string) => string;
  readonly read: readonly string[];
}

/** Reads a job and the files it names, which are relative to it. `read` lists every file that was read. A record may stand in a table. */
export function openJob(path: string, kind?: TableKind): OpenJob {
  const read = [fileOfRecord(path)];
  const place = (file: string) => resolve(dirname(path), file);
  const noted = (file: string) => {
    read.push(fileOfRecord(file));
    return file;
  };
  const open = (file: string, of: TableKind | undefined) => (of ? readRecordFile(file, of) : readJson(file));
  return { json: open(path, kind), load: (file, of) => open(noted(place(file)), of), resolve: (file) => noted(place(file)), read };
}
