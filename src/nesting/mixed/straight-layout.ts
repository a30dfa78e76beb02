import { boxOf, ringArea } from '../../geometry/point.ts';
import { turnBox, type Turn } from '../../geometry/turn.ts';
import { requiredGap, type Part, type Placement, type Problem } from '../../layout/problem.ts';
import { fieldSets } from '../patterns/fields.ts';
import { mixedStraightCuts, type CutPiece } from '../patterns/rectangles/mixed-straight-cuts.ts';
import { straightCuts } from '../patterns/rectangles/straight-cuts.ts';

export interface StraightLayout {
  readonly placements: readonly Placement[];
  /** No layout that straight cuts can take apart is worth more; known, not hoped. */
  readonly exact: boolean;
}

/** Whether straight cuts can get the part out of a sheet. */
export function isPlainRectangle({ outline, openings }: Part): boolean {
  const box = boxOf(outline);
  return openings.length === 0 && ringArea(outline) === (box.maxX - box.minX) * (box.maxY - box.minY);
}

/** The most blanks of the only part that straight cuts get out of the usable area, as tight as the gap allows. */
export function mostByStraightCuts(problem: Problem): StraightLayout {
  const [part] = problem.parts;
  const gap = requiredGap(problem.rules);
  const [first, second] = standings(part);
  const { width: a, height: b } = sizeIn(part, first);
  let exact = true;
  const placements = fieldsOf(problem).flatMap((field) => {
    const found = straightCuts(field.maxX - field.minX + gap, field.maxY - field.minY + gap, a + gap, b + gap, second !== undefined);
    exact &&= found.exact;
    return found.boxes.map(({ x, y, turned }) => placedAt(problem, 0, turned ? second : first, field.minX + x, field.minY + y));
  });
  return { placements, exact };
}

/** The blanks worth most together. Undefined where the sizes make too large a table. */
export function worthMostByStraightCuts(problem: Problem, worths: readonly number[]): StraightLayout | undefined {
  const gap = requiredGap(problem.rules);
  const pieces = problem.parts.flatMap((part, index) => standings(part).map((turn): CutPiece & { part: number; turn: Turn } => {
    const { width, height } = sizeIn(part, turn);
    return { part: index, turn, width: width + gap, height: height + gap, worth: worths[index] };
  }));
  const fields = fieldsOf(problem).map((field) => ({ field, found: mixedStraightCuts(field.maxX - field.minX + gap, field.maxY - field.minY + gap, pieces) }));
  if (fields.some(({ found }) => !found)) return undefined;
  return { placements: fields.flatMap(({ field, found }) => found!.placed.map(({ piece, x, y }) => placedAt(problem, pieces[piece].part, pieces[piece].turn, field.minX + x, field.minY + y))), exact: true };
}

function fieldsOf(problem: Problem) {
  const sides = problem.parts.flatMap((part) => Object.values(sizeIn(part, part.turns[0])));
  return fieldSets(problem, Math.min(...sides))[0] ?? [];
}

/** One rotation for each way the rectangle can stand, that with the drawing's own sides first. */
function standings({ turns }: Part): Turn[] {
  return [0, 1].flatMap((quarter) => turns.find((turn) => turn % 2 === quarter) ?? []);
}

function sizeIn(part: Part, turn: Turn): { width: number; height: number } {
  const box = turnBox(boxOf(part.outline), turn);
  return { width: box.maxX - box.minX, height: box.maxY - box.minY };
}

function placedAt(problem: Problem, part: number, turn: Turn, x: number, y: number): Placement {
  const box = turnBox(boxOf(problem.parts[part].outline), turn);
  return { part, turn, x: x - box.minX, y: y - box.minY };
}
