import { layoutOf } from '../layout/layout-of.ts';
import type { Candidate } from '../layout/problem.ts';
import type { Methods } from '../nesting/driver.ts';
import { solveWith } from '../nesting/solve.ts';
import type { PreparedNest } from './nest.ts';
import { keepsRule, ruledMethods, ruledProblem } from './stripping-choice.ts';

type Prepared = Pick<PreparedNest, 'problem' | 'design' | 'stripping'>;

/** One search by these methods; where the wish for stripping is a rule, for layouts that keep it. Its limits are then those under the rule. */
export async function solveByRule(methods: Methods, prepared: Prepared, settings: Parameters<typeof solveWith>[2]): ReturnType<typeof solveWith> {
  const { problem, design, stripping } = prepared;
  if (stripping?.rule !== 'must') return solveWith(methods, problem, settings);
  const asLayout = ({ placements }: Candidate) => layoutOf(problem, [design], placements);
  const solution = await solveWith(ruledMethods(methods, stripping, asLayout), ruledProblem(problem, stripping), settings);
  return solution.best && !keepsRule(asLayout(solution.best), stripping) ? { ...solution, best: undefined } : solution;
}
