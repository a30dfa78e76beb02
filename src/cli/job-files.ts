import { dirname, resolve } from 'node:path';
import { readJson } from './files.ts';

/** Reads a job and the files it names, which are relative to it. `read` lists every file that was read. */
export function openJob(path: string): { readonly json: unknown; readonly load: (file: string) => unknown; readonly resolve: (file: string) => string; readonly read: readonly string[] } {
  const read = [path];
  const place = (file: string) => resolve(dirname(path), file);
  const noted = (file: string) => {
    read.push(file);
    return file;
  };
  return { json: readJson(path), load: (file) => readJson(noted(place(file))), resolve: (file) => noted(place(file)), read };
}
