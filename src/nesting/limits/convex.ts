import { convexHull } from '../../geometry/convex-hull.ts';
import type { Point, Ring } from '../../geometry/point.ts';
import { determinant } from '../../geometry/predicates.ts';
import { between, distanceBetween } from '../../geometry/vector.ts';

/** Convex polygons as rings, counter-clockwise. Coordinates are whole in and, where nothing else is said, whole out. */

export function isConvex(ring: Ring): boolean {
  const n = ring.length;
  // A closed ring that turns left everywhere and is simple winds once; rings are simple by contract.
  return n >= 3 && ring.every((p, i) => determinant(p, ring[(i + 1) % n]!, ring[(i + 2) % n]!) >= 0);
}

/** Minkowski sum of two convex polygons: their edges merged by direction. */
export function convexSum(a: Ring, b: Ring): Point[] {
  const first = fromLowest(a);
  const second = fromLowest(b);
  const sum: Point[] = [];
  let i = 0;
  let j = 0;
  while (i < first.length || j < second.length) {
    const p = first[i % first.length]!;
    const q = second[j % second.length]!;
    sum.push({ x: p.x + q.x, y: p.y + q.y });
    const p2 = first[(i + 1) % first.length]!;
    const q2 = second[(j + 1) % second.length]!;
    const turn = (p2.x - p.x) * (q2.y - q.y) - (p2.y - p.y) * (q2.x - q.x);
    const takeFirst = j >= second.length || (i < first.length && turn >= 0);
    const takeSecond = i >= first.length || (j < second.length && turn <= 0);
    if (takeFirst) i++;
    if (takeSecond) j++;
  }
  return convexHull(sum);
}

function fromLowest(ring: Ring): Point[] {
  let least = 0;
  ring.forEach((p, i) => {
    const q = ring[least]!;
    if (p.y < q.y || (p.y === q.y && p.x < q.x)) least = i;
  });
  return [...ring.slice(least), ...ring.slice(0, least)];
}

/** Corners a quarter disc is given. 16 lose 0.04 % of its radius. */
const CORNERS_A_QUARTER = 16;

/** A polygon inside the disc of the given radius about the origin, symmetric under quarter turns, corners whole. */
export function discInside(radius: number): Point[] {
  if (radius < 1) return [{ x: 0, y: 0 }];
  const quarter: Point[] = [];
  const steps = CORNERS_A_QUARTER / 2;
  // Directions along the sides of a square instead of equal angles: square roots are the same in every engine, sines need not be.
  for (let k = -steps; k < steps; k++) {
    const t = k / steps;
    const scale = radius / Math.sqrt(1 + t * t);
    quarter.push({ x: Math.trunc(scale), y: Math.trunc(scale * t) });
  }
  return convexHull([0, 1, 2, 3].flatMap((turn) => quarter.map((p) => quarterTurns(p, turn))));
}

function quarterTurns({ x, y }: Point, turn: number): Point {
  return [{ x, y }, { x: -y, y: x }, { x: -x, y: -y }, { x: y, y: -x }][turn]!;
}

/** What is left of a convex polygon when every side moves inwards by `by`; corners not whole. Empty where nothing is left. */
export function insetConvex(ring: Ring, by: number): Point[] {
  let rest: Point[] = [...ring];
  let a = ring.at(-1)!;
  for (const b of ring) {
    rest = cutLeft(rest, a, b, by * distanceBetween(a, b));
    a = b;
  }
  return rest;
}

/** The part of a convex polygon where determinant(a, b, p) ≥ least. */
export function cutLeft(ring: Ring, a: Point, b: Point, least = 0): Point[] {
  const kept: Point[] = [];
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const before = determinant(a, b, p) - least;
    const after = determinant(a, b, q) - least;
    if (before >= 0) kept.push(p);
    if ((before > 0 && after < 0) || (before < 0 && after > 0)) kept.push(between(p, q, before / (before - after)));
  });
  return kept.length >= 3 ? kept : [];
}
