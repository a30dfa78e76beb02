import { convexHull } from '../../geometry/convex-hull.ts';
import type { Point, Ring } from '../../geometry/point.ts';
import { boxOf, ringArea, shiftRing } from '../../geometry/point.ts';
import type { Turn } from '../../geometry/turn.ts';
import { turnRing } from '../../geometry/turn.ts';
import { minus } from '../../geometry/vector.ts';
import type { Limit, Part, Problem } from '../../layout/problem.ts';
import { keptAtGap } from '../kept-at-gap.ts';
import { convexSum, cutLeft, discInside, insetConvex, isConvex } from './convex.ts';
import type { Granted } from './granted.ts';
import { ROUNDING_SHARE, onlyPart } from './granted.ts';
import { leastHexagonBelow } from './least-hexagon.ts';
import { limitOf } from './limit-of.ts';

/**
 * Theorem (Oler, An inequality in the geometry of numbers, Acta Math. 105, 1961). In a plane whose unit disc is the convex body K, symmetric
 * about 0, n points of a compact convex set X, at distances of at least 1 from one another, obey
 *   n ≤ area(X) / Δ(K) + perimeter(X) / 2 + 1,
 * Δ(K) the least determinant of a lattice with no point but 0 inside K, the perimeter measured in that plane.
 *
 * Take as X the places of one point of the blank, the pole. The poles of two blanks of a layout differ by no vector that the two forbid, so K may
 * be any convex symmetric body inside all forbidden sets; for convex outlines these sets are convex and K is what they share. Nothing is lost for
 * outlines equal to their half turn with rotations 0, 180, and for circles.
 */
export function ovalsLimit(problem: Problem, granted: Granted): Limit | undefined {
  const part = onlyPart(problem);
  const poled = part && poledAt(part, granted.gap);
  if (!poled) return undefined;
  const { atPole, body, determinant } = poled;
  const places = convexHull(part.turns.flatMap((turn) => placesOfPole(turnRing(atPole, turn), granted)));
  if (places.length === 0) return limitOf('ovals', 0);
  return body.length < 3 ? undefined : limitOf('ovals', olerValue(places, body, determinant));
}

/** A convex outline with its pole at the origin and its unit disc; lengths are doubled, so that the middle of the box is whole. */
const poledAt = keptAtGap(({ outline, turns }: Part, gap) => {
  if (!isConvex(outline)) return undefined;
  const doubled = outline.map(({ x, y }) => ({ x: 2 * x, y: 2 * y }));
  const atPole = shiftRing(doubled, opposite(bestPole(doubled, turns, gap)));
  const body = sharedBody(atPole, turns, 2 * gap);
  return { atPole, body, determinant: body.length < 3 ? 0 : leastDeterminantBelow(body) };
});

function opposite({ x, y }: Point): Point {
  return { x: -x, y: -y };
}

/** Corners of the rectangle where the pole of a copy may be; none where the copy is larger than the sheet. */
function placesOfPole(ring: Ring, { usable }: Granted): Point[] {
  const box = boxOf(ring);
  const xs = [2 * usable.minX - box.minX, 2 * usable.maxX - box.maxX];
  const ys = [2 * usable.minY - box.minY, 2 * usable.maxY - box.maxY];
  return xs[0]! > xs[1]! || ys[0]! > ys[1]! ? [] : xs.flatMap((x) => ys.map((y) => ({ x, y })));
}

/** What the forbidden sets of all pairs of rotations share, for an outline with its pole at the origin. Symmetric about 0. */
function sharedBody(ring: Ring, turns: readonly Turn[], gap: number): Ring {
  const copies = turns.map((turn) => turnRing(ring, turn));
  let body: Point[] | undefined;
  for (const a of copies) {
    for (const b of copies) {
      const sum = convexSum(a, turnRing(b, 2));
      const forbidden = gap >= 0 ? convexSum(sum, discInside(gap)) : insetConvex(sum, -gap);
      body = body ? commonPart(body, forbidden) : forbidden;
    }
  }
  return body!.map(({ x, y }) => ({ x: x * (1 - ROUNDING_SHARE), y: y * (1 - ROUNDING_SHARE) }));
}

function commonPart(body: Point[], other: Ring): Point[] {
  let rest = body;
  other.forEach((a, i) => {
    rest = cutLeft(rest, a, other[(i + 1) % other.length]!);
  });
  return rest;
}

/** Share of the largest shared body with which the search for a pole is content. */
const WELL_POLED = 0.999;

/** Where the shared body is largest: a descent from the middle of the box with ever smaller steps. Any pole gives a true limit. */
function bestPole(ring: Ring, turns: readonly Turn[], gap: number): Point {
  const { minX, minY, maxX, maxY } = boxOf(ring);
  const score = (pole: Point) => ringArea(sharedBody(shiftRing(ring, opposite(pole)), turns, 2 * gap));
  let best = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  let most = score(best);
  // No pole does better than the forbidden set of two copies turned alike, which it does not change.
  const ceiling = ringArea(sharedBody(ring, turns.slice(0, 1), 2 * gap));
  for (let step = Math.round((maxX - minX + maxY - minY) / 16); step > 100 && most < ceiling * WELL_POLED; step = Math.round(step / 2)) {
    for (const [x, y] of [[step, 0], [-step, 0], [0, step], [0, -step]] as const) {
      const pole = { x: best.x + x, y: best.y + y };
      const value = score(pole);
      if (value > most) {
        best = pole;
        most = value;
      }
    }
  }
  return best;
}

function olerValue(places: Ring, body: Ring, determinant: number): number {
  const sides = places.map((p, i) => minus(places[(i + 1) % places.length]!, p));
  const perimeter = sides.reduce((sum, side) => sum + gauge(side, body), 0);
  return (ringArea(places) / determinant + perimeter / 2) * (1 + ROUNDING_SHARE) + 1;
}

/** Length of a vector in the plane with the given unit disc. */
function gauge(vector: Point, body: Ring): number {
  return body.reduce((most, p, i) => {
    const q = body[(i + 1) % body.length]!;
    return Math.max(most, ((q.y - p.y) * vector.x - (q.x - p.x) * vector.y) / (p.x * q.y - p.y * q.x));
  }, 0);
}

/**
 * Δ of a convex symmetric body, from below: a quarter of the least hexagon's area, since half the body, placed on the lattice's points, packs, and
 * every such packing's cell is such a hexagon. For bodies close to an ellipse with half axes p and q it is that of the ellipse, (√3 / 2) p q.
 */
function leastDeterminantBelow(body: Ring): number {
  const { p, q } = innerEllipse(body);
  const oval = (Math.sqrt(3) / 2) * p * q * (1 - ROUNDING_SHARE);
  return Math.PI * p * q > OVAL_SHARE * ringArea(body) ? oval : Math.max(oval, leastHexagonBelow(body) / 4);
}

/** Bodies of which an inner ellipse takes this share count as ellipses. */
const OVAL_SHARE = 0.998;

/** Half axes of the largest ellipse about 0 inside the body whose half axes are in the proportion of the body's box. */
function innerEllipse(body: Ring): { p: number; q: number } {
  const { maxX, maxY } = boxOf(body);
  const share = body.reduce((least, a, i) => {
    const b = body[(i + 1) % body.length]!;
    const reach = Math.sqrt(((b.y - a.y) * maxX) ** 2 + ((b.x - a.x) * maxY) ** 2);
    return reach > 0 ? Math.min(least, (a.x * b.y - a.y * b.x) / reach) : least;
  }, Infinity);
  return { p: share * maxX, q: share * maxY };
}
