import { inputError, type InputError, type Issue } from '../base/issue.ts';
import type { Judgement } from '../layout/judge.ts';
import type { Design } from '../layout/layout-file.ts';
import { layoutOf } from '../layout/layout-of.ts';
import { placedArea, resultOf } from '../layout/outcome.ts';
import type { Candidate, Limit, Problem } from '../layout/problem.ts';
import { judgeForProduction, type SoundLayout } from '../layout/sound.ts';
import type { DriverSettings, Methods } from '../nesting/driver.ts';
import type { Effort } from '../nesting/effort.ts';
import type { Improvement, RankedLayout } from '../nesting/incumbents.ts';
import { beginningFrom } from '../nesting/look.ts';
import { standardMethods } from '../nesting/methods.ts';
import { solveWith, type Solution, type SolveSettings } from '../nesting/solve.ts';
import { halfOf, isHalved, wholeImprovement, wholeSolution, type Halved } from './both-sides.ts';
import { limitHolds } from './verify-limit.ts';

/** A layout that the judge found sound, with how it compares. */
export interface NestedLayout {
  readonly file: SoundLayout;
  readonly ranked: RankedLayout;
}

export interface SearchEffort {
  /** How many truly different layouts are wanted. */
  readonly layouts: number;
  /** A layout to begin from. */
  readonly start?: Candidate;
  readonly effort: Effort;
  readonly seed: number;
}

export interface Host extends Pick<DriverSettings, 'runner' | 'stop' | 'onImprovement'> {
  /** The search starts anew under another rule: what was told of it so far is no history of the answer. */
  readonly onStartAnew?: (() => void) | undefined;
}

/** What a run may do otherwise than usual. A candidate may be that of one half of the sheet, where `methods` and `order` see it. */
export interface Otherwise extends Pick<SolveSettings, 'order'> {
  readonly methods?: (usual: Methods) => Methods;
}

/** Several designs, which run parallel to the problem's parts; of work-and-turn and tumble one half is searched. */
export function solveDesigns(problem: Problem, designs: readonly Design[], settings: SearchEffort, host: Host, otherwise: Otherwise = {}): Promise<Solution> {
  return isHalved(problem) ? solveHalf(problem, designs, settings, host, otherwise) : search(problem, designs, settings, host, otherwise);
}

function search(problem: Problem, designs: readonly Design[], { start, ...settings }: SearchEffort, host: Host, { methods = (usual) => usual, ...order }: Otherwise): Promise<Solution> {
  const usual = methodsFor(problem, designs);
  return solveWith(methods(start ? beginningFrom(start, usual) : usual), problem, { ...host, ...settings, ...order, verifyLimit: (limit) => limitHolds(problem, limit) });
}

async function solveHalf(problem: Halved, designs: readonly Design[], settings: SearchEffort, { onImprovement, ...host }: Host, otherwise: Otherwise): Promise<Solution> {
  const halfHost = { ...host, ...(onImprovement && { onImprovement: (event: Improvement) => onImprovement(wholeImprovement(problem, event)) }) };
  return wholeSolution(problem, await search(halfOf(problem), designs.slice(0, 1), settings, halfHost, otherwise));
}

/** Whether outlines that touch share a straight rule is for the judge to say: the searches know distances only. */
function methodsFor(problem: Problem, designs: readonly Design[]): Methods {
  if (!problem.rules.commonKnife) return standardMethods;
  const judgedSound = ({ placements }: Candidate) => judgeForProduction(layoutOf(problem, designs, placements)).sound !== undefined;
  return { ...standardMethods, isValid: (_, candidate) => standardMethods.isValid(problem, candidate) || judgedSound(candidate) };
}

export interface Judged {
  /** Best first; at least one. */
  readonly layouts: readonly NestedLayout[];
  /** Layouts that the judge refused. */
  readonly notes: readonly Issue[];
}

/** The layouts found, judged under the problem's rules, with the limit of all its layouts. */
export function judgeSolution(problem: Problem, designs: readonly Design[], solution: Solution, limit: Limit, seed: number): Judged {
  const judged = solution.alternatives.map((ranked) => {
    const outcome = { ups: ranked.placements.length, limit, source: ranked.source, cell: solution.bestCell, seed, stopped: solution.stopped };
    const result = resultOf(outcome, problem, placedArea(problem, ranked.placements));
    return { ranked, ...judgeForProduction(layoutOf(problem, designs, ranked.placements, result)) };
  });
  const layouts = judged.flatMap(({ ranked, sound }) => (sound ? [{ file: sound, ranked }] : []));
  const refused = judged.filter(({ sound }) => !sound);
  if (layouts.length === 0) throw new Error(`the judge refused every layout: ${JSON.stringify(refused[0]?.judgement.faults[0])}`);
  return { layouts, notes: refused.map(({ judgement }) => refusal(judgement)) };
}

function refusal({ faults }: Judgement): Issue {
  const [first] = faults;
  return { code: 'layout-refused-by-judge', severity: 'warning', facts: { kind: first?.kind ?? '?', by: first?.byMm ?? 0 } };
}

export function nothingFits(problem: Problem, designs: readonly Design[]): InputError {
  return inputError(problem.grid ? 'grid-does-not-fit' : 'no-blank-fits', { where: designs.map(({ id }) => id).join(', '), facts: problem.grid ?? {} });
}
