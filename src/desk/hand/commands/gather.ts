import type { Axis } from '../../../geometry/no-fit-slices.ts';
import { freePlaces } from '../../../nesting/finish/free-places.ts';
import { movable, withChanged, type Blank, type SheetDocument } from '../document.ts';
import { boxAround, boxOnSheet, type SheetFrame } from '../sheet-frame.ts';
import { unchanged, type Change } from './change.ts';
import { isFree } from './stands-free.ts';

/** Rounds over all blanks; each brings them nearer or is the last. */
const ROUNDS = 40;

/**
 * Pushes the chosen blanks together towards the corner of their own box that is nearest to gripper and lay, each as far as
 * it slides without coming too near to anything. The corner stays; a blank that stands faulty stays where it is.
 */
export function gather(document: SheetDocument, ids: ReadonlySet<number>, frame: SheetFrame): Change {
  const blanks = movable(document, ids);
  if (blanks.length < 2) return unchanged(document, blanks.length < ids.size ? 'all-locked' : 'needs-two');
  const { minX, minY, maxX } = boxAround(frame, blanks)!;
  const lay = frame.problem.lay === 'left' ? { end: minX, sign: -1 as const } : { end: maxX, sign: 1 as const };
  let all = document.blanks;
  for (let round = 0; round < ROUNDS; round++) {
    const before = all;
    all = slidAll(all, ids, frame, 'y', { end: minY, sign: -1 });
    all = slidAll(all, ids, frame, 'x', lay);
    if (all === before) break;
  }
  const stuck = blanks.some((blank) => !isFree(document.blanks, blank, frame));
  if (all === document.blanks) return unchanged(document, stuck ? 'faulty-stays' : 'gathered-already');
  const gathered = withChanged(document, new Map(all.filter(({ id }) => ids.has(id)).map((blank) => [blank.id, blank])));
  return { document: gathered, ...(stuck && { notice: 'faulty-stays' }) };
}

interface Way {
  /** No box goes beyond this line. */
  readonly end: number;
  readonly sign: -1 | 1;
}

/** The blanks nearest to the end go first, so that those behind find the way free. */
function slidAll(all: readonly Blank[], ids: ReadonlySet<number>, frame: SheetFrame, axis: Axis, way: Way): readonly Blank[] {
  const slid = [...all];
  const front = (i: number) => frontOf(slid[i], frame, axis, way);
  const order = slid.flatMap(({ id, locked }, i) => (ids.has(id) && !locked ? [i] : [])).toSorted((i, j) => way.sign * (front(j) - front(i)) || i - j);
  let moved = false;
  for (const i of order) {
    const by = slideOf(slid, i, frame, axis, way);
    if (by === 0) continue;
    slid[i] = { ...slid[i], [axis]: slid[i][axis] + by };
    moved = true;
  }
  return moved ? slid : all;
}

function frontOf(blank: Blank, frame: SheetFrame, axis: Axis, { sign }: Way): number {
  const { minX, minY, maxX, maxY } = boxOnSheet(frame, blank);
  return sign < 0 ? (axis === 'x' ? minX : minY) : axis === 'x' ? maxX : maxY;
}

function slideOf(blanks: readonly Blank[], i: number, frame: SheetFrame, axis: Axis, way: Way): number {
  const at = blanks[i][axis];
  const room = freePlaces(frame.problem, blanks, i, axis).find(({ from, to }) => from <= at && at <= to);
  if (!room) return 0;
  const upTo = way.end - frontOf(blanks[i], frame, axis, way);
  return way.sign < 0 ? Math.max(room.from - at, Math.min(0, upTo)) : Math.min(room.to - at, Math.max(0, upTo));
}
