import { boxOf, type Box } from '../geometry/point.ts';
import { turnBox } from '../geometry/turn.ts';
import { chainFits } from './dimension.ts';
import type { Format } from './format.ts';
import type { Scale } from './scale.ts';
import type { SheetView } from './sheet-view.ts';
import { runsBetween, type Run } from './steps.ts';

/**
 * Margins and steps along one axis: from the sheet's edge to the first blank, from blank to blank, the last blank, and
 * the rest. Where blanks stand in too many places for that, those of the first row or column only; failing that, the
 * block as a whole.
 */
export function stepRuns(view: SheetView, axis: 'x' | 'y', format: Format, scale: Scale): Run[] {
  const boxes = placedBoxes(view);
  const end = axis === 'x' ? view.sheet.width : view.sheet.height;
  if (boxes.length === 0) return [{ from: 0, step: end, count: 1 }];
  const [low, high, crossLow] = axis === 'x' ? (['minX', 'maxX', 'minY'] as const) : (['minY', 'maxY', 'minX'] as const);
  const chain = (some: readonly Box[]) => runsBetween([0, ...some.map((box) => box[low]), Math.max(...some.map((box) => box[high])), end]);
  const nearest = Math.min(...boxes.map((box) => box[crossLow]));
  const block = runsBetween([0, Math.min(...boxes.map((box) => box[low])), Math.max(...boxes.map((box) => box[high])), end]);
  return [chain(boxes), chain(boxes.filter((box) => box[crossLow] === nearest))].find((runs) => chainFits(runs, format, scale)) ?? block;
}

/** Boxes of the blanks on the sheet, in station order. */
export function placedBoxes({ designs, placements }: SheetView): Box[] {
  const boxes = designs.map(({ ring }) => boxOf(ring));
  return placements.map(({ design, turn, x, y }) => {
    const box = turnBox(boxes[design]!, turn);
    return { minX: box.minX + x, maxX: box.maxX + x, minY: box.minY + y, maxY: box.maxY + y };
  });
}
