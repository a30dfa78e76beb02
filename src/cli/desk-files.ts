import { createHash } from 'node:crypto';
import { lstatSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { basename, extname, join } from 'node:path';
import { inputError } from '../base/issue.ts';
import { MAX_INPUT_BYTES, writeAll } from './files.ts';

/** What the desk was opened with: single files, or one folder that it may also write into. */
export interface OpenedFiles {
  /** Paths by the names under which the page knows them. */
  readonly files: ReadonlyMap<string, string>;
  readonly folder: string | undefined;
}

export interface DeskFiles {
  list(): { readonly folder: string | null; readonly files: readonly { readonly name: string; readonly bytes: number }[] };
  read(name: string): { readonly content: Uint8Array; readonly version: string } | undefined;
  /** Of a file that may be written over: what `write` is told as `replaces`. */
  version(name: string): string | undefined;
  /** `replaces` is the version of the file that is to be replaced; absent for a new one. */
  write(name: string, content: Uint8Array, replaces: string | undefined): WriteOutcome;
}

export type WriteOutcome = { readonly kind: 'written'; readonly version: string } | { readonly kind: 'refused' } | { readonly kind: 'changed' };

/** What the desk reads, and what it writes. */
const READ_ENDINGS: ReadonlySet<string> = new Set(['.svg', '.json', '.dxf', '.pdf']);
const WRITTEN_ENDINGS: ReadonlySet<string> = new Set([...READ_ENDINGS, '.html', '.csv', '.xjdf']);
/** No folder, no hidden file, no name that a system reads as something else. */
const PLAIN_NAME = /^[\p{L}\p{N}][\p{L}\p{N} ._()+,×-]{0,150}$/u;

/** Sorts the command's arguments. Throws an InputError for what cannot be opened, or a folder beside other things. */
export function openFiles(paths: readonly string[]): OpenedFiles {
  const files = new Map<string, string>();
  for (const path of paths) {
    const kind = statSync(path, { throwIfNoEntry: false });
    if (!kind) throw inputError('file-not-found', { where: path });
    if (kind.isDirectory()) {
      if (paths.length > 1) throw inputError('folder-opens-alone', { where: path });
      return { files: new Map(), folder: realpathSync(path) };
    }
    const name = basename(path);
    if (!READ_ENDINGS.has(extname(name).toLowerCase())) throw inputError('desk-opens-not', { where: path, facts: { endings: [...READ_ENDINGS].join(', ') } });
    if (files.has(name)) throw inputError('desk-names-twice', { where: path, facts: { name } });
    files.set(name, realpathSync(path));
  }
  return { files, folder: undefined };
}

export function createDeskFiles({ files, folder }: OpenedFiles): DeskFiles {
  const pathOf = (name: string): string | undefined => {
    if (folder === undefined) return files.get(name);
    return PLAIN_NAME.test(name) && READ_ENDINGS.has(extname(name).toLowerCase()) && isPlainFile(join(folder, name)) ? join(folder, name) : undefined;
  };
  const writable = (name: string) => (folder !== undefined && PLAIN_NAME.test(name) && WRITTEN_ENDINGS.has(extname(name).toLowerCase()) ? join(folder, name) : undefined);
  const names = () => (folder === undefined ? [...files.keys()] : readdirSync(folder).filter((name) => pathOf(name) !== undefined));
  const read: DeskFiles['read'] = (name) => {
    const path = pathOf(name);
    if (path === undefined || !isPlainFile(path) || statSync(path).size > MAX_INPUT_BYTES) return undefined;
    return withVersion(path);
  };
  return {
    read,
    list: () => ({ folder: folder === undefined ? null : basename(folder), files: names().map((name) => ({ name, bytes: statSync(pathOf(name)!).size })) }),
    version: (name) => {
      const path = writable(name);
      return path !== undefined && isPlainFile(path) ? withVersion(path).version : undefined;
    },
    write: (name, content, replaces) => {
      const path = writable(name);
      if (path === undefined) return { kind: 'refused' };
      const present = lstatSync(path, { throwIfNoEntry: false });
      if (present && !present.isFile()) return { kind: 'refused' };
      if ((present ? withVersion(path).version : undefined) !== replaces) return { kind: 'changed' };
      writeAll([{ path, content }]);
      return { kind: 'written', version: versionOf(content) };
    },
  };
}

/** No link: it could lead out of the folder. */
function isPlainFile(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false })?.isFile() === true;
}

function withVersion(path: string): { content: Uint8Array; version: string } {
  const content = readFileSync(path);
  return { content, version: versionOf(content) };
}

function versionOf(content: Uint8Array): string {
  return `"${createHash('sha256').update(content).digest('hex').slice(0, 32)}"`;
}
