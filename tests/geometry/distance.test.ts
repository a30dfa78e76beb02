import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { atLeastApart, ringDistance, segmentDistance } from '../../src/geometry/distance.ts';
import { COORDINATE_LIMIT, shiftRing, type Point, type Ring } from '../../src/geometry/point.ts';
import { crossing } from '../../src/geometry/predicates.ts';
import { TURNS, turnRing } from '../../src/geometry/turn.ts';
import { columnRing, placedStar, wholePoint } from '../support/lattice.ts';
import { distanceToOutline, distanceToSegment } from '../support/outline-distance.ts';
import { cartonRing } from '../support/rings.ts';

const seeded = { seed: 20260105, numRuns: 300 };
const anyRing = fc.oneof(columnRing, placedStar(6), placedStar(2_000_000, 40));
const farRing = fc.tuple(anyRing, wholePoint(4_000_000)).map(([ring, by]) => shiftRing(ring, by));
const pair = fc.oneof(fc.tuple(anyRing, anyRing), fc.tuple(anyRing, farRing), fc.tuple(columnRing, columnRing));

function edges(ring: Ring): [Point, Point][] {
  return ring.map((a, i) => [a, ring[(i + 1) % ring.length]]);
}

/** Every edge against every edge, no pruning. */
function slowDistance(a: Ring, b: Ring): number {
  const meets = edges(a).some(([p, q]) => edges(b).some(([r, s]) => crossing(p, q, r, s).kind !== 'none'));
  return meets ? 0 : Math.min(...a.map((p) => distanceToOutline(p, b)), ...b.map((p) => distanceToOutline(p, a)));
}

/** Squared distance of a point from a segment as a fraction of whole numbers. */
function squaredBig(p: Point, a: Point, b: Point): [bigint, bigint] {
  const [px, py, ax, ay, bx, by] = [p.x, p.y, a.x, a.y, b.x, b.y].map(BigInt);
  const [dx, dy] = [bx - ax, by - ay];
  const length = dx * dx + dy * dy;
  const along = (px - ax) * dx + (py - ay) * dy;
  if (along <= 0n) return [(px - ax) ** 2n + (py - ay) ** 2n, 1n];
  if (along >= length) return [(px - bx) ** 2n + (py - by) ** 2n, 1n];
  return [(dx * (py - ay) - dy * (px - ax)) ** 2n, length];
}

describe('ringDistance', () => {
  test('equals the slow way; its two points are on the outlines and that far apart', () => {
    fc.assert(
      fc.property(pair, ([a, b]) => {
        const { distance, from, to } = ringDistance(a, b);
        const slow = slowDistance(a, b);
        expect(Math.abs(distance - slow)).toBeLessThanOrEqual(1e-9 * (1 + slow));
        expect(Math.abs(Math.hypot(from.x - to.x, from.y - to.y) - distance)).toBeLessThan(1e-6);
        // The place of a proper crossing is rounded.
        const slack = distance === 0 ? Math.SQRT1_2 + 1e-6 : 1e-6;
        expect(distanceToOutline(from, a)).toBeLessThan(slack);
        expect(distanceToOutline(to, b)).toBeLessThan(slack);
      }),
      seeded,
    );
  });

  test('is the same both ways, after quarter turns, mirrors and shifts', () => {
    fc.assert(
      fc.property(pair, fc.constantFrom(...TURNS), wholePoint(1_000_000), ([a, b], turn, by) => {
        const { distance } = ringDistance(a, b);
        const equal = (other: number) => expect(Math.abs(other - distance)).toBeLessThanOrEqual(1e-12 * distance);
        equal(ringDistance(b, a).distance);
        equal(ringDistance(turnRing(a, turn), turnRing(b, turn)).distance);
        equal(ringDistance(shiftRing(a, by), shiftRing(b, by)).distance);
        const mirror = (ring: Ring) => ring.map(({ x, y }) => ({ x: -x, y }));
        equal(ringDistance(mirror(a), mirror(b)).distance);
      }),
      seeded,
    );
  });

  test('a cap changes nothing below it and answers nothing from it on', () => {
    fc.assert(
      fc.property(pair, fc.integer({ min: 0, max: 3_000_000 }), ([a, b], cap) => {
        const { distance } = ringDistance(a, b);
        const capped = ringDistance(a, b, { cap });
        if (distance < cap) expect(capped!.distance).toBe(distance);
        else expect(capped).toBeUndefined();
      }),
      seeded,
    );
  });

  test('rings inside one another have the distance of their lines', () => {
    const square = (half: number): Ring => [{ x: -half, y: -half }, { x: half, y: -half }, { x: half, y: half }, { x: -half, y: half }];
    expect(ringDistance(square(10_000), square(4_000)).distance).toBe(6_000);
    expect(atLeastApart(square(10_000), square(4_000), 6_000)).toBe(true);
    expect(atLeastApart(square(10_000), square(4_000), 6_001)).toBe(false);
  });
});

