import type { Placement, Problem } from '../../layout/problem.ts';
import { layoutIsValid } from '../valid.ts';
import type { Bodies } from './bodies.ts';
import { wholePlacements } from './bodies.ts';
import { repair } from './repair.ts';

/** Distance to aim at beyond the required one before rounding, µm: each of two blanks moves by up to 0.71. */
export const MARGIN_FOR_ROUNDING = 1.5;
/** How far the repair may move a blank, µm. */
const REPAIR_REACH = 6;

/** The bodies on whole micrometres with every rule kept, exactly; undefined when rounding and repair do not get there. */
export function settled(problem: Problem, bodies: Bodies): Placement[] | undefined {
  const whole = wholePlacements(bodies);
  if (layoutIsValid(problem, whole)) return whole;
  const repaired = repair(problem, whole, REPAIR_REACH);
  return layoutIsValid(problem, repaired) ? repaired : undefined;
}
