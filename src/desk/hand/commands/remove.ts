import { movable, type SheetDocument } from '../document.ts';
import { unchanged, type Change } from './change.ts';

const NONE: ReadonlySet<number> = new Set();

/** Takes the chosen blanks off the sheet; locked ones stay, and stay chosen. */
export function remove(document: SheetDocument, ids: ReadonlySet<number>): Change {
  const gone = new Set(movable(document, ids).map(({ id }) => id));
  if (gone.size === 0) return unchanged(document, ids.size === 0 ? 'nothing-selected' : 'all-locked');
  const locked = [...ids].filter((id) => !gone.has(id));
  return {
    document: { ...document, blanks: document.blanks.filter(({ id }) => !gone.has(id)) },
    selected: locked.length === 0 ? NONE : new Set(locked),
    ...(locked.length > 0 && { notice: 'locked-stays' }),
  };
}
