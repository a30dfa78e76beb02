import { inputError, type Issue } from '../base/issue.ts';
import type { Judgement } from '../layout/judge.ts';
import type { Design } from '../layout/layout-file.ts';
import { layoutOf } from '../layout/layout-of.ts';
import { placedArea, resultOf } from '../layout/outcome.ts';
import type { Candidate, Problem } from '../layout/problem.ts';
import { judgeForProduction, type SoundLayout } from '../layout/sound.ts';
import type { DriverSettings, Methods } from '../nesting/driver.ts';
import type { Effort } from '../nesting/effort.ts';
import type { Improvement, RankedLayout } from '../nesting/incumbents.ts';
import { standardMethods } from '../nesting/methods.ts';
import { solveWith, type Solution } from '../nesting/solve.ts';
import { halfOf, isHalved, wholeImprovement, wholeSolution, type Halved } from './both-sides.ts';
import { limitHolds } from './verify-limit.ts';

/**
 * One design on one sheet, ready for the search: plain data that says everything the answer depends on, so that it can be
 * asked of another thread or machine and the answer kept.
 */
export interface NestTask {
  readonly problem: Problem;
  readonly design: Design;
  /** Its mirror image, the problem's second part, where one half of the sheet carries backs. */
  readonly backDesign?: Design;
  /** How many truly different layouts are wanted. */
  readonly layouts: number;
  readonly effort: Effort;
  readonly seed: number;
}

/** A layout that the judge found sound, with how it compares. */
export interface NestedLayout {
  readonly file: SoundLayout;
  readonly ranked: RankedLayout;
}

export interface NestAnswer {
  /** Best first; at least one. */
  readonly layouts: readonly NestedLayout[];
  readonly solution: Solution & { readonly limit: NonNullable<Solution['limit']> };
  /** Layouts that the judge refused. */
  readonly notes: readonly Issue[];
}

export type Host = Pick<DriverSettings, 'runner' | 'stop' | 'onImprovement'>;

/** Searches and judges. Throws an InputError when not a single blank fits. */
export function answerTask({ problem, design, backDesign, ...settings }: NestTask, host: Host): Promise<NestAnswer> {
  return searchAndJudge(problem, backDesign ? [design, backDesign] : [design], settings, host);
}

type Settings = Pick<NestTask, 'layouts' | 'effort' | 'seed'>;

/** The same for several designs, which run parallel to the problem's parts. */
export async function searchAndJudge(problem: Problem, designs: readonly Design[], settings: Settings, host: Host): Promise<NestAnswer> {
  const { seed } = settings;
  const solution = isHalved(problem) ? await solveHalf(problem, designs, settings, host) : await search(problem, designs, settings, host);
  const { best, limit } = solution;
  if (!best || !limit) throw inputError(problem.grid ? 'grid-does-not-fit' : 'no-blank-fits', { where: designs.map(({ id }) => id).join(', '), facts: problem.grid ?? {} });
  const judged = solution.alternatives.map((ranked) => {
    const outcome = { ups: ranked.placements.length, limit, source: ranked.source, cell: solution.bestCell, seed, stopped: solution.stopped };
    const result = resultOf(outcome, problem, placedArea(problem, ranked.placements));
    return { ranked, ...judgeForProduction(layoutOf(problem, designs, ranked.placements, result)) };
  });
  const layouts = judged.flatMap(({ ranked, sound }) => (sound ? [{ file: sound, ranked }] : []));
  const refused = judged.filter(({ sound }) => !sound);
  if (layouts.length === 0) throw new Error(`the judge refused every layout: ${JSON.stringify(refused[0]?.judgement.faults[0])}`);
  return { layouts, solution: { ...solution, limit }, notes: refused.map(({ judgement }) => refusal(judgement)) };
}

function search(problem: Problem, designs: readonly Design[], settings: Settings, host: Host): Promise<Solution> {
  return solveWith(methodsFor(problem, designs), problem, { ...host, ...settings, verifyLimit: (limit) => limitHolds(problem, limit) });
}

async function solveHalf(problem: Halved, designs: readonly Design[], settings: Settings, { onImprovement, ...host }: Host): Promise<Solution> {
  const halfHost = { ...host, ...(onImprovement && { onImprovement: (event: Improvement) => onImprovement(wholeImprovement(problem, event)) }) };
  return wholeSolution(problem, await search(halfOf(problem), designs.slice(0, 1), settings, halfHost));
}

/** Whether outlines that touch share a straight rule is for the judge to say: the searches know distances only. */
function methodsFor(problem: Problem, designs: readonly Design[]): Methods {
  if (!problem.rules.commonKnife) return standardMethods;
  const judgedSound = ({ placements }: Candidate) => judgeForProduction(layoutOf(problem, designs, placements)).sound !== undefined;
  return { ...standardMethods, isValid: (_, candidate) => standardMethods.isValid(problem, candidate) || judgedSound(candidate) };
}

function refusal({ faults }: Judgement): Issue {
  const [first] = faults;
  return { code: 'layout-refused-by-judge', severity: 'warning', facts: { kind: first?.kind ?? '?', by: first?.byMm ?? 0 } };
}
