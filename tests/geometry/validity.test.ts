import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COORDINATE_LIMIT, type Ring } from '../../src/geometry/point.ts';
import { TURNS, turnPoint, turnRing } from '../../src/geometry/turn.ts';
import { ringFaults } from '../../src/geometry/validity.ts';
import { columnRing, wholePoint } from '../support/lattice.ts';
import { cartonRing, isSimple, starRing, starRings } from '../support/rings.ts';

const ring = (...pairs: [number, number][]): Ring => pairs.map(([x, y]) => ({ x, y }));
const kinds = (points: Ring) => ringFaults(points).map(({ kind, place, indices }) => `${kind} ${place.x},${place.y} [${indices}]`);

describe('ringFaults', () => {
  test.each([
    ['a square', ring([0, 0], [10, 0], [10, 10], [0, 10]), []],
    ['straight-through points', ring([0, 0], [5, 0], [10, 0], [10, 10]), []],
    ['nothing', ring(), ['too-few-points 0,0 []']],
    ['one point', ring([1, 2]), ['too-few-points 1,2 []']],
    ['two points', ring([1, 2], [3, 4]), ['too-few-points 1,2 []']],
    ['two points, repeated', ring([1, 2], [3, 4], [3, 4]), ['duplicate-point 3,4 [1,2]', 'too-few-points 1,2 []']],
    ['a repeated point', ring([0, 0], [10, 0], [10, 0], [0, 10]), ['duplicate-point 10,0 [1,2]']],
    ['last point repeating the first', ring([0, 0], [10, 0], [0, 10], [0, 0]), ['duplicate-point 0,0 [3,0]']],
    ['clockwise', ring([0, 0], [0, 10], [10, 10]), ['wrong-orientation 0,0 []']],
    ['a spike', ring([0, 0], [10, 0], [15, 0], [10, 0], [10, 10]), ['spike 15,0 [2]', 'self-touch 10,0 [0,2]']],
    ['a line there and back', ring([0, 0], [10, 0], [5, 0]), ['spike 0,0 [0]', 'spike 10,0 [1]']],
    ['a bow tie', ring([0, 0], [10, 10], [10, 0], [0, 10]), ['self-crossing 5,5 [0,2]']],
    ['a corner on an edge', ring([0, 0], [10, 0], [10, 10], [5, 0], [0, 10]), ['self-touch 5,0 [0,2]']],
    ['two corners in one place', ring([0, 0], [5, 5], [10, 0], [10, 10], [5, 5], [0, 10]), ['self-touch 5,5 [0,3]']],
    ['a way through a corner', ring([0, 0], [5, 5], [10, 0], [15, 5], [10, 10], [5, 5], [0, 10]), ['self-touch 5,5 [0,4]']],
    ['through itself at a corner', ring([0, 0], [5, 5], [10, 10], [10, 0], [5, 5], [0, 10]), ['self-crossing 5,5 [0,3]']],
    ['an edge along another', ring([0, 0], [20, 0], [20, 10], [15, 10], [15, 0], [5, 0], [5, 10], [0, 10]), ['self-touch 15,0 [0,3]', 'self-touch 5,0 [0,5]']],
    ['half micrometres', ring([0, 0], [10.5, 0], [0, 10]), ['not-whole 10.5,0 [1]']],
    ['not a number', [{ x: 0, y: 0 }, { x: NaN, y: 0 }, { x: 0, y: 1 }], ['not-whole NaN,0 [1]']],
    ['too far', ring([0, 0], [COORDINATE_LIMIT + 1, 0], [0, 10]), [`out-of-range ${COORDINATE_LIMIT + 1},0 [1]`]],
    ['at the limit', ring([0, 0], [COORDINATE_LIMIT, 0], [0, COORDINATE_LIMIT]), []],
  ])('%s', (_, points, expected) => expect(kinds(points).toSorted()).toEqual(expected.toSorted()));

  test('a clockwise ring is sound where one is wanted', () => {
    const hole = ring([0, 0], [0, 10], [10, 10]);
    expect(ringFaults(hole, { orientation: 'clockwise' })).toEqual([]);
    expect(ringFaults(hole.toReversed(), { orientation: 'clockwise' })).toHaveLength(1);
  });

  test('no fault but of orientation just when every pair of edges is sound', () => {
    const lattice = fc.array(wholePoint(4), { minLength: 3, maxLength: 8 });
    fc.assert(
      fc.property(fc.oneof(lattice, columnRing, starRings(12, 30)), (points) => {
        const faults = ringFaults(points).filter(({ kind }) => kind !== 'wrong-orientation');
        expect(faults.length === 0).toBe(isSimple(points));
      }),
      { seed: 20260107, numRuns: 2000 },
    );
  });

  test('faults turn with the ring', () => {
    fc.assert(
      fc.property(fc.array(wholePoint(4), { minLength: 3, maxLength: 8 }), fc.constantFrom(...TURNS), (points, turn) => {
        // Places of crossings within both edges are rounded, and halves do not turn with the ring.
        const doubled = points.map(({ x, y }) => ({ x: 840 * x, y: 840 * y }));
        const plain = ringFaults(doubled).map(({ kind, place }) => ({ kind, place: turnPoint(place, turn) }));
        const turned = ringFaults(turnRing(doubled, turn)).map(({ kind, place }) => ({ kind, place }));
        expect(turned.map(({ kind }) => kind).toSorted()).toEqual(plain.map(({ kind }) => kind).toSorted());
        for (const fault of turned) {
          expect(plain.some(({ kind, place }) => kind === fault.kind && Math.hypot(place.x - fault.place.x, place.y - fault.place.y) <= 2)).toBe(true);
        }
      }),
      { seed: 20260108, numRuns: 500 },
    );
  });

  test('10 000 points take well under a second; a ring crossing itself everywhere is cut short', () => {
    const big = starRing(Array.from({ length: 10_000 }, (_, i) => 8_000_000 - 100_000 * (i % 7)));
    const started = performance.now();
    expect(ringFaults(big)).toEqual([]);
    expect(performance.now() - started).toBeLessThan(1000);
    const tangle = Array.from({ length: 2_000 }, (_, i) => ({ x: (i * 7_919) % 10_007, y: (i * 104_729) % 10_009 }));
    const meetings = ringFaults(tangle, { mostMeetings: 20 }).filter(({ kind }) => kind === 'self-crossing');
    expect(meetings.length).toBeGreaterThanOrEqual(20);
    expect(meetings.length).toBeLessThan(2_000);
    expect(ringFaults(cartonRing(11))).toEqual([]);
  });
});
