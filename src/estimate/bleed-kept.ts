import { toMicrons, toMillimetres } from '../base/units.ts';
import { indexBoxes } from '../geometry/box-index.ts';
import { ringDistance } from '../geometry/distance.ts';
import { boxOf } from '../geometry/point.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import { placedRings } from './placed-rings.ts';

/** Two blanks too near to each other for both bleeds, and what each keeps where they are nearest. */
export interface BleedKept {
  /** Placement numbers, counted from 0, the lower first. */
  readonly blanks: readonly [number, number];
  readonly keptMm: number;
}

/**
 * The facing edges at which bleeds are cut at the middle of the gap: all pairs of blanks nearer to each other than twice
 * the bleed, each keeping half their distance. Every other edge keeps its whole bleed. Ordered by placement numbers.
 */
export function bleedKept(layout: LayoutFile): BleedKept[] {
  const bleed = toMicrons(layout.rules.bleed);
  const rings = placedRings(layout);
  const boxes = rings.map(boxOf);
  const index = indexBoxes(boxes);
  return rings.flatMap((ring, i) => {
    const { minX, minY, maxX, maxY } = boxes[i]!;
    const near = index.search({ minX: minX - 2 * bleed, minY: minY - 2 * bleed, maxX: maxX + 2 * bleed, maxY: maxY + 2 * bleed });
    return near.filter((j) => j > i).flatMap((j): BleedKept[] => {
      const nearest = ringDistance(ring, rings[j]!, { cap: 2 * bleed });
      return nearest ? [{ blanks: [i, j], keptMm: toMillimetres(nearest.distance / 2) }] : [];
    });
  });
}
