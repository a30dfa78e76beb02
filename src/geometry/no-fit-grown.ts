import type { NoFit } from './no-fit.ts';
import { noFitOutline } from './no-fit-outline.ts';
import type { Grown } from './offset.ts';
import { growPolygon } from './offset.ts';

/** Rounding of corners where edges of the outline cross, µm. */
const CORNER_ROUNDING = Math.SQRT1_2;

/**
 * The forbidden shifts of a no-fit polygon with its gap as one polygon: free pockets are holes; slits and single points
 * are gone, for a gap closes them. Arcs stand out by at most the arc tolerance. It holds the true set but for the rounding of at most
 * 0.71 µm beside slanted edges that end where edges cross; axis-parallel edges, and so the box, are exact.
 *
 * A construction, to be drawn or measured; `forbids` and `freeIntervals` take the gap as a true disc.
 */
export function grownNoFit(noFit: NoFit, arcTolerance: number): Grown {
  const { outer, pockets } = noFitOutline(noFit);
  const { polygon, deviationMicrons } = growPolygon({ outer, holes: pockets }, noFit.gap, arcTolerance);
  return { polygon, deviationMicrons: deviationMicrons + CORNER_ROUNDING };
}
