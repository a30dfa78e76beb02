import type { NoFit } from '../../geometry/no-fit.ts';
import type { Axis, FreeInterval } from '../../geometry/no-fit-slices.ts';
import { EVERYWHERE, freeIntervals } from '../../geometry/no-fit-slices.ts';
import type { Box } from '../../geometry/point.ts';
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
  return freeOf(problem, placements, i, axis, (free) => free);
}

/** The one of those places where blank i stands now, as far as it can slide without a jump; undefined when it stands wrong. */
export function roomAround(problem: Problem, placements: readonly Placement[], i: number, axis: Axis): FreeInterval | undefined {
  const at = placements[i][axis];
  return freeOf(problem, placements, i, axis, (free) => free.filter(({ from, to }) => from <= at && at <= to))[0];
}

/** `keep` is asked after every blank which places are of interest: what lies beyond them need not be looked at. */
function freeOf(problem: Problem, placements: readonly Placement[], i: number, axis: Axis, keep: (free: FreeInterval[]) => FreeInterval[]): FreeInterval[] {
  const moving = placements[i];
  const across = axis === 'x' ? 'y' : 'x';
  const room = bodiesOf(problem, [moving]);
  if (!room || room[across][0] !== moving[across]) return [];
  const [from, to] = axis === 'x' ? [room.minX[0], room.maxX[0]] : [room.minY[0], room.maxY[0]];
  const table = noFitTable(problem);
  const gap = requiredGap(problem.rules);
  const own = spansOf(placedBox(problem, moving), axis);
  let free: FreeInterval[] = [{ from, to }];
  placements.forEach((standing, j) => {
    if (j === i || free.length === 0) return;
    const box = spansOf(placedBox(problem, standing), axis);
    if (box.across[1] + gap <= own.across[0] || own.across[1] + gap <= box.across[0]) return;
    // Only shifts between these bring the boxes within the gap along the axis.
    const first = box.along[0] - own.along[1] - gap + moving[axis];
    const last = box.along[1] - own.along[0] + gap + moving[axis];
    if (first >= free[free.length - 1].to || last <= free[0].from) return;
    const noFit = table.between(standing.part, moving.part, addTurns(moving.turn, -standing.turn));
    free = keep(intersect(free, turnedIntervals(noFit, standing.turn, axis, moving[across] - standing[across]), standing[axis]));
  });
  for (const keepOut of problem.keepOuts) {
    free = intersect(free, freeIntervals(table.against(keepOut, moving.part, moving.turn), axis, moving[across]), 0);
  }
  return keep(free);
}

/** A box's extents along an axis and across it. */
export function spansOf({ minX, minY, maxX, maxY }: Box, axis: Axis): { readonly along: readonly [number, number]; readonly across: readonly [number, number] } {
  return axis === 'x' ? { along: [minX, maxX], across: [minY, maxY] } : { along: [minY, maxY], across: [minX, maxX] };
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
