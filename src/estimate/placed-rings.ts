import { toMicrons } from '../base/units.ts';
import { shiftRing, type Ring } from '../geometry/point.ts';
import { turnOfDegrees, turnRing } from '../geometry/turn.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import { micronRing } from '../layout/rings.ts';

/**
 * Outlines of all blanks where they stand, in station order, whole µm. `shape` is applied to each design's outline
 * first. Designs must be known and rotations quarter turns, as the judge has seen to.
 */
export function placedRings({ designs, placements }: LayoutFile, shape: (outline: Ring) => Ring = (outline) => outline): Ring[] {
  const shapes = new Map(designs.map(({ id, outline }) => [id, shape(micronRing(outline))]));
  return placements.map(({ design, rotation, x, y }) => shiftRing(turnRing(shapes.get(design)!, turnOfDegrees(rotation)!), { x: toMicrons(x), y: toMicrons(y) }));
}
