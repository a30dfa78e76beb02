import { chosen, withChanged, type SheetDocument } from '../document.ts';
import { unchanged, type Change } from './change.ts';

/** Locks the chosen blanks; where all of them are locked already, frees them. */
export function lock(document: SheetDocument, ids: ReadonlySet<number>): Change {
  const blanks = chosen(document, ids);
  if (blanks.length === 0) return unchanged(document, 'nothing-selected');
  const locked = !blanks.every((blank) => blank.locked);
  return { document: withChanged(document, new Map(blanks.filter((blank) => blank.locked !== locked).map((blank) => [blank.id, { ...blank, locked }]))) };
}
