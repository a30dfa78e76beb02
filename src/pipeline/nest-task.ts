import type { Issue } from '../base/issue.ts';
import type { Design } from '../layout/layout-file.ts';
import type { Problem } from '../layout/problem.ts';
import type { Solution } from '../nesting/solve.ts';
import type { StrippingWish } from '../press/stripping.ts';
import { judgeSolution, nothingFits, solveDesigns, type Host, type NestedLayout, type SearchEffort } from './solve-designs.ts';
import { solveWithStripping, type StrippingAnswer } from './solve-with-stripping.ts';

export type { Host, NestedLayout } from './solve-designs.ts';

/**
 * One design on one sheet, ready for the search: plain data that says everything the answer depends on, so that it can be
 * asked of another thread or machine and the answer kept.
 */
export interface NestTask extends SearchEffort {
  readonly problem: Problem;
  readonly design: Design;
  /** Its mirror image, the problem's second part, where one half of the sheet carries backs. */
  readonly backDesign?: Design;
  /** How the waste is taken off; absent: not looked at. */
  readonly stripping?: StrippingWish | undefined;
}

export interface NestAnswer {
  /** Best first; at least one. */
  readonly layouts: readonly NestedLayout[];
  readonly solution: Solution & { readonly limit: NonNullable<Solution['limit']> };
  /** Layouts that the judge refused. */
  readonly notes: readonly Issue[];
  /** Where a wish for stripping was given. */
  readonly stripping?: StrippingAnswer;
}

/** Searches and judges. Throws an InputError when not a single blank fits, or none as the rule for stripping wants. */
export function answerTask({ problem, design, backDesign, stripping, ...settings }: NestTask, host: Host): Promise<NestAnswer> {
  const designs = backDesign ? [design, backDesign] : [design];
  return stripping ? solveWithStripping(problem, designs, stripping, settings, host) : searchAndJudge(problem, designs, settings, host);
}

/** The same for several designs, which run parallel to the problem's parts. */
export async function searchAndJudge(problem: Problem, designs: readonly Design[], settings: SearchEffort, host: Host): Promise<NestAnswer> {
  const solution = await solveDesigns(problem, designs, settings, host);
  const { best, limit } = solution;
  if (!best || !limit) throw nothingFits(problem, designs);
  return { ...judgeSolution(problem, designs, solution, limit, settings.seed), solution: { ...solution, limit } };
}
