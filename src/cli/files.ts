import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, realpathSync, renameSync, rmdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, extname, join, resolve } from 'node:path';
import { inputError } from '../base/issue.ts';

/** Files larger than this are refused before they are read, bytes. */
export const MAX_INPUT_BYTES = 64 * 1024 * 1024;

/** What a file is called: its name without folder and ending. */
export function nameOf(path: string): string {
  return basename(path, extname(path));
}

export function exists(path: string): boolean {
  return existsSync(path);
}

/** Reads an input whole. Throws an InputError that names the file. */
export function readInput(path: string): Uint8Array {
  let size: number;
  let isFolder: boolean;
  try {
    const found = statSync(path);
    size = found.size;
    isFolder = found.isDirectory();
  } catch {
    throw inputError('file-not-found', { where: path });
  }
  if (isFolder) throw inputError('file-is-folder', { where: path });
  if (size > MAX_INPUT_BYTES) {
    throw inputError('file-too-large', { where: path, facts: { megabytes: size / 2 ** 20, limit: MAX_INPUT_BYTES / 2 ** 20 } });
  }
  try {
    return readFileSync(path);
  } catch (error) {
    throw inputError('file-not-readable', { where: path, facts: { reason: (error as Error).message } });
  }
}

export function readText(path: string): string {
  return new TextDecoder().decode(readInput(path));
}

export function readJson(path: string): unknown {
  const text = readText(path);
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    throw inputError('json-not-valid', { where: path, facts: { reason: (error as Error).message } });
  }
}

function samePlace(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return resolve(path);
  }
}

/** Refuses outputs that would overwrite an input. Call before any work is done. */
export function refuseOverwrite(inputs: readonly string[], outputs: readonly (string | undefined)[]): void {
  const taken = new Set(inputs.map(samePlace));
  for (const output of outputs) {
    if (output !== undefined && output !== '-' && taken.has(samePlace(output))) throw inputError('output-names-input', { where: output });
  }
}

export interface Output {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/**
 * Writes all files or none: each is written beside its place under a temporary name; only when all stand are they renamed.
 * `-` is standard output.
 */
export function writeAll(outputs: readonly Output[]): void {
  const staged: { temporary: string; path: string }[] = [];
  let current = '';
  try {
    for (const { path, content } of outputs) {
      if (path === '-') continue;
      current = path;
      const temporary = join(dirname(path), `.${basename(path)}.${randomBytes(6).toString('hex')}`);
      staged.push({ temporary, path });
      writeFileSync(temporary, content);
    }
    for (const { temporary, path } of staged) {
      current = path;
      renameSync(temporary, path);
    }
  } catch (error) {
    for (const { temporary } of staged) rmSync(temporary, { force: true });
    throw inputError('output-not-writable', { where: current, facts: { reason: (error as Error).message } });
  }
  for (const { path, content } of outputs) if (path === '-') process.stdout.write(content);
}

/** Refuses a folder that cannot become a new one. Call before any work is done. */
export function refuseTakenFolder(path: string): void {
  let held: readonly string[];
  try {
    held = readdirSync(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return;
    throw inputError('handover-folder-taken', { where: path });
  }
  if (held.length > 0) throw inputError('handover-folder-taken', { where: path });
}

/** Writes a new folder of files whole or not at all: beside its place under a temporary name, then renamed. Returns their number. */
export function writeFolder(path: string, files: Iterable<{ readonly name: string; readonly content: string | Uint8Array }>): number {
  const place = resolve(path);
  const temporary = join(dirname(place), `.${basename(place)}.${randomBytes(6).toString('hex')}`);
  try {
    mkdirSync(temporary);
    let count = 0;
    for (const { name, content } of files) {
      mkdirSync(dirname(join(temporary, name)), { recursive: true });
      writeFileSync(join(temporary, name), content);
      count++;
    }
    rmdirWhereEmpty(place);
    renameSync(temporary, place);
    return count;
  } catch (error) {
    rmSync(temporary, { force: true, recursive: true });
    throw inputError('output-not-writable', { where: path, facts: { reason: (error as Error).message } });
  }
}

/** Not every system renames onto an empty folder. */
function rmdirWhereEmpty(path: string): void {
  try {
    rmdirSync(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  }
}
