import type { Frame } from './frame.ts';
import { irregularity } from './pattern-name.ts';
import { pitchTable, rowChoices } from './row-choices.ts';
import type { RowKind } from './rows.ts';
import { alternatingStack, bestStack, countOf, type StackedRow, type StackProblem } from './row-stack.ts';

/** Stacks of rows that fill a field: the best of one row or two by turns, and the best mixture if it holds more. */
export function stacksOf(frame: Frame, kinds: readonly RowKind[]): StackedRow[][] {
  const rows = rowChoices(frame, kinds);
  if (rows.length === 0) return [];
  const limit = Math.floor((frame.width * frame.height) / frame.owner.area);
  const problem: StackProblem = { rows, pitches: pitchTable(rows, frame.spacing), depth: frame.height, gap: frame.spacing.gap, limit };
  const regular = bestAlternating(problem);
  const mixed = bestStack(problem);
  return countOf(mixed) > countOf(regular) ? [regular, mixed] : [regular];
}

function bestAlternating(problem: StackProblem): StackedRow[] {
  let best: StackedRow[] = [];
  for (let first = 0; first < problem.rows.length; first++) {
    for (let second = 0; second < problem.rows.length; second++) {
      const stack = alternatingStack(problem, first, second);
      const more = countOf(stack) - countOf(best);
      if (more > 0 || (more === 0 && stack.length > 0 && irregularity(stack) < irregularity(best))) best = stack;
    }
  }
  return best;
}
