import { InputError } from '../base/issue.ts';
import { layoutOf } from '../layout/layout-of.ts';
import { placedArea, resultOf } from '../layout/outcome.ts';
import type { Part, Problem } from '../layout/problem.ts';
import { judgeForProduction } from '../layout/sound.ts';
import { lookMethods, type LookDepth } from '../nesting/look.ts';
import { solveWith } from '../nesting/solve.ts';
import { prepareNest, type NestedLayout, type NestJob, type SearchSettings } from './nest.ts';

/** A judged layout from a quick look. */
export interface Seen {
  readonly problem: Problem;
  readonly layout: NestedLayout;
  readonly upperBound: number;
  /** Counted work. */
  readonly work: number;
}

/** Undefined where no blank goes onto the sheet. */
export type Look = (job: NestJob, depth: LookDepth) => Promise<Seen | undefined>;

/**
 * Quick looks with regular patterns at one drawing under many settings. Problems of the same outlines and rotations share
 * their parts, and by them their tables.
 */
export function createLook({ seed, runner, stop }: SearchSettings): Look {
  const shared = new Map<string, readonly Part[]>();
  return async (job, depth) => {
    const prepared = preparedOrNone(job);
    if (!prepared) return undefined;
    const { design } = prepared;
    const key = JSON.stringify([design.outline, prepared.problem.parts[0].turns]);
    const parts = shared.get(key) ?? prepared.problem.parts;
    shared.set(key, parts);
    const problem = { ...prepared.problem, parts };
    const { best, limit, bestCell, stopped, work } = await solveWith(lookMethods(depth), problem, { effort: 'quick', seed, runner, stop });
    if (!best || !limit) return undefined;
    const result = resultOf({ ups: best.placements.length, limit, source: best.source, cell: bestCell, seed, stopped }, problem, placedArea(problem, best.placements));
    const { sound, judgement } = judgeForProduction(layoutOf(problem, [design], best.placements, result));
    if (!sound) throw new Error(`the judge refused a pattern: ${JSON.stringify(judgement.faults[0])}`);
    return { problem, layout: { file: sound, ranked: best }, upperBound: limit.ups, work };
  };
}

function preparedOrNone(job: NestJob) {
  try {
    return prepareNest(job);
  } catch (error) {
    if (error instanceof InputError && error.issues.every(({ code }) => DOES_NOT_FIT.has(code))) return undefined;
    throw error;
  }
}

const DOES_NOT_FIT: ReadonlySet<string> = new Set(['blank-larger-than-usable', 'nothing-left-of-sheet']);
