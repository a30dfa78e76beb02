import { inputError } from '../base/issue.ts';
import type { BrokenCondition } from '../estimate/stripping-conditions.ts';
import type { Design, LayoutFile } from '../layout/layout-file.ts';
import { layoutOf } from '../layout/layout-of.ts';
import type { Candidate, Limit, Problem } from '../layout/problem.ts';
import type { SoundLayout } from '../layout/sound.ts';
import type { Solution } from '../nesting/solve.ts';
import type { StrippingWish } from '../press/stripping.ts';
import { isHalved } from './both-sides.ts';
import { judgeSolution, nothingFits, solveDesigns, type Host, type Judged, type NestedLayout, type SearchEffort } from './solve-designs.ts';
import { byStripping, ruledMethods, ruledProblem, strippingVerdict } from './stripping-choice.ts';

/** What came of a wish for stripping, of the first layout. */
export interface StrippingAnswer {
  readonly wish: StrippingWish;
  /** What the layout does not keep; empty where the rule holds. */
  readonly broken: readonly BrokenCondition[];
  /** The best layout met that is not the answer: the fuller one that breaks the rule, or the one that keeps it with fewer ups. */
  readonly other?: StrippingAlternative;
  /** No layout that keeps the rule has more, where that was looked for. */
  readonly limit?: Limit;
}

export interface StrippingAlternative {
  readonly file: LayoutFile;
  readonly broken: readonly BrokenCondition[];
}

export type StrippedAnswer = Judged & { readonly solution: Solution & { readonly limit: Limit }; readonly stripping: StrippingAnswer };

/**
 * The search as always, but among equal ups what strips best; and, where that breaks the rule, once more under the rule.
 * `must` answers with what keeps the rule, `prefer` with the most ups. Limits are those without the rule. Throws an
 * InputError when no blank fits, or under `must` no layout keeps the rule.
 */
export async function solveWithStripping(problem: Problem, designs: readonly Design[], wish: StrippingWish, settings: SearchEffort, host: Host): Promise<StrippedAnswer> {
  const half = isHalved(problem) ? designs.slice(0, 1) : designs;
  const asLayout = (candidate: Candidate) => layoutOf({ ...problem, parts: problem.parts.slice(0, half.length) }, half, candidate.placements);
  const order: NonNullable<Parameters<typeof solveDesigns>[4]>['order'] = (layouts) => byStripping(layouts, wish, asLayout);
  const free = await solveDesigns(problem, designs, settings, host, { order });
  const { limit } = free;
  if (!free.best || !limit) throw nothingFits(problem, designs);
  const freely = judged(judgeSolution(problem, designs, free, limit, settings.seed), wish);
  if (freely.broken[0]!.length === 0) return answer(freely, { ...free, limit }, wish, {});

  const must = wish.rule === 'must';
  if (must) host.onStartAnew?.();
  const ruledHost = must ? host : { runner: host.runner, stop: host.stop };
  const ruled = await solveDesigns(ruledProblem(problem, wish), designs, settings, ruledHost, { order, methods: (usual) => ruledMethods(usual, wish, asLayout) });
  if (!ruled.best) {
    if (must) throw inputError('stripping-rule-impossible', { where: '--stripping-rule must', facts: { mode: wish.mode, strip: wish.leastStrip, ups: free.best.placements.length } });
    return answer(freely, { ...free, limit }, wish, {});
  }
  const kept = judged(judgeSolution(problem, designs, ruled, limit, settings.seed), wish);
  const bound = ruled.limit && ruled.limit.ups < limit.ups ? ruled.limit : limit;
  const equalUps = ruled.best.placements.length >= free.best.placements.length;
  return must || equalUps
    ? answer(kept, { ...ruled, limit }, wish, { limit: bound, ...(!equalUps && { other: alternative(freely) }) })
    : answer(freely, { ...free, limit }, wish, { limit: bound, other: alternative(kept) });
}

interface WithVerdicts extends Judged {
  /** Of each layout. */
  readonly broken: readonly (readonly BrokenCondition[])[];
}

function judged(solution: Judged, wish: StrippingWish): WithVerdicts {
  return { ...solution, broken: solution.layouts.map(({ file }) => strippingVerdict(file, wish).broken) };
}

function alternative({ layouts, broken }: WithVerdicts): StrippingAlternative {
  return { file: layouts[0]!.file, broken: broken[0]! };
}

/** Under `must` only the layouts that keep the rule; each says in its result how it stands. */
function answer({ layouts, broken, notes }: WithVerdicts, solution: StrippedAnswer['solution'], wish: StrippingWish, more: Pick<StrippingAnswer, 'other' | 'limit'>): StrippedAnswer {
  const shown = layouts.map((layout, i) => ({ layout, broken: broken[i]! })).filter((one) => wish.rule === 'prefer' || one.broken.length === 0);
  if (shown.length === 0) throw inputError('stripping-rule-impossible', { where: '--stripping-rule must', facts: { mode: wish.mode, strip: wish.leastStrip, ups: layouts[0]!.file.placements.length } });
  return {
    layouts: shown.map((one) => withResult(one.layout, { ...more, wish, broken: one.broken })),
    notes,
    solution,
    stripping: { ...more, wish, broken: shown[0]!.broken },
  };
}

function withResult({ file, ranked }: NestedLayout, { wish: { mode, rule, leastStrip }, broken, other, limit }: StrippingAnswer): NestedLayout {
  const stripping = {
    mode, rule, leastStripMm: leastStrip, kept: broken.length === 0, broken,
    ...(limit && { upperBound: limit.ups, boundBy: limit.by }),
    ...(other && { other: { ups: other.file.placements.length, kept: other.broken.length === 0, broken: other.broken } }),
  };
  // What the judge found sound stays so: it never looks at the result.
  return { ranked, file: { ...file, result: { ...file.result, stripping } } as SoundLayout };
}
