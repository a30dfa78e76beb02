import type { NoFit } from '../../geometry/no-fit.ts';
import type { Axis, FreeInterval } from '../../geometry/no-fit-slices.ts';
import { EVERYWHERE, freeIntervals } from '../../geometry/no-fit-slices.ts';
import type { Turn } from '../../geometry/turn.ts';
import { addTurns, turnPoint } from '../../geometry/turn.ts';
import type { Placement, Problem } from '../../layout/problem.ts';
import { requiredGap } from '../../layout/problem.ts';
import { noFitTable } from '../no-fit-table.ts';
import { placedBox } from '../rank.ts';
import { bodiesOf } from './bodies.ts';

/**
 * Where blank i may stand along one axis, the other coordinate as it is and all other blanks where they are: whole
 * micrometres, exact, sorted. Empty when nowhere; a locked blank stays where it is.
 */
export function freePlaces(problem: Problem, placements: readonly Placement[], i: number, axis: Axis): FreeInterval[] {
  const moving = placements[i];
  const across = axis === 'x' ? 'y' : 'x';
  const room = bodiesOf(problem, [moving]);
  if (!room || room[across][0] !== moving[across]) return [];
  const [from, to] = axis === 'x' ? [room.minX[0], room.maxX[0]] : [room.minY[0], room.maxY[0]];
  const table = noFitTable(problem);
  const gap = requiredGap(problem.rules);
  const own = placedBox(problem, moving);
  let free: FreeInterval[] = [{ from, to }];
  placements.forEach((standing, j) => {
    if (j === i || free.length === 0) return;
    const box = placedBox(problem, standing);
    const passes = axis === 'x' ? box.maxY + gap <= own.minY || own.maxY + gap <= box.minY : box.maxX + gap <= own.minX || own.maxX + gap <= box.minX;
    if (passes) return;
    const noFit = table.between(standing.part, moving.part, addTurns(moving.turn, -standing.turn));
    free = intersect(free, turnedIntervals(noFit, standing.turn, axis, moving[across] - standing[across]), standing[axis]);
  });
  for (const keepOut of problem.keepOuts) {
    free = intersect(free, freeIntervals(table.against(keepOut, moving.part, moving.turn), axis, moving[across]), 0);
  }
  return free;
}

/** Free intervals of a no-fit polygon that is turned by `turn`, along an axis of the sheet, within the window. */
export function turnedIntervals(noFit: NoFit, turn: Turn, axis: Axis, at: number, window = EVERYWHERE): FreeInterval[] {
  const back = addTurns(0, -turn);
  const along = turnPoint(axis === 'x' ? { x: 1, y: 0 } : { x: 0, y: 1 }, back);
  const across = turnPoint(axis === 'x' ? { x: 0, y: at } : { x: at, y: 0 }, back);
  const own: Axis = along.x !== 0 ? 'x' : 'y';
  const ownAt = own === 'x' ? across.y : across.x;
  if (along.x + along.y > 0) return freeIntervals(noFit, own, ownAt, window);
  return freeIntervals(noFit, own, ownAt, reversed(window)).map(reversed).reverse();
}

function reversed({ from, to }: FreeInterval): FreeInterval {
  return { from: -to + 0, to: -from + 0 };
}

/** What lies in one of `a` and, moved by `shiftOfB`, in one of `b`. */
export function intersect(a: readonly FreeInterval[], b: readonly FreeInterval[], shiftOfB: number): FreeInterval[] {
  const both: FreeInterval[] = [];
  for (const p of a) {
    for (const q of b) {
      const from = Math.max(p.from, q.from + shiftOfB);
      const to = Math.min(p.to, q.to + shiftOfB);
      if (from <= to) both.push({ from, to });
    }
  }
  return both;
}
