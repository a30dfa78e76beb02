import type { Axis, FreeInterval } from '../geometry/no-fit-slices.ts';
import { EVERYWHERE, freeIntervals } from '../geometry/no-fit-slices.ts';
import { addTurns } from '../geometry/turn.ts';
import type { Placement, Problem } from '../layout/problem.ts';
import { requiredGap } from '../layout/problem.ts';
import { intersect, spansOf, turnedIntervals } from './finish/free-places.ts';
import { noFitTable } from './no-fit-table.ts';
import { placedBox } from './rank.ts';

/**
 * Where a group of blanks may go as a whole along one axis, moved by `across` along the other: the whole shifts at which
 * every one of them keeps the required gap to all that stand and the clearance of keep-outs. Sorted, exact, bounded by the
 * window and not by the sheet; the group's blanks among themselves are not looked at.
 */
export function groupShifts(problem: Problem, moving: readonly Placement[], standing: readonly Placement[], axis: Axis, across: number, window = EVERYWHERE): FreeInterval[] {
  let free: FreeInterval[] = [window];
  const spans = standing.map((placement) => spansOf(placedBox(problem, placement), axis));
  const gap = requiredGap(problem.rules);
  const table = noFitTable(problem);
  const other = axis === 'x' ? 'y' : 'x';
  for (const blank of moving) {
    const own = spansOf(placedBox(problem, blank), axis);
    standing.forEach((stands, j) => {
      if (free.length === 0) return;
      const box = spans[j];
      if (box.across[1] <= own.across[0] + across - gap || box.across[0] >= own.across[1] + across + gap) return;
      if (box.along[1] <= own.along[0] + window.from - gap || box.along[0] >= own.along[1] + window.to + gap) return;
      const noFit = table.between(stands.part, blank.part, addTurns(blank.turn, -stands.turn));
      const apart = blank[axis] - stands[axis];
      free = intersect(free, turnedIntervals(noFit, stands.turn, axis, blank[other] + across - stands[other], shifted(window, apart)), -apart);
    });
    for (const keepOut of problem.keepOuts) {
      const intervals = freeIntervals(table.against(keepOut, blank.part, blank.turn), axis, blank[other] + across, shifted(window, blank[axis]));
      free = intersect(free, intervals, -blank[axis]);
    }
  }
  return free;
}

function shifted({ from, to }: FreeInterval, by: number): FreeInterval {
  return { from: from + by, to: to + by };
}
