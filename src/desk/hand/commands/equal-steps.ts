import { movable, withChanged, type Blank, type SheetDocument } from '../document.ts';
import { boxOnSheet, type SheetFrame } from '../sheet-frame.ts';
import { unchanged, type Change } from './change.ts';
import { isFree } from './stands-free.ts';

/** In which direction steps are counted: of a row along the gripper edge, of a column away from it. */
type Line = 'row' | 'column';

/**
 * Gives the chosen blanks equal steps from the first to the last: those of one row along the gripper edge, those of one
 * column away from it, and of several rows each row by itself. All steps of a row are the same whole number of micrometres,
 * so its last blank may come in by less than one for each step. A row where that would make a fault stays as it is.
 */
export function equalSteps(document: SheetDocument, ids: ReadonlySet<number>, frame: SheetFrame): Change {
  const blanks = movable(document, ids);
  if (blanks.length < 3) return unchanged(document, 'needs-three');
  const [rows, columns] = [linesOf(blanks, 'row', frame), linesOf(blanks, 'column', frame)];
  const [line, lines]: [Line, Blank[][]] = columns.length === 1 && rows.length > 1 ? ['column', columns] : rows.some(({ length }) => length >= 3) ? ['row', rows] : ['column', columns];
  const long = lines.filter(({ length }) => length >= 3);
  if (long.length === 0) return unchanged(document, 'needs-three-in-line');
  let stepped = document;
  let stuck = 0;
  for (const members of long) {
    const moved = withChanged(stepped, new Map(evenly(members, line, frame).map((blank) => [blank.id, blank])));
    if (moved === stepped) continue;
    if (members.every(({ id }) => isFree(moved.blanks, moved.blanks.find((blank) => blank.id === id)!, frame))) stepped = moved;
    else stuck++;
  }
  if (stepped === document) return unchanged(document, stuck > 0 ? 'no-equal-steps' : 'steps-equal-already');
  return { document: stepped, ...(stuck > 0 && { notice: 'some-rows-stay' }) };
}

/** Blanks whose middles lie within half a blank of the first one's are one line. */
function linesOf(blanks: readonly Blank[], line: Line, frame: SheetFrame): Blank[][] {
  const across = (blank: Blank) => {
    const { minX, minY, maxX, maxY } = boxOnSheet(frame, blank);
    return line === 'row' ? { middle: (minY + maxY) / 2, size: maxY - minY } : { middle: (minX + maxX) / 2, size: maxX - minX };
  };
  const lines: { from: number; blanks: Blank[] }[] = [];
  for (const blank of blanks.toSorted((a, b) => across(a).middle - across(b).middle || a.id - b.id)) {
    const { middle, size } = across(blank);
    const last = lines.at(-1);
    if (last && middle - last.from < size / 2) last.blanks.push(blank);
    else lines.push({ from: middle, blanks: [blank] });
  }
  return lines.map((one) => one.blanks);
}

/** Those that have to move, moved. */
function evenly(members: readonly Blank[], line: Line, frame: SheetFrame): Blank[] {
  const axis = line === 'row' ? 'x' : 'y';
  const start = (blank: Blank) => (line === 'row' ? boxOnSheet(frame, blank).minX : boxOnSheet(frame, blank).minY);
  const sorted = members.toSorted((a, b) => start(a) - start(b) || a.id - b.id);
  const first = start(sorted[0]);
  const step = Math.floor((start(sorted.at(-1)!) - first) / (sorted.length - 1));
  return sorted.flatMap((blank, i) => {
    const by = first + i * step - start(blank);
    return by === 0 ? [] : [{ ...blank, [axis]: blank[axis] + by }];
  });
}
