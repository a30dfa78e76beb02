import type { Box } from '../../geometry/point.ts';
import type { KeepOut, Part, Problem } from '../../layout/problem.ts';
import { toMicrons } from '../../base/units.ts';
import { JUDGE_TOLERANCE_MM } from '../../layout/judge-tolerance.ts';
import { requiredGap } from '../../layout/problem.ts';

/**
 * µm by which the judge lets a distance fall short, a blank stand out or two blanks run into each other. A limit that did not grant it could lie below a
 * layout that the judge accepts.
 */
const TOLERANCE = toMicrons(JUDGE_TOLERANCE_MM);

/** The problem with everything granted that a judged layout may take: the weak side of every rule. Whole micrometres. */
export interface Granted {
  readonly usable: Box;
  readonly width: number;
  readonly height: number;
  /**
   * Outlines of a layout are at least this far apart. Below zero: outlines with a rim of half of it taken off have no inner point in common.
   */
  readonly gap: number;
  /** With the clearance lessened; below zero a blank may reach so far into the ring. */
  readonly keepOuts: readonly KeepOut[];
}

/** The judge measures true curves, which lie up to a part's `outlineExcess` inside its outline; the boxes are the same to a micrometre. */
export function grant(problem: Problem): Granted {
  const excess = Math.max(0, ...problem.parts.map((part) => part.outlineExcess ?? 0));
  const out = TOLERANCE + Math.min(1, excess);
  const { minX, minY, maxX, maxY } = problem.usable;
  const usable = { minX: minX - out, minY: minY - out, maxX: maxX + out, maxY: maxY + out };
  // Along a common knife two outlines touch, whatever the gap elsewhere.
  const gap = problem.rules.commonKnife ? 0 : requiredGap(problem.rules);
  return {
    usable,
    width: usable.maxX - usable.minX,
    height: usable.maxY - usable.minY,
    gap: lessTolerance(gap) - 2 * excess,
    keepOuts: problem.keepOuts.map((keepOut) => ({ ...keepOut, clearance: lessTolerance(keepOut.clearance) - excess })),
  };
}

/** What the judge makes of a required distance: where none is left, either outline may reach into the other by the tolerance. */
function lessTolerance(distance: number): number {
  return distance > TOLERANCE ? distance - TOLERANCE : -2 * TOLERANCE;
}

/** The only design, or nothing where there are several: most limits speak of copies of one outline. */
export function onlyPart(problem: Problem): Part | undefined {
  return problem.parts.length === 1 ? problem.parts[0] : undefined;
}

/**
 * Share taken off computed areas and lengths before they stand in a limit. Sums of some ten thousand double operations are right to better than
 * 10⁻¹¹; the rest is room.
 */
export const ROUNDING_SHARE = 1e-9;