test('segmentDistance: end to end, foot of a perpendicular, crossing, a point', () => {
  const at = (x: number, y: number) => ({ x, y });
  expect(segmentDistance(at(0, 0), at(10, 0), at(13, 4), at(20, 4))).toEqual({ distance: 5, from: at(10, 0), to: at(13, 4) });
  expect(segmentDistance(at(0, 0), at(10, 0), at(5, 3), at(5, 9))).toEqual({ distance: 3, from: at(5, 0), to: at(5, 3) });
  expect(segmentDistance(at(0, 0), at(10, 10), at(0, 10), at(10, 0))).toEqual({ distance: 0, from: at(5, 5), to: at(5, 5) });
  expect(segmentDistance(at(3, 4), at(3, 4), at(0, 0), at(0, 0)).distance).toBe(5);
  fc.assert(
    fc.property(wholePoint(50), wholePoint(50), wholePoint(50), wholePoint(50), (a, b, c, d) => {
      const slow = crossing(a, b, c, d).kind === 'none' ? Math.min(distanceToSegment(a, c, d), distanceToSegment(b, c, d), distanceToSegment(c, a, b), distanceToSegment(d, a, b)) : 0;
      expect(segmentDistance(a, b, c, d).distance).toBeCloseTo(slow, 10);
    }),
    seeded,
  );
});

describe('atLeastApart', () => {
  test('agrees with whole-number arithmetic at and around the distance', () => {
    fc.assert(
      fc.property(pair, fc.integer({ min: -1, max: 2 }), ([a, b], step) => {
        const gap = Math.floor(ringDistance(a, b).distance) + step;
        if (gap <= 0) {
          expect(atLeastApart(a, b, gap)).toBe(true);
          return;
        }
        const squares = [...a.flatMap((p) => edges(b).map(([r, s]) => squaredBig(p, r, s))), ...b.flatMap((p) => edges(a).map(([r, s]) => squaredBig(p, r, s)))];
        const far = squares.every(([top, bottom]) => top >= BigInt(gap) ** 2n * bottom) && slowDistance(a, b) > 0;
        expect(atLeastApart(a, b, gap)).toBe(far);
        expect(atLeastApart(b, a, gap)).toBe(far);
      }),
      seeded,
    );
  });

  test('decides where doubles cannot: a slanted edge exactly at the gap, and one unit aside', () => {
    // Direction (3, 4) scaled: the perpendicular (−4, 3)·k has length 5k, a whole number, at coordinates near the limit.
    const k = 1_000_003;
    const edge: Ring = [{ x: -9_000_000, y: -12_000_000 }, { x: 9_000_000, y: 12_000_000 }, { x: 9_000_001, y: 12_000_000 }];
    const at = (dx: number): Ring => [{ x: -4 * k + dx, y: 3 * k }, { x: -4 * k - 5_000_000, y: 3 * k + 100 }, { x: -4 * k - 5_000_000, y: 3 * k + 200 }];
    expect(atLeastApart(edge, at(0), 5 * k)).toBe(true);
    expect(atLeastApart(edge, at(0), 5 * k + 1)).toBe(false);
    expect(atLeastApart(edge, at(1), 5 * k)).toBe(false);
    expect(atLeastApart(edge, at(-1), 5 * k)).toBe(true);
    expect(Math.max(...edge.map((p) => p.y))).toBeLessThan(COORDINATE_LIMIT);
  });
});

test('a carton of 300 points against another looks at few pairs of edges', () => {
  const carton = cartonRing(11);
  const moved = shiftRing(carton, { x: 300_000, y: 1_000 });
  const started = performance.now();
  for (let i = 0; i < 50; i++) ringDistance(carton, moved);
  // Every pair would be 4.5 million of them; one call takes well under a millisecond.
  expect(performance.now() - started).toBeLessThan(1000);
});
