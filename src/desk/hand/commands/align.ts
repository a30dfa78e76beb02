import type { Box } from '../../../geometry/point.ts';
import { chosen, movable, withChanged, type Blank, type SheetDocument } from '../document.ts';
import { boxAround, boxOnSheet, type SheetFrame } from '../sheet-frame.ts';
import { unchanged, type Change } from './change.ts';

/** `above`: middles on one line away from the gripper; `beside`: middles on one line along it. */
export type Alignment = 'left' | 'right' | 'gripper' | 'tail' | 'above' | 'beside';

/**
 * Brings the boxes of the chosen blanks onto one line: that of the one farthest out, or of all together for middles. Locked
 * blanks stay and, where there are any, give the line.
 */
export function align(document: SheetDocument, ids: ReadonlySet<number>, frame: SheetFrame, to: Alignment): Change {
  if (ids.size < 2) return unchanged(document, 'needs-two');
  const blanks = movable(document, ids);
  if (blanks.length === 0) return unchanged(document, 'all-locked');
  const locked = chosen(document, ids).filter((blank) => blank.locked);
  const line = boxAround(frame, locked.length > 0 ? locked : blanks)!;
  const aligned = blanks.map((blank) => ontoLine(blank, boxOnSheet(frame, blank), line, to));
  return { document: withChanged(document, new Map(aligned.filter((blank, i) => blank.x !== blanks[i].x || blank.y !== blanks[i].y).map((blank) => [blank.id, blank]))) };
}

function ontoLine(blank: Blank, box: Box, line: Box, to: Alignment): Blank {
  switch (to) {
    case 'left':
      return { ...blank, x: blank.x + line.minX - box.minX };
    case 'right':
      return { ...blank, x: blank.x + line.maxX - box.maxX };
    case 'gripper':
      return { ...blank, y: blank.y + line.minY - box.minY };
    case 'tail':
      return { ...blank, y: blank.y + line.maxY - box.maxY };
    case 'above':
      return { ...blank, x: blank.x + Math.floor((line.minX + line.maxX - box.minX - box.maxX) / 2) };
    case 'beside':
      return { ...blank, y: blank.y + Math.floor((line.minY + line.maxY - box.minY - box.maxY) / 2) };
  }
}
