import { InputError } from '../base/issue.ts';
import { layoutOf } from '../layout/layout-of.ts';
import { placedArea, resultOf } from '../layout/outcome.ts';
import type { Placement, Problem } from '../layout/problem.ts';
import { judgeForProduction } from '../layout/sound.ts';
import type { Methods } from '../nesting/driver.ts';
import { closedFormLimits } from '../nesting/limits/closed-form.ts';
import { lookFrom, lookMethods, type LookDepth } from '../nesting/look.ts';
import type { NestedLayout } from './nest-task.ts';
import { prepareNest, type NestJob, type PreparedNest, type SearchSettings } from './nest.ts';
import { solveByRule } from './solve-by-rule.ts';

/** A judged layout from a quick look. */
export interface Seen {
  readonly problem: Problem;
  readonly layout: NestedLayout;
  readonly upperBound: number;
  /** Counted work. */
  readonly work: number;
}

export interface LookSettings {
  readonly depth: LookDepth;
  /** Blanks that are known to fit, or nearly: where patterns find no more than these, a little free search starts from them. */
  readonly start?: readonly Placement[] | undefined;
}

/** Undefined where no blank goes onto the sheet. */
export type Look = (job: NestJob, settings: LookSettings) => Promise<Seen | undefined>;

/** Quick looks at one drawing under many settings. */
export function createLook({ seed, runner, stop }: Pick<SearchSettings, 'seed' | 'runner' | 'stop'>): Look {
  return async (job, { depth, start }) => {
    const prepared = preparedOrNone(job);
    if (!prepared) return undefined;
    const { problem, stripping } = prepared;
    const solveBy = (methods: Methods) => solveByRule(methods, prepared, { effort: 'quick', seed, runner, stop });
    let solution = await solveBy(lookMethods(depth));
    let { work } = solution;
    if (start && (solution.best?.placements.length ?? 0) <= start.length) {
      const fromStart = await solveBy(lookFrom({ placements: start, source: solution.best?.source ?? '' }));
      work += fromStart.work;
      if ((fromStart.best?.placements.length ?? 0) > (solution.best?.placements.length ?? 0)) solution = fromStart;
    }
    const { best, bestCell, stopped } = solution;
    // The limit is that of the sheet, as always: of any layout, whether it keeps the rule or not.
    const limit = stripping?.rule === 'must' ? closedFormLimits(problem)[0] : solution.limit;
    if (!best || !limit) return undefined;
    const result = resultOf({ ups: best.placements.length, limit, source: best.source, cell: bestCell, seed, stopped }, problem, placedArea(problem, best.placements));
    const { sound, judgement } = judgeForProduction(layoutOf(problem, [prepared.design], best.placements, result));
    if (!sound) throw new Error(`the judge refused a layout: ${JSON.stringify(judgement.faults[0])}`);
    return { problem, layout: { file: sound, ranked: best }, upperBound: limit.ups, work };
  };
}

/** The search's problem for a job; undefined where no blank goes onto the sheet. */
export function preparedOrNone(job: NestJob): PreparedNest | undefined {
  try {
    return prepareNest(job);
  } catch (error) {
    if (error instanceof InputError && error.issues.every(({ code }) => DOES_NOT_FIT.has(code))) return undefined;
    throw error;
  }
}

const DOES_NOT_FIT: ReadonlySet<string> = new Set(['blank-larger-than-usable', 'nothing-left-of-sheet']);
