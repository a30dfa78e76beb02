import { indexBoxes, type BoxIndex } from '../../../geometry/box-index.ts';
import type { Box } from '../../../geometry/point.ts';
import type { Blank } from '../document.ts';
import { boxOnSheet, type SheetFrame } from '../sheet-frame.ts';

/** The blanks that stand while others are moved, found by place. Made once when a move begins. */
export interface Standing {
  readonly blanks: readonly Blank[];
  readonly boxes: readonly Box[];
  readonly index: BoxIndex;
}

export function standingOf(blanks: readonly Blank[], frame: SheetFrame): Standing {
  const boxes = blanks.map((blank) => boxOnSheet(frame, blank));
  return { blanks, boxes, index: indexBoxes(boxes) };
}

/** Positions of the blanks whose boxes come within `reach` of one of these boxes, ascending. */
export function near({ index }: Standing, boxes: readonly Box[], reach: number): number[] {
  const found = new Set<number>();
  for (const { minX, minY, maxX, maxY } of boxes) {
    for (const i of index.search({ minX: minX - reach, minY: minY - reach, maxX: maxX + reach, maxY: maxY + reach })) found.add(i);
  }
  return [...found].sort((a, b) => a - b);
}
