import { existsSync, renameSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { inputError } from '../../base/issue.ts';
import { libraryError, type Library } from './open-library.ts';

/**
 * A copy of the library as it is at this moment, whole or not at all, while others go on working. Throws an InputError
 * where the file exists already.
 */
export function backUp(library: Library, path: string): void {
  if (existsSync(path)) throw inputError('backup-exists', { where: path });
  const temporary = join(dirname(path), `.${basename(path)}.${process.pid}`);
  rmSync(temporary, { force: true });
  try {
    library.run('VACUUM INTO ?', temporary);
    renameSync(temporary, path);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw libraryError(error, path);
  }
}
