import type { Box, Ring } from '../geometry/point.ts';
import type { Turn } from '../geometry/turn.ts';

/**
 * What a limit is checked against: one outline on one sheet, as a layout file states it. Whole micrometres.
 */
export interface StatedProblem {
  /** Counter-clockwise, simple. */
  readonly outline: Ring;
  /** How far the outline may stand outside the true blank; 0 for straight outlines. */
  readonly outlineExcess: number;
  /** Allowed rotations, quarter turns counter-clockwise. */
  readonly turns: readonly Turn[];
  /** Least distance between two outlines; 0 where knives may be shared. */
  readonly gap: number;
  /** Where knives may be. */
  readonly usable: Box;
  readonly keepOuts: readonly { readonly ring: Ring; readonly clearance: number }[];
  /** By how much the judge lets every one of these be missed. */
  readonly tolerance: number;
}

/** Several designs on one sheet; `outlineExcess`: the greatest of all. */
export interface StatedMixture extends Omit<StatedProblem, 'outline' | 'turns'> {
  readonly designs: readonly Pick<StatedProblem, 'outline' | 'turns'>[];
}

/** The same in the checker's own unit, half micrometres, with all that the judge lets pass taken off distances and added to the sheet. */
export interface CheckedProblem {
  /** About the middle of its box. */
  readonly outline: Ring;
  readonly turns: readonly Turn[];
  /** Below zero: an outline less a rim of half of it is clear of the others. */
  readonly gap: number;
  /** Half the width and height of the usable area, whose middle is the origin of places. */
  readonly halfWidth: number;
  readonly halfHeight: number;
  readonly keepOuts: readonly { readonly ring: Ring; readonly clearance: number }[];
}

export function checkedProblem(stated: StatedProblem): CheckedProblem {
  const { outlineExcess, tolerance, usable } = stated;
  const out = tolerance + Math.min(1, outlineExcess);
  // A distance of nothing still lets either side reach into the other by the tolerance.
  const less = (distance: number) => (distance > tolerance ? distance - tolerance : -2 * tolerance);
  return {
    outline: doubled(stated.outline, middleOf(stated.outline)),
    turns: stated.turns,
    gap: 2 * (less(stated.gap) - 2 * outlineExcess),
    halfWidth: usable.maxX - usable.minX + 2 * out,
    halfHeight: usable.maxY - usable.minY + 2 * out,
    keepOuts: stated.keepOuts.map(({ ring, clearance }) => ({
      ring: doubled(ring, { x: usable.minX + usable.maxX, y: usable.minY + usable.maxY }),
      clearance: 2 * (less(clearance) - outlineExcess),
    })),
  };
}

/** Twice the middle of the ring's box. */
function middleOf(ring: Ring): { x: number; y: number } {
  const xs = ring.map((p) => p.x);
  const ys = ring.map((p) => p.y);
  return { x: Math.min(...xs) + Math.max(...xs), y: Math.min(...ys) + Math.max(...ys) };
}

function doubled(ring: Ring, twiceOrigin: { x: number; y: number }): Ring {
  return ring.map(({ x, y }) => ({ x: 2 * x - twiceOrigin.x, y: 2 * y - twiceOrigin.y }));
}
