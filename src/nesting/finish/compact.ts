import type { Placement, Problem } from '../../layout/problem.ts';
import { requiredGap } from '../../layout/problem.ts';
import { placedBox } from '../rank.ts';
import { bodiesOf } from './bodies.ts';
import { contactsOf } from './contacts.ts';
import { roomAround } from './free-places.ts';
import type { Direction } from './move-program.ts';
import { push } from './move-program.ts';
import { MARGIN_FOR_ROUNDING, settled } from './settled.ts';

/** Most linear programs one after another. */
const ROUNDS = 30;
/** Moves that one linear program may make along either axis, µm, as a share of the gap or this at least. */
const LEAST_TRUST = 2000;
/** A program that brings the rear forward by less than this, µm, is the last. */
const LEAST_GAIN = 20;
/** Most rounds of single slides. */
const SLIDES = 8;

/**
 * Pushes a valid layout towards the gripper edge or the side lay: first all blanks together by linear programs, then one by
 * one to exact contact. The layout returned is valid, on whole micrometres, and reaches no further from that edge than
 * the one given; locked blanks stay. Needs `prepareLinearPrograms`.
 */
export function compact(problem: Problem, placements: readonly Placement[], towards: 'gripper' | 'lay'): Placement[] {
  const direction: Direction = towards === 'gripper' ? { axis: 'y', sign: -1 } : { axis: 'x', sign: problem.lay === 'left' ? -1 : 1 };
  let best = [...placements];
  for (let round = 0; round < ROUNDS; round++) {
    const pushed = pushedOnce(problem, best, direction);
    if (!pushed) break;
    const gain = rear(problem, best, direction) - rear(problem, pushed, direction);
    if (gain < 0) break;
    best = pushed;
    if (gain < LEAST_GAIN) break;
  }
  return slid(problem, best, direction);
}

function pushedOnce(problem: Problem, placements: readonly Placement[], direction: Direction): Placement[] | undefined {
  const bodies = bodiesOf(problem, placements);
  if (!bodies) return undefined;
  const trust = Math.max(LEAST_TRUST, requiredGap(problem.rules));
  // Two blanks may come nearer by twice the trust along both axes.
  const contacts = contactsOf(problem, bodies, 3 * trust);
  if (!push(bodies, contacts, trust, MARGIN_FOR_ROUNDING, direction)) return undefined;
  return settled(problem, bodies);
}

/** How far the layout reaches back from the edge it is pushed to, but for a constant. */
function rear(problem: Problem, placements: readonly Placement[], { axis, sign }: Direction): number {
  return placements.reduce((most, placement) => {
    const box = placedBox(problem, placement);
    return Math.max(most, sign < 0 ? (axis === 'x' ? box.maxX : box.maxY) : axis === 'x' ? -box.minX : -box.minY);
  }, -Infinity);
}

/** Every blank, the foremost first, slid forward as far as it goes without a jump, until none moves. */
function slid(problem: Problem, placements: readonly Placement[], { axis, sign }: Direction): Placement[] {
  const slidden = [...placements];
  for (let round = 0; round < SLIDES; round++) {
    let moved = false;
    const order = slidden.map((_, i) => i).sort((i, j) => sign * (slidden[j][axis] - slidden[i][axis]) || i - j);
    for (const i of order) {
      const at = slidden[i][axis];
      const room = roomAround(problem, slidden, i, axis);
      const end = room ? (sign < 0 ? room.from : room.to) : at;
      if (end === at) continue;
      slidden[i] = { ...slidden[i], [axis]: end };
      moved = true;
    }
    if (!moved) break;
  }
  return slidden;
}
