import { contactsAt } from '../../geometry/no-fit-contacts.ts';
import type { Point } from '../../geometry/point.ts';
import { addTurns, turnPoint } from '../../geometry/turn.ts';
import type { Problem } from '../../layout/problem.ts';
import { requiredGap } from '../../layout/problem.ts';
import { noFitTable } from '../no-fit-table.ts';
import { placedBox } from '../rank.ts';
import { nearPairs } from '../valid.ts';
import type { Bodies } from './bodies.ts';

/**
 * A rule between two bodies, or between a body and the sheet: distance + normal · (move of `second` − move of `first`)
 * must be at least `required`. Micrometres, doubles.
 */
export interface Contact {
  /** −1 for what cannot move. */
  readonly first: number;
  readonly second: number;
  readonly distance: number;
  readonly normalX: number;
  readonly normalY: number;
  readonly required: number;
}

/** Every contact of blanks and keep-outs that are no further apart than the distance they must keep and `slack`. */
export function contactsOf(problem: Problem, bodies: Bodies, slack: number): Contact[] {
  const { x, y, placements } = bodies;
  const table = noFitTable(problem);
  const contacts: Contact[] = [];
  const required = requiredGap(problem.rules);
  const boxes = placements.map((placement, i) => placedBox(problem, { ...placement, x: x[i], y: y[i] }));
  for (const [first, second] of nearPairs(boxes, required + slack)) {
    if (!bodies.movable[first] && !bodies.movable[second]) continue;
    const a = placements[first];
    const b = placements[second];
    const noFit = table.between(a.part, b.part, addTurns(b.turn, -a.turn));
    const shift = turnPoint({ x: x[second] - x[first], y: y[second] - y[first] }, addTurns(0, -a.turn));
    for (const contact of contactsAt(noFit, shift.x, shift.y, required + slack)) {
      const normal: Point = turnPoint({ x: contact.normalX, y: contact.normalY }, a.turn);
      contacts.push({ first, second, distance: contact.distance, normalX: normal.x, normalY: normal.y, required });
    }
  }
  for (const keepOut of problem.keepOuts) {
    for (let second = 0; second < bodies.count; second++) {
      if (!bodies.movable[second]) continue;
      const noFit = table.against(keepOut, placements[second].part, placements[second].turn);
      for (const contact of contactsAt(noFit, x[second], y[second], keepOut.clearance + slack)) {
        contacts.push({ first: -1, second, ...contact, required: keepOut.clearance });
      }
    }
  }
  return contacts;
}
