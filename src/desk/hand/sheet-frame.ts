import { boxOf, type Box, type Point } from '../../geometry/point.ts';
import { TURNS, turnBox } from '../../geometry/turn.ts';
import { createJudge, type Frame, type Judgement } from '../../layout/judge.ts';
import type { LayoutFile, PlacedBlank } from '../../layout/layout-file.ts';
import type { Placement, Problem } from '../../layout/problem.ts';
import { problemOfLayout } from '../../pipeline/problem-of-layout.ts';

/** All that stays the same while blanks are moved by hand: sheet, rules and designs. */
export interface SheetFrame {
  readonly layout: Frame;
  /** The same in whole micrometres, as searches see it. */
  readonly problem: Problem;
  /** Box of each part in each of the four turns, about the part's own origin. */
  readonly boxes: readonly (readonly Box[])[];
  /** The judge with sheet, rules and designs prepared. It throws for no placements. */
  readonly judge: (placements: readonly PlacedBlank[]) => Judgement;
}

/** Throws an InputError where a design's outline is not simple or a rotation no quarter turn. */
export function sheetFrame(layout: LayoutFile): SheetFrame {
  const { placements: _, result: __, ...frame } = layout;
  const problem = problemOfLayout(layout);
  return {
    layout: frame,
    problem,
    boxes: problem.parts.map((part) => TURNS.map((turn) => turnBox(boxOf(part.outline), turn))),
    judge: createJudge(frame),
  };
}

/** Where a blank's box stands on the sheet, µm. */
export function boxOnSheet({ boxes }: Pick<SheetFrame, 'boxes'>, { part, turn, x, y }: Placement): Box {
  return movedBox(boxes[part][turn], { x, y });
}

export function movedBox({ minX, minY, maxX, maxY }: Box, { x, y }: Point): Box {
  return { minX: minX + x, minY: minY + y, maxX: maxX + x, maxY: maxY + y };
}

/** The box around several blanks; undefined for none. */
export function boxAround(frame: Pick<SheetFrame, 'boxes'>, placements: Iterable<Placement>): Box | undefined {
  const corners: Point[] = [];
  for (const placement of placements) {
    const { minX, minY, maxX, maxY } = boxOnSheet(frame, placement);
    corners.push({ x: minX, y: minY }, { x: maxX, y: maxY });
  }
  return corners.length === 0 ? undefined : boxOf(corners);
}
