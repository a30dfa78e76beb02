import type { Problem } from '../../src/layout/problem.ts';
import { requiredGap } from '../../src/layout/problem.ts';
import type { StatedProblem } from '../../src/proof/checked-problem.ts';

/** What the checker of limits is told about a problem with one part. */
export function statedProblem(problem: Problem): StatedProblem {
  const part = problem.parts[0]!;
  return {
    outline: part.outline,
    outlineExcess: part.outlineExcess ?? 0,
    turns: part.turns,
    gap: problem.rules.commonKnife ? 0 : requiredGap(problem.rules),
    usable: problem.usable,
    keepOuts: problem.keepOuts,
    tolerance: 2,
  };
}
