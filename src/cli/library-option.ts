import type { Command } from 'commander';
import { libraryError, openLibrary, type Library, type Opening } from '../shop/library/open-library.ts';

/** Where the library is, unless said otherwise. */
const USUAL_LIBRARY = 'library.blankwright';
const LIBRARY_VARIABLE = 'BLANKWRIGHT_LIBRARY';

export function addLibraryOption(command: Command): Command {
  return command.option('--library <file>', `the library (default: the variable ${LIBRARY_VARIABLE}, else ${USUAL_LIBRARY} in this folder)`);
}

export function libraryPath(given: string | undefined): string {
  return given ?? (process.env[LIBRARY_VARIABLE] || USUAL_LIBRARY);
}

/** Opens the library that is meant for a piece of work and closes it afterwards. */
export async function withLibrary<Result>(given: string | undefined, opening: Opening, work: (library: Library) => Result | Promise<Result>): Promise<Result> {
  const library = openLibrary(libraryPath(given), opening);
  try {
    return await work(library);
  } catch (error) {
    throw libraryError(error, library.path);
  } finally {
    library.close();
  }
}
