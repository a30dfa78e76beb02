import { movable, withChanged, type SheetDocument } from '../document.ts';
import { boxAround, boxOnSheet, type SheetFrame } from '../sheet-frame.ts';
import { unchanged, type Change } from './change.ts';

/**
 * Gives the chosen blanks equal steps from the first to the last, along the axis in which they are spread out more. All
 * steps are the same whole number of micrometres, so the last blank may come in by less than one for each step.
 */
export function equalSteps(document: SheetDocument, ids: ReadonlySet<number>, frame: SheetFrame): Change {
  const blanks = movable(document, ids);
  if (blanks.length < 3) return unchanged(document, 'needs-three');
  const around = boxAround(frame, blanks)!;
  const alongX = around.maxX - around.minX >= around.maxY - around.minY;
  const start = (i: number) => (alongX ? sorted[i].box.minX : sorted[i].box.minY);
  const sorted = blanks
    .map((blank) => ({ blank, box: boxOnSheet(frame, blank) }))
    .toSorted((a, b) => (alongX ? a.box.minX - b.box.minX : a.box.minY - b.box.minY) || a.blank.id - b.blank.id);
  const step = Math.floor((start(sorted.length - 1) - start(0)) / (sorted.length - 1));
  const changed = sorted.flatMap(({ blank }, i) => {
    const by = start(0) + i * step - start(i);
    return by === 0 ? [] : [alongX ? { ...blank, x: blank.x + by } : { ...blank, y: blank.y + by }];
  });
  return { document: withChanged(document, new Map(changed.map((blank) => [blank.id, blank]))) };
}
