import { toMicrons } from '../base/units.ts';
import { JUDGE_TOLERANCE_MM } from '../layout/judge-tolerance.ts';
import { requiredGap, type Limit, type Problem } from '../layout/problem.ts';
import { checkLimit } from '../proof/check.ts';
import type { StatedProblem } from '../proof/checked-problem.ts';

/**
 * Whether a limit may be claimed: closed forms stand by themselves; one with a certificate only when the checker, which
 * shares nothing with the search for it, comes to a limit as low.
 */
export function limitHolds(problem: Problem, { ups, certificate }: Limit): boolean {
  if (certificate === undefined) return true;
  const checked = checkLimit(certificate, statedProblem(problem));
  return checked.ok && checked.ups <= ups;
}

/** The problem as the checker wants it: one outline on one sheet. */
export function statedProblem({ parts, usable, rules, keepOuts }: Problem): StatedProblem {
  const [part] = parts;
  return {
    outline: part.outline,
    outlineExcess: part.outlineExcess ?? 0,
    turns: part.turns,
    gap: rules.commonKnife ? 0 : requiredGap(rules),
    usable,
    keepOuts,
    tolerance: toMicrons(JUDGE_TOLERANCE_MM),
  };
}
