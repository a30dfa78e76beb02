import { addTurns, type Turn } from '../../../geometry/turn.ts';
import { movable, withChanged, type Blank, type SheetDocument } from '../document.ts';
import { boxOnSheet, type SheetFrame } from '../sheet-frame.ts';
import { unchanged, type Change } from './change.ts';

/**
 * Turns each chosen blank about the middle of its box: counter-clockwise to the next rotation that its design allows
 * (`back`: clockwise), or by a `quarter` whatever is allowed.
 */
export function turn(document: SheetDocument, ids: ReadonlySet<number>, frame: SheetFrame, way: 'next' | 'back' | 'quarter'): Change {
  const blanks = movable(document, ids);
  if (blanks.length === 0) return unchanged(document, ids.size === 0 ? 'nothing-selected' : 'all-locked');
  const turned = blanks.map((blank) => turnedTo(blank, turnAfter(blank, frame, way), frame));
  if (turned.every((blank, i) => blank.turn === blanks[i].turn)) return unchanged(document, 'one-rotation');
  return { document: withChanged(document, new Map(turned.map((blank) => [blank.id, blank]))) };
}

function turnAfter({ part, turn: now }: Blank, { problem }: SheetFrame, way: 'next' | 'back' | 'quarter'): Turn {
  if (way === 'quarter') return addTurns(now, 1);
  const sign = way === 'next' ? 1 : -1;
  const allowed = new Set(problem.parts[part].turns);
  for (let steps = 1; steps < 4; steps++) {
    const next = addTurns(now, sign * steps);
    if (allowed.has(next)) return next;
  }
  return now;
}

/** About the middle of its box; where that is not whole, the lower left corner's half micrometre is dropped. */
export function turnedTo(blank: Blank, turn: Turn, frame: Pick<SheetFrame, 'boxes'>): Blank {
  const before = boxOnSheet(frame, blank);
  const own = frame.boxes[blank.part][turn];
  return {
    ...blank,
    turn,
    x: Math.floor((before.minX + before.maxX - own.minX - own.maxX) / 2),
    y: Math.floor((before.minY + before.maxY - own.minY - own.maxY) / 2),
  };
}
