import type { Box } from '../../geometry/point.ts';
import type { Placement } from '../../layout/problem.ts';
import { createFrame, placeItems, type Frame, type PatternPart } from './frame.ts';
import { irregularity, stackName } from './pattern-name.ts';
import { pitchTable, rowChoices } from './row-choices.ts';
import type { RowKind } from './rows.ts';
import { alternatingLifts, bestStack, countOf, itemsOf, type StackedRow, type StackProblem } from './row-stack.ts';

export interface FilledField {
  /** What a person calls the pattern. */
  readonly name: string;
  readonly placements: readonly Placement[];
}

/** Rows offered to the stacking of one field, at most: the time grows with their square. */
export const MOST_ROWS = 84;

/** A field filled with stacks of rows along both axes, most blanks first. */
export function stackedFields(owner: PatternPart, field: Box, kindsFor: (frame: Frame) => readonly RowKind[], mostRows = MOST_ROWS): FilledField[] {
  return [false, true]
    .flatMap((swapped) => {
      const frame = createFrame(owner, field, swapped);
      return stacksOf(frame, kindsFor(frame), mostRows).map((stack) => ({ name: stackName(stack, frame), placements: placeItems(frame, itemsOf(stack)) }));
    })
    .filter(({ placements }) => placements.length > 0)
    .toSorted((a, b) => b.placements.length - a.placements.length);
}

/** Stacks of rows that fill a field: the best of one row or two by turns, and the best mixture if it holds more. */
function stacksOf(frame: Frame, kinds: readonly RowKind[], mostRows: number): StackedRow[][] {
  const rows = rowChoices(frame, kinds, mostRows);
  if (rows.length === 0) return [];
  const limit = Math.floor((frame.width * frame.height) / frame.owner.area);
  const problem: StackProblem = { rows, pitches: pitchTable(rows, frame.spacing), depth: frame.height, gap: frame.spacing.gap, limit };
  const regular = bestAlternating(problem);
  const mixed = bestStack(problem);
  return countOf(mixed) > countOf(regular) ? [regular, mixed] : [regular];
}

function bestAlternating(problem: StackProblem): StackedRow[] {
  const { rows } = problem;
  let [best, most]: [StackedRow[], number] = [[], 0];
  for (let first = 0; first < rows.length; first++) {
    for (let second = 0; second < rows.length; second++) {
      const lifts = alternatingLifts(problem, first, second);
      const count = Math.ceil(lifts.length / 2) * rows[first].items.length + Math.floor(lifts.length / 2) * rows[second].items.length;
      if (count === 0 || count < most) continue;
      const stack = lifts.map((y, place) => ({ row: rows[place % 2 === 0 ? first : second], y }));
      if (count > most || irregularity(stack) < irregularity(best)) [best, most] = [stack, count];
    }
  }
  return best;
}
