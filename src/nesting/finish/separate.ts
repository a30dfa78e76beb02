import type { Placement, Problem } from '../../layout/problem.ts';
import { layoutIsValid } from '../valid.ts';
import type { Bodies } from './bodies.ts';
import { bodiesOf } from './bodies.ts';
import { contactsOf } from './contacts.ts';
import { spread } from './move-program.ts';
import { project } from './projection.ts';
import { MARGIN_FOR_ROUNDING, settled } from './settled.ts';

/** Contacts are collected this far beyond the distance to be kept, µm. */
const SLACK = 600;
/** Times contacts are collected and projected; two to four are usual. */
const ROUNDS = 14;
/** Rules kept by this much, µm, count as kept: doubles are better by far. */
const LEAST_MARGIN = 0.02;
/** A round that leaves more than this share of the lack before it has got stuck. */
const PROGRESS = 0.9;
/** Lack after which projection is given up and not handed to the linear program, µm. */
const HOPELESS = 150;
/** Moves that the linear programs may make along either axis, µm, one after another. */
const TRUSTS = [300, 50, 50];

/**
 * Moves a layout whose blanks overlap a little, or keep a little less than their distance, to one on whole micrometres that
 * keeps every rule; undefined when it does not get there. No rotation changes, no blank goes far, locked ones stay. First
 * successive projection onto the contact rules, then linear programs for what is left. The answer is exact: it has passed
 * `layoutIsValid`. Needs `prepareLinearPrograms`.
 */
export function separate(problem: Problem, placements: readonly Placement[]): Placement[] | undefined {
  if (layoutIsValid(problem, placements)) return [...placements];
  const bodies = bodiesOf(problem, placements);
  if (!bodies) return undefined;
  const lack = projectInRounds(problem, bodies);
  const found = lack <= MARGIN_FOR_ROUNDING ? settled(problem, bodies) : undefined;
  return found ?? (lack <= HOPELESS ? spreadInRounds(problem, bodies) : undefined);
}

/** Projects until every distance is kept or a round brings no progress; returns the largest lack left. */
function projectInRounds(problem: Problem, bodies: Bodies): number {
  let least = Infinity;
  for (let round = 0; ; round++) {
    const contacts = contactsOf(problem, bodies, SLACK);
    const lack = contacts.reduce((most, { required, distance }) => Math.max(most, required + LEAST_MARGIN - distance), 0);
    if (round === ROUNDS || (round > 0 && lack === 0) || lack > PROGRESS * least) return lack;
    least = lack;
    project(bodies, contacts, MARGIN_FOR_ROUNDING);
  }
}

function spreadInRounds(problem: Problem, bodies: Bodies): Placement[] | undefined {
  for (const trust of TRUSTS) {
    const slack = spread(bodies, contactsOf(problem, bodies, SLACK), trust, MARGIN_FOR_ROUNDING);
    if (slack === undefined) return undefined;
    const found = slack >= -MARGIN_FOR_ROUNDING ? settled(problem, bodies) : undefined;
    if (found) return found;
  }
  return undefined;
}
