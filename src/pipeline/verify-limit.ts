import { toMicrons } from '../base/units.ts';
import { JUDGE_TOLERANCE_MM } from '../layout/judge-tolerance.ts';
import { requiredGap, type Limit, type Problem } from '../layout/problem.ts';
import { checkLimit } from '../proof/check.ts';
import type { StatedMixture, StatedProblem } from '../proof/checked-problem.ts';

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
export function statedProblem(problem: Problem): StatedProblem {
  const { designs: [design], ...sheet } = statedMixture(problem);
  return { ...sheet, ...design! };
}

/** The same of several outlines on one sheet. */
export function statedMixture({ parts, usable, rules, keepOuts }: Problem): StatedMixture {
  return {
    designs: parts.map(({ outline, turns }) => ({ outline, turns })),
    outlineExcess: Math.max(0, ...parts.map((part) => part.outlineExcess ?? 0)),
    gap: rules.commonKnife ? 0 : requiredGap(rules),
    usable,
    keepOuts,
    tolerance: toMicrons(JUDGE_TOLERANCE_MM),
  };
}
