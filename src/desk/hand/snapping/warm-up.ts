import { TURNS } from '../../../geometry/turn.ts';
import { noFitTable } from '../../../nesting/no-fit-table.ts';
import type { SheetDocument } from '../document.ts';
import type { SheetFrame } from '../sheet-frame.ts';

/**
 * Makes the no-fit polygons that a hand will ask for, one a step, so that a page can do it while it rests: of a carton of
 * 300 points each takes tens of milliseconds, too long for a frame in the middle of a drag.
 */
export function* warmUp({ blanks }: SheetDocument, { problem }: SheetFrame): Generator<void> {
  const table = noFitTable(problem);
  const parts = [...new Set(blanks.map(({ part }) => part))];
  for (const a of parts) {
    for (const b of parts) {
      for (const turn of TURNS) {
        if (!isPossible(problem.parts[a].turns, problem.parts[b].turns, turn)) continue;
        table.between(a, b, turn);
        yield;
      }
    }
  }
  for (const keepOut of problem.keepOuts) {
    for (const part of parts) {
      for (const turn of problem.parts[part].turns) {
        table.against(keepOut, part, turn);
        yield;
      }
    }
  }
}

function isPossible(first: readonly number[], second: readonly number[], difference: number): boolean {
  return first.some((from) => second.some((to) => (to - from + 4) % 4 === difference));
}
