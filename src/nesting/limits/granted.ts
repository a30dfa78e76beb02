import type { Box, Ring } from '../../geometry/point.ts';
import type { KeepOut, Problem } from '../../layout/problem.ts';
import { requiredGap } from '../../layout/problem.ts';

/**
 * µm by which the judge lets a distance fall short or a blank stand out (src/layout/judge). A limit that did not grant it could lie below a
 * layout that the judge accepts.
 */
export const JUDGE_TOLERANCE = 2;

/** The problem with everything granted that a judged layout may take: the weak side of every rule. Whole micrometres. */
export interface Granted {
  readonly usable: Box;
  readonly width: number;
  readonly height: number;
  /**
   * Outlines of a layout are at least this far apart. Below zero: they may run into each other, but can be parted by a move of this length.
   */
  readonly gap: number;
  /** With the clearance lessened; below zero a blank may reach so far into the ring. */
  readonly keepOuts: readonly KeepOut[];
}

/**
 * `outlineExcess` is the most, in µm, by which an outline stands outside the true blank (its arcs are flattened to the outside): the judge
 * measures true curves, so true distances may exceed those between outlines by twice that.
 */
export function grant(problem: Problem, outlineExcess = 0): Granted {
  const { minX, minY, maxX, maxY } = problem.usable;
  const out = JUDGE_TOLERANCE + outlineExcess;
  const usable = { minX: minX - out, minY: minY - out, maxX: maxX + out, maxY: maxY + out };
  // Along a common knife two outlines touch, whatever the gap elsewhere.
  const gap = problem.rules.commonKnife ? 0 : requiredGap(problem.rules);
  return {
    usable,
    width: usable.maxX - usable.minX,
    height: usable.maxY - usable.minY,
    gap: gap - JUDGE_TOLERANCE - 2 * outlineExcess,
    keepOuts: problem.keepOuts.map((keepOut) => ({ ...keepOut, clearance: keepOut.clearance - out })),
  };
}

/** The outline of the only design, or nothing where there are several: most limits speak of copies of one outline. */
export function onlyOutline(problem: Problem): Ring | undefined {
  return problem.parts.length === 1 ? problem.parts[0]!.outline : undefined;
}

/**
 * Share taken off computed areas and lengths before they stand in a limit. Sums of some ten thousand double operations are right to better than
 * 10⁻¹¹; the rest is room.
 */
export const ROUNDING_SHARE = 1e-9;
