import type { Limit, Part, Problem } from '../../layout/problem.ts';
import type { Ring } from '../../geometry/point.ts';
import { keptAtGap } from '../kept-at-gap.ts';
import { convexSum, discInside, insetConvex, isConvex } from './convex.ts';
import type { Granted } from './granted.ts';
import { onlyPart } from './granted.ts';
import { leastHexagonBelow } from './least-hexagon.ts';
import { limitOf } from './limit-of.ts';

/**
 * Theorem (L. Fejes Tóth, Some packing and covering theorems, Acta Sci. Math. Szeged 12A, 1950; by Euler's formula and Dowker's theorem). If n
 * congruent copies of a convex body K, turned in any way, lie in a convex polygon of at most six sides with disjoint interiors, then n times
 * the least area of a hexagon around K is at most the polygon's area.
 *
 * K is the outline grown by half the gap, the polygon the usable rectangle grown likewise. Undefined for outlines that are not convex.
 */
export function hexagonLimit(problem: Problem, granted: Granted): Limit | undefined {
  const part = onlyPart(problem);
  const hexagon = part && hexagonAround(part, granted.gap);
  if (hexagon === undefined) return undefined;
  const grow = Math.max(0, granted.gap);
  return limitOf('hexagon', (4 * (granted.width + grow) * (granted.height + grow)) / hexagon);
}

/** Four times the least area of a hexagon around the grown outline: it is doubled so that half a gap of an odd number of micrometres stays whole. */
const hexagonAround = keptAtGap(({ outline }: Part, gap): number | undefined => {
  if (!isConvex(outline)) return undefined;
  const body = grownConvex(outline, gap);
  return body.length < 3 ? undefined : leastHexagonBelow(body);
});

/** Twice the convex outline grown by half of `gap` (below zero: a rim of half of it taken off), from inside. */
export function grownConvex(outline: Ring, gap: number): Ring {
  const doubled = outline.map(({ x, y }) => ({ x: 2 * x, y: 2 * y }));
  return gap >= 0 ? convexSum(doubled, discInside(gap)) : insetConvex(doubled, -gap);
}
