import { dirname, resolve } from 'node:path';
import { readJson, readText } from './files.ts';
import { fileOfRecord, readRecordFile } from './read-record-file.ts';

/** Reads a job and the files it names, which are relative to it. `read` lists every file that was read. */
export function openJob(path: string): { readonly json: unknown; readonly load: (file: string) => unknown; readonly resolve: (file: string) => string; readonly read: readonly string[] } {
  const read = [path];
  const place = (file: string) => resolve(dirname(path), file);
  const noted = (file: string) => {
    read.push(file);
    return file;
  };
  return { json: readJson(path), load: (file) => loadRecord(place(file), noted), resolve: (file) => noted(place(file)), read };
}

/** Tables of rates name their rates, all others are boards. */
function loadRecord(path: string, noted: (file: string) => string): unknown {
  const file = noted(fileOfRecord(path));
  if (!/\.csv$/i.test(file)) return readJson(path);
  return readRecordFile(path, /^\uFEFF?"?rate\b/i.test(readText(file)) ? 'rates' : 'boards');
}
