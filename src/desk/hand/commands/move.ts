import type { Point } from '../../../geometry/point.ts';
import { movable, withChanged, type SheetDocument } from '../document.ts';
import { unchanged, type Change } from './change.ts';

/** Moves the chosen blanks by whole micrometres; locked ones stay. */
export function move(document: SheetDocument, ids: ReadonlySet<number>, by: Point): Change {
  const blanks = movable(document, ids);
  if (blanks.length === 0) return unchanged(document, ids.size === 0 ? 'nothing-selected' : 'all-locked');
  if (by.x === 0 && by.y === 0) return { document };
  const moved = new Map(blanks.map((blank) => [blank.id, { ...blank, x: blank.x + by.x, y: blank.y + by.y }]));
  return { document: withChanged(document, moved), ...(moved.size < ids.size && { notice: 'locked-stays' }) };
}
