import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Desk } from './desk.ts';
import type { Files } from './files/files.ts';
import type { ServedLibrary } from './library/served-library.ts';
import type { Saving } from './saving.ts';
import type { Searching } from './searching.ts';

/** What every part of the page may reach. */
export interface DeskParts {
  readonly desk: Desk;
  readonly searching: Searching;
  readonly saving: Saving;
  readonly files: Files;
  /** Where the desk was opened with one. */
  readonly library: ServedLibrary | undefined;
}

export const DeskContext = createContext<DeskParts | undefined>(undefined);

export function useDesk(): DeskParts {
  const parts = useContext(DeskContext);
  if (!parts) throw new Error('There is no desk around this part of the page.');
  return parts;
}
