import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { outlineLikeness } from '../../src/geometry/outline-likeness.ts';
import { shiftRing, type Point, type Ring } from '../../src/geometry/point.ts';
import { turnRing, type Turn } from '../../src/geometry/turn.ts';
import { distanceToOutline } from '../support/outline-distance.ts';

const ring = (...corners: [number, number][]): Ring => corners.map(([x, y]) => ({ x: x * 1000, y: y * 1000 }));
const ell = ring([0, 0], [120, 0], [120, 45], [50, 45], [50, 130], [0, 130]);
const mirror = (outline: Ring) => outline.map(({ x, y }) => ({ x: -x, y })).toReversed();

/** Slow and obvious: points every 0.1 mm of one outline, how far from the other at most. */
function sampled(a: Ring, b: Ring): number {
  let most = 0;
  a.forEach((p, i) => {
    const q = a[(i + 1) % a.length];
    const pieces = Math.ceil(Math.max(Math.abs(q.x - p.x), Math.abs(q.y - p.y)) / 100);
    for (let k = 0; k < pieces; k++) most = Math.max(most, distanceToOutline({ x: p.x + ((q.x - p.x) * k) / pieces, y: p.y + ((q.y - p.y) * k) / pieces }, b));
  });
  return most;
}

describe('how near outlines come', () => {
  test.each([0, 1, 2, 3].flatMap((turn) => [false, true].map((mirrored) => [turn as Turn, mirrored] as const)))('turned by %i quarters, mirrored %s: the same outline is found', (turn, mirrored) => {
    const other = shiftRing(turnRing(mirrored ? mirror(ell) : ell, turn), { x: 12_345, y: -6_789 });
    expect(outlineLikeness(ell, other, 1000)!.distance).toBeLessThanOrEqual(1);
  });

  test('says how the outline was turned', () => {
    expect(outlineLikeness(ell, turnRing(ell, 3), 1000)).toMatchObject({ turn: 1, mirrored: false });
    expect(outlineLikeness(ell, mirror(ell), 1000)).toMatchObject({ mirrored: true });
  });

  test('a flap 0.8 mm longer is within 1 mm, and nearer when the difference is shared', () => {
    const longer = ring([0, 0], [120, 0], [120, 45], [50, 45], [50, 130.8], [0, 130.8]);
    const { distance } = outlineLikeness(ell, longer, 1000)!;
    // Shifted by half the difference, one end stands out by 0.4 and the other by as much; the inner corner moves along.
    expect(distance).toBeGreaterThanOrEqual(400);
    expect(distance).toBeLessThanOrEqual(415);
    expect(outlineLikeness(ell, longer, 300)).toBeUndefined();
  });

  test('a notch in the middle of an edge counts although every corner lies on the other outline', () => {
    const square = ring([0, 0], [100, 0], [100, 100], [0, 100]);
    const notched = ring([0, 0], [48, 0], [50, 3], [52, 0], [100, 0], [100, 100], [0, 100]);
    const { distance } = outlineLikeness(square, notched, 5000)!;
    // The middle of the gap is farther from the notch's flanks than its tip is from the edge: less than 3, more than 1.
    expect(distance).toBeGreaterThan(1400);
    expect(distance).toBeLessThanOrEqual(3000);
    expect(outlineLikeness(square, notched, 1000)).toBeUndefined();
  });

  test('the distance found is the one that points along the outlines show, and symmetric', () => {
    const wobble = fc.array(fc.tuple(fc.integer({ min: -900, max: 900 }), fc.integer({ min: -900, max: 900 })), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(wobble, (moves) => {
        const other = ell.map(({ x, y }: Point, i) => ({ x: x + moves[i][0], y: y + moves[i][1] }));
        const there = outlineLikeness(ell, other, 4000);
        const back = outlineLikeness(other, ell, 4000);
        // Laid as drawn it is one of the poses, so what is found is no worse.
        const drawn = Math.max(sampled(ell, other), sampled(other, ell));
        expect(there!.distance).toBeLessThanOrEqual(drawn + 20);
        expect(Math.abs(there!.distance - back!.distance)).toBeLessThanOrEqual(60);
      }),
      { numRuns: 40, seed: 7 },
    );
  });

  test('other shapes are no match', () => {
    expect(outlineLikeness(ell, ring([0, 0], [120, 0], [120, 130], [0, 130]), 2000)).toBeUndefined();
    expect(outlineLikeness(ell, ring([0, 0], [90, 0], [90, 90], [0, 90]), 2000)).toBeUndefined();
  });
});
