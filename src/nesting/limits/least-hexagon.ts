import type { Point, Ring } from '../../geometry/point.ts';
import { ringArea } from '../../geometry/point.ts';
import { distanceBetween } from '../../geometry/vector.ts';
import { ROUNDING_SHARE } from './granted.ts';

/** Most corners worked with; a body with more is replaced by a polygon inside it, which only lowers the result (0.04 % for a circle). */
const MOST_CORNERS = 128;
/** Directions are put in so that neighbours differ by no more than about 1/30 of a right angle. */
const WIDEST_STEP = 0.05;
/** Sine of the angle under which two tangents count as parallel: they would meet further out than any hexagon in question reaches. */
const PARALLEL = 1e-10;

/**
 * A number that the area of no hexagon around the convex body falls below (triangles to pentagons count as hexagons with sides of length 0).
 *
 * A least polygon of k sides around a convex polygon has k − 1 sides flush with its edges (DePano, Polygon approximation with optimized polygonal
 * enclosures, Johns Hopkins 1987; Aggarwal, Chang and Yap, Minimum area circumscribing polygons, The Visual Computer 1, 1985). Let the remaining
 * side turn about a corner of the body. Where the lines of its neighbours meet beyond it, it cuts a triangle off their angle, whose area has no
 * greatest value inside, so the least hexagon has that side flush too. So: a shortest closed walk of six steps over edge directions, where two steps may pass
 * over a free side between neighbours more than a half turn apart; a free side counts at the nearer end of its range for either neighbour.
 */
export function leastHexagonBelow(body: Ring): number {
  const corners = fewerCorners(body);
  const tangents = tangentsOf(corners);
  const one = capAreas(tangents, ringArea(corners));
  const two = leastSums(one, one);
  const three = leastSums(two, one);
  const outside = Math.min(leastClosed(three, three), leastClosed(freeSides(tangents, one), leastSums(two, two)));
  return (ringArea(corners) + outside) * (1 - ROUNDING_SHARE);
}

/** Corners of the body, spread evenly over the directions, if it has too many. */
function fewerCorners(body: Ring): Ring {
  return body.length <= MOST_CORNERS ? body : body.filter((_, i) => Math.floor((i * MOST_CORNERS) / body.length) !== Math.floor(((i - 1) * MOST_CORNERS) / body.length));
}

interface Tangent {
  /** Of unit length or a little under, along the line, counter-clockwise about the body. */
  readonly direction: Point;
  readonly contact: Point;
  /** Half the sum of cross products along the border from the first corner to the contact. */
  readonly swept: number;
}

/** Edge lines in order of direction, and lines about a corner where two edges turn far. */
function tangentsOf(corners: Ring): Tangent[] {
  const tangents: Tangent[] = [];
  let swept = 0;
  corners.forEach((contact, i) => {
    const next = corners[(i + 1) % corners.length]!;
    const before = unit(corners.at(i - 1)!, contact);
    const after = unit(contact, next);
    const pieces = Math.max(1, Math.ceil(distanceBetween(before, after) / WIDEST_STEP));
    for (let k = 1; k < pieces; k++) {
      const direction = { x: before.x + ((after.x - before.x) * k) / pieces, y: before.y + ((after.y - before.y) * k) / pieces };
      tangents.push({ direction, contact, swept });
    }
    tangents.push({ direction: after, contact, swept });
    swept += (contact.x * next.y - contact.y * next.x) / 2;
  });
  return tangents;
}

function unit(a: Point, b: Point): Point {
  const length = distanceBetween(a, b);
  return { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
}

/** Least areas outside the body from one tangent on to another: entry [i][d] for tangents i and i + d, going round. */
type Steps = readonly Float64Array[];

function capAreas(tangents: readonly Tangent[], bodyArea: number): Steps {
  const count = tangents.length;
  return tangents.map((a, i) =>
    Float64Array.from(tangents, (_, d) => {
      const b = tangents[(i + d) % count]!;
      return d === 0 ? 0 : capArea(a, b, b.swept - a.swept + (i + d >= count ? bodyArea : 0));
    }),
  );
}

/** Between the border from a's contact to b's contact and the two tangents; Infinity where they do not meet ahead. */
function capArea(a: Tangent, b: Tangent, swept: number): number {
  const turn = a.direction.x * b.direction.y - a.direction.y * b.direction.x;
  if (turn <= PARALLEL) return Infinity;
  const along = ((b.contact.x - a.contact.x) * b.direction.y - (b.contact.y - a.contact.y) * b.direction.x) / turn;
  const x = a.contact.x + along * a.direction.x;
  const y = a.contact.y + along * a.direction.y;
  const corner = (a.contact.x * y - a.contact.y * x + (x * b.contact.y - y * b.contact.x)) / 2;
  return Math.max(0, corner - swept);
}

/** Two walks one after the other. */
function leastSums(first: Steps, second: Steps): Steps {
  const count = first.length;
  return first.map((from, i) => {
    const sums = new Float64Array(count).fill(Infinity);
    for (let e = 0; e < count; e++) {
      const start = from[e]!;
      if (start === Infinity) continue;
      const rest = second[(i + e) % count]!;
      // From a half turn on a single step is Infinity throughout.
      for (let d = e; d < count && rest[d - e]! < Infinity; d++) {
        const sum = start + rest[d - e]!;
        if (sum < sums[d]!) sums[d] = sum;
      }
    }
    return sums;
  });
}

/** From a tangent over one free side to another that lies more than a half turn on. */
function freeSides(tangents: readonly Tangent[], cap: Steps): Steps {
  const count = tangents.length;
  return tangents.map(({ direction: from }, i) => {
    const least = new Float64Array(count).fill(Infinity);
    for (let d = 1; d < count; d++) {
      const to = tangents[(i + d) % count]!.direction;
      if (from.x * to.y - from.y * to.x >= -PARALLEL) continue;
      for (let e = 0; e < d; e++) least[d] = Math.min(least[d]!, cap[i]![e]! + cap[(i + e + 1) % count]![d - e - 1]!);
    }
    return least;
  });
}

/** The cheapest way round: one walk out, the other home. */
function leastClosed(out: Steps, home: Steps): number {
  const count = out.length;
  let least = Infinity;
  for (let i = 0; i < count; i++) {
    for (let d = 1; d < count; d++) least = Math.min(least, out[i]![d]! + home[(i + d) % count]![count - d]!);
  }
  return least;
}
