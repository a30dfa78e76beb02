import { boxOf, type Box, type Point } from '../geometry/point.ts';
import { turnBox } from '../geometry/turn.ts';
import type { Area, SheetView } from './sheet-view.ts';

/** Sides of the square that a register mark takes, mm; the largest that has room is used. */
const SIZES = [8, 6, 5, 4, 3];
/** Steps at which places are tried along a side, mm. */
const STEP = 1;

export interface RegisterMark {
  readonly at: Point;
  readonly size: number;
}

/**
 * Places of register marks: one at each side of the sheet, both as far from the gripper edge where that can be had, as
 * near as there is room to the middle of the sheet's depth, inside the ink area and clear of every blank, its bleed and
 * all keep-outs. A side without room has none.
 */
export function registerMarks(view: SheetView): RegisterMark[] {
  const taken = [...blankBoxes(view), ...view.keepOuts.map(({ ring }) => boxOf(ring))];
  const both = marksAt(['left', 'right'], view.printable, taken);
  return both ?? (['left', 'right'] as const).flatMap((side) => marksAt([side], view.printable, taken) ?? []);
}

/** Marks of one size at one height on all the sides named, the largest first, then the nearest to the middle. */
function marksAt(sides: readonly ('left' | 'right')[], printable: Area, taken: readonly Box[]): RegisterMark[] | undefined {
  const middle = printable.y + printable.height / 2;
  for (const size of SIZES) {
    const half = size / 2;
    const xs = sides.map((side) => (side === 'left' ? printable.x + half : printable.x + printable.width - half));
    for (let away = 0; away + half <= printable.height / 2; away += STEP) {
      for (const y of [middle + away, middle - away]) {
        const isFree = (x: number) => taken.every((other) => apart({ minX: x - half, maxX: x + half, minY: y - half, maxY: y + half }, other));
        if (xs.every(isFree)) return xs.map((x) => ({ at: { x, y }, size }));
      }
    }
  }
  return undefined;
}

/** Boxes of the blanks with their bleed. A mark between two nested blanks would save nothing and be hard to see. */
function blankBoxes({ designs, placements, bleed }: SheetView): Box[] {
  const boxes = designs.map(({ ring }) => boxOf(ring));
  return placements.map(({ design, turn, x, y }) => {
    const box = turnBox(boxes[design]!, turn);
    return { minX: box.minX + x - bleed, maxX: box.maxX + x + bleed, minY: box.minY + y - bleed, maxY: box.maxY + y + bleed };
  });
}

function apart(a: Box, b: Box): boolean {
  return a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY;
}
