import type { Ring } from '../../geometry/point.ts';
import { ringArea } from '../../geometry/point.ts';
import { distanceBetween } from '../../geometry/vector.ts';
import type { Limit, Part, Problem } from '../../layout/problem.ts';
import { keptAtGap } from '../kept-at-gap.ts';
import type { Granted } from './granted.ts';
import { ROUNDING_SHARE } from './granted.ts';
import { insetConvex, isConvex } from './convex.ts';
import { limitOf } from './limit-of.ts';
import { unionAreaBelow } from './union-area.ts';

/**
 * Theorem. Let every outline of a layout be grown by half the gap. The grown copies have disjoint interiors and lie in the usable rectangle grown
 * likewise, clear of every keep-out grown by its clearance less half the gap. So their number is at most the free area over the area of one.
 * With several designs the smallest counts. (Folklore; no source needed.)
 *
 * A copy may not lie in another's opening, so openings count as blank.
 */
export function areaLimit(problem: Problem, granted: Granted): Limit {
  const half = granted.gap / 2;
  const least = Math.min(...problem.parts.map((part) => areaOfBlank(part, granted.gap)));
  return limitOf('area', freeAreaAbove(granted, half) / least);
}

/** What one blank takes at least, half the gap about it. */
const areaOfBlank = keptAtGap((part: Part, gap) => grownAreaBelow(part.outline, gap / 2));

/** Area of the outline with a disc of radius `by` swept over it, from below; `by` under zero: of what is left when a rim is taken off. */
export function grownAreaBelow(ring: Ring, by: number): number {
  if (by >= 0) return unionAreaBelow([{ ring, by }]);
  // The rim is held by one rectangle an edge and at most one disc a vertex.
  const rim = -by * perimeter(ring) + ring.length * Math.PI * by * by;
  return Math.max(1, ringArea(ring) - rim) * (1 - ROUNDING_SHARE);
}

/** Part of the free area that one blank of each part takes at least: in no layout do those of its blanks sum to more than 1. */
export function areaShares(problem: Problem, granted: Granted): number[] {
  const half = granted.gap / 2;
  const free = freeAreaAbove(granted, half);
  return problem.parts.map((part) => areaOfBlank(part, granted.gap) / free);
}

/** Area of the usable rectangle grown by `half` (with its round corners), less the keep-outs; from above. */
function freeAreaAbove(granted: Granted, half: number): number {
  const { width, height, usable } = granted;
  const rim = half > 0 ? 2 * half * (width + height) + Math.PI * half * half : 0;
  const taken = granted.keepOuts.flatMap(({ ring, clearance }) => {
    const by = clearance - half;
    if (by >= 0) return [{ ring, by }];
    const inner = isConvex(ring) ? insetConvex(ring, -by) : [];
    return inner.length > 0 ? [{ ring: inner, by: 0 }] : [];
  });
  return (width * height + rim) * (1 + ROUNDING_SHARE) - (taken.length > 0 ? unionAreaBelow(taken, usable) : 0);
}

function perimeter(ring: Ring): number {
  let sum = 0;
  let a = ring.at(-1)!;
  for (const b of ring) {
    sum += distanceBetween(a, b);
    a = b;
  }
  return sum;
}
