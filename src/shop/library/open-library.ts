import { closeSync, existsSync, openSync, readSync, statfsSync } from 'node:fs';
import { dirname } from 'node:path';
import { inputError } from '../../base/issue.ts';
import { openStore, type Store } from './database.ts';
import { APPLICATION_ID, migrate, NEWEST_VERSION, versionOf } from './migrations.ts';

/** The shop's memory: one file, open in any number of processes. */
export type Library = Store;

export interface Opening {
  /** Whether a library that does not exist yet is made. */
  readonly create: boolean;
}

/**
 * Opens a library and brings it to this program's version. Throws an InputError, the file untouched, where it is none of
 * ours, of a newer version, or not there.
 */
export function openLibrary(path: string, { create }: Opening): Library {
  if (!existsSync(path) && !create) throw inputError('library-not-found', { where: path });
  if (existsSync(path)) checkHeader(path);
  try {
    const store = openStore(path);
    try {
      refuseNewer(path, versionOf(store));
      store.script('PRAGMA journal_mode = WAL; PRAGMA synchronous = NORMAL;');
      migrate(store);
    } catch (error) {
      store.close();
      throw error;
    }
    return store;
  } catch (error) {
    throw libraryError(error, path);
  }
}

/** Sentences for what the file system or the database refuse; other errors as they are. */
export function libraryError(error: unknown, path: string): unknown {
  const code = String((error as { code?: unknown }).code ?? '');
  // Without room for its shared memory the database speaks of input and output only.
  if (code === 'SQLITE_FULL' || (code.startsWith('SQLITE_IOERR') && diskIsFull(path))) return inputError('library-disk-full', { where: path });
  if (code === 'SQLITE_BUSY') return inputError('library-busy', { where: path });
  // A file that cannot be opened at all comes as a plain error.
  if (/^SQLITE_(CANTOPEN|READONLY|IOERR|PERM|AUTH)/.test(code) || (error as Error).message.startsWith('ConnectionFailed')) return inputError('library-not-writable', { where: path, facts: { reason: (error as Error).message } });
  if (/^SQLITE_(CORRUPT|NOTADB)/.test(code)) return inputError('library-damaged', { where: path, facts: { reason: (error as Error).message } });
  return error;
}

function diskIsFull(path: string): boolean {
  try {
    return statfsSync(dirname(path)).bavail === 0;
  } catch {
    return false;
  }
}

/** Offsets of the SQLite file format, section 1.3 (https://www.sqlite.org/fileformat.html). */
const HEADER_BYTES = 100;
const USER_VERSION_AT = 60;
const APPLICATION_ID_AT = 68;

/** Looks at the file before the database library touches it. An empty file is a library that was never written to. */
function checkHeader(path: string): void {
  const header = Buffer.alloc(HEADER_BYTES);
  const read = readStart(path, header);
  if (read === 0) return;
  if (read < HEADER_BYTES || header.toString('latin1', 0, 16) !== 'SQLite format 3\0') throw inputError('library-not-ours', { where: path });
  const application = header.readInt32BE(APPLICATION_ID_AT);
  const version = header.readInt32BE(USER_VERSION_AT);
  if (application !== APPLICATION_ID && (application !== 0 || version !== 0)) throw inputError('library-not-ours', { where: path });
  refuseNewer(path, version);
}

function readStart(path: string, into: Uint8Array): number {
  try {
    const file = openSync(path, 'r');
    try {
      return readSync(file, into, 0, into.length, 0);
    } finally {
      closeSync(file);
    }
  } catch (error) {
    throw inputError('file-not-readable', { where: path, facts: { reason: (error as Error).message } });
  }
}

function refuseNewer(path: string, version: number): void {
  if (version > NEWEST_VERSION) throw inputError('library-newer', { where: path, facts: { version, known: NEWEST_VERSION } });
}
