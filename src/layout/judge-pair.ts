import { nearnessBesideCommonKnife, type MayShare } from './judge-common-knife.ts';
import { nearness } from './judge-distance.ts';
import { overlapOf } from './judge-overlap.ts';
import type { Shape, Spot } from './judge-shape.ts';
import { JUDGE_TOLERANCE_MM } from './judge-tolerance.ts';

/** What is wrong between two shapes; the place in the first one's coordinates. */
export type PairFault =
  | { readonly kind: 'overlap'; readonly depth: number; readonly place: Spot }
  | { readonly kind: 'near'; readonly distance: number; readonly place: Spot };

/**
 * Judges `a` and `b` shifted by `shift`: whether they overlap, or else whether they come nearer than `needed`.
 * A straight edge that both share is no fault where `mayShare` says so of edge i of `a` and j of `b`.
 */
export function judgePair(a: Shape, b: Shape, shift: Spot, needed: number, mayShare: MayShare | undefined): PairFault | undefined {
  const nearest = nearness(a, b, shift, needed);
  if ((nearest && nearest.distance <= JUDGE_TOLERANCE_MM) || boxesNest(a, b, shift)) {
    const overlap = overlapOf(a, b, shift);
    if (overlap.depth > JUDGE_TOLERANCE_MM) return { kind: 'overlap', ...overlap };
  }
  if (!nearest || needed - nearest.distance <= JUDGE_TOLERANCE_MM) return undefined;
  const counted = mayShare ? nearnessBesideCommonKnife(a, b, shift, needed, mayShare) : nearest;
  return counted && needed - counted.distance > JUDGE_TOLERANCE_MM ? { kind: 'near', ...counted } : undefined;
}

/** One box within the other: only then can one outline lie inside the other without touching it. */
function boxesNest(a: Shape, b: Shape, shift: Spot): boolean {
  const [minX, minY, maxX, maxY] = [b.minX + shift.x, b.minY + shift.y, b.maxX + shift.x, b.maxY + shift.y];
  return (minX >= a.minX && maxX <= a.maxX && minY >= a.minY && maxY <= a.maxY) || (a.minX >= minX && a.maxX <= maxX && a.minY >= minY && a.maxY <= maxY);
}
