import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COORDINATE_LIMIT, type Point } from '../../src/geometry/point.ts';
import { crossing, locatePoint, onSegment, orient } from '../../src/geometry/predicates.ts';
import { TURNS, turnPoint, turnRing } from '../../src/geometry/turn.ts';
import { columnRing, placedStar, wholePoint } from '../support/lattice.ts';

const seeded = { seed: 20260104, numRuns: 1000 };
const farPoint = wholePoint(2 * COORDINATE_LIMIT);

function orientBig(a: Point, b: Point, c: Point): number {
  const [ax, ay, bx, by, cx, cy] = [a.x, a.y, b.x, b.y, c.x, c.y].map(BigInt);
  const value = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  return value > 0n ? 1 : value < 0n ? -1 : 0;
}

/** c one unit off the line from a to b, where rounding would show. */
const nearlyStraight = fc
  .tuple(farPoint, farPoint, fc.integer({ min: -1, max: 1 }), fc.integer({ min: -1, max: 1 }))
  .map(([a, b, dx, dy]): [Point, Point, Point] => [a, b, { x: Math.round((a.x + b.x) / 2) + dx, y: Math.round((a.y + b.y) / 2) + dy }]);

describe('orient', () => {
  test('equals whole-number arithmetic, also at the limit and next to the line', () => {
    const anyThree = fc.oneof(fc.tuple(farPoint, farPoint, farPoint), nearlyStraight);
    fc.assert(fc.property(anyThree, ([a, b, c]) => orient(a, b, c) === orientBig(a, b, c)), seeded);
    const corner = 2 * COORDINATE_LIMIT;
    const [a, b] = [{ x: -corner, y: -corner }, { x: corner, y: corner - 1 }];
    expect(orient(a, b, { x: corner, y: corner })).toBe(1);
    expect(orient(a, { x: corner, y: corner }, b)).toBe(-1);
  });

  test('turns with the points and changes sign when mirrored', () => {
    fc.assert(
      fc.property(farPoint, farPoint, farPoint, fc.constantFrom(...TURNS), (a, b, c, turn) => {
        expect(orient(turnPoint(a, turn), turnPoint(b, turn), turnPoint(c, turn))).toBe(orient(a, b, c));
        expect(orient(b, a, c) + orient(a, b, c)).toBe(0);
      }),
      seeded,
    );
  });
});

describe('locatePoint', () => {
  /** Winding number by BigInt orientation: a different rule and different arithmetic. */
  function locateSlow(p: Point, ring: readonly Point[]) {
    let winding = 0;
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length];
      const side = orientBig(a, b, p);
      const within = (p.x - a.x) * (p.x - b.x) <= 0 && (p.y - a.y) * (p.y - b.y) <= 0;
      if (side === 0 && within) return 'boundary';
      if (a.y <= p.y && b.y > p.y && side > 0) winding++;
      if (b.y <= p.y && a.y > p.y && side < 0) winding--;
    }
    return winding === 0 ? 'outside' : 'inside';
  }

  test('agrees with the winding number on simple rings, either way round, at corners and on edges', () => {
    fc.assert(
      fc.property(fc.oneof(columnRing, placedStar(6)), wholePoint(9), fc.boolean(), (ring, p, reversed) => {
        const given = reversed ? ring.toReversed() : ring;
        expect(locatePoint(p, given)).toBe(locateSlow(p, given));
      }),
      seeded,
    );
    fc.assert(fc.property(columnRing, (ring) => ring.forEach((p) => expect(locatePoint(p, ring)).toBe('boundary'))), seeded);
  });

  test('turns with ring and point', () => {
    fc.assert(
      fc.property(columnRing, wholePoint(3), fc.constantFrom(...TURNS), (ring, p, turn) => {
        expect(locatePoint(turnPoint(p, turn), turnRing(ring, turn))).toBe(locatePoint(p, ring));
      }),
      seeded,
    );
  });
});

describe('crossing', () => {
  const at = (x: number, y: number) => ({ x, y });

  test.each([
    ['apart', crossing(at(0, 0), at(10, 0), at(0, 1), at(10, 1)), { kind: 'none' }],
    ['through one another', crossing(at(0, 0), at(10, 10), at(0, 10), at(10, 0)), { kind: 'proper', at: at(5, 5) }],
    ['end on the other', crossing(at(0, 0), at(10, 0), at(4, 0), at(4, 5)), { kind: 'touch', at: at(4, 0) }],
    ['end to end', crossing(at(0, 0), at(10, 0), at(10, 0), at(20, 5)), { kind: 'touch', at: at(10, 0) }],
    ['end to end on one line', crossing(at(0, 0), at(10, 0), at(20, 0), at(10, 0)), { kind: 'touch', at: at(10, 0) }],
    ['overlapping', crossing(at(0, 0), at(10, 0), at(6, 0), at(20, 0)), { kind: 'overlap', from: at(10, 0), to: at(6, 0) }],
    ['one within the other', crossing(at(0, 0), at(10, 0), at(6, 0), at(2, 0)), { kind: 'overlap', from: at(6, 0), to: at(2, 0) }],
    ['on one line, apart', crossing(at(0, 0), at(10, 0), at(11, 0), at(20, 0)), { kind: 'none' }],
    ['a point on a segment', crossing(at(3, 0), at(3, 0), at(0, 0), at(10, 0)), { kind: 'touch', at: at(3, 0) }],
  ])('%s', (_, found, expected) => expect(found).toEqual(expected));

  test('is the same case whichever segment comes first and whichever way they run, and its place is on both', () => {
    fc.assert(
      fc.property(wholePoint(3), wholePoint(3), wholePoint(3), wholePoint(3), fc.constantFrom(...TURNS), (a, b, c, d, turn) => {
        const found = crossing(a, b, c, d);
        const turned = crossing(...([b, a, d, c].map((p) => turnPoint(p, turn)) as [Point, Point, Point, Point]));
        expect(turned.kind).toBe(found.kind);
        expect(crossing(c, d, a, b).kind).toBe(found.kind);
        const places = found.kind === 'touch' ? [found.at] : found.kind === 'overlap' ? [found.from, found.to] : [];
        for (const p of places) expect(onSegment(p, a, b) && onSegment(p, c, d)).toBe(true);
        if (found.kind === 'none') for (const p of [a, b]) expect(onSegment(p, c, d)).toBe(false);
      }),
      seeded,
    );
  });

  test('a proper crossing is rounded by less than a micrometre', () => {
    fc.assert(
      fc.property(farPoint, farPoint, farPoint, farPoint, (a, b, c, d) => {
        const found = crossing(a, b, c, d);
        if (found.kind !== 'proper') return;
        for (const [from, to] of [[a, b], [c, d]]) {
          const length = Math.hypot(to.x - from.x, to.y - from.y);
          const offset = Math.abs((to.x - from.x) * (found.at.y - from.y) - (to.y - from.y) * (found.at.x - from.x)) / length;
          expect(offset).toBeLessThan(0.75);
        }
      }),
      seeded,
    );
  });
});
