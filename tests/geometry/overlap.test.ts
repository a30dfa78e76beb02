import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ringsOverlap } from '../../src/geometry/overlap.ts';
import { shiftRing, type Ring } from '../../src/geometry/point.ts';
import { TURNS, turnRing } from '../../src/geometry/turn.ts';
import { columnRing, placedStar, wholePoint } from '../support/lattice.ts';
import { isSimple } from '../support/rings.ts';
import { sharedArea } from '../support/slow-overlap.ts';

const seeded = { seed: 20260106, numRuns: 1000 };
const star = placedStar(7, 10).filter(isSimple);
const anyRing = fc.oneof(columnRing, star);

test('rings overlap just when the area they share is not zero, by an independent library', () => {
  fc.assert(
    fc.property(anyRing, anyRing, (a, b) => {
      // Lattice rings share no area or at least some thousandths of a unit.
      expect(ringsOverlap(a, b)).toBe(sharedArea(a, b) > 1e-9);
    }),
    seeded,
  );
});

test('either order, either orientation, quarter turns and shifts', () => {
  fc.assert(
    fc.property(anyRing, anyRing, fc.constantFrom(...TURNS), wholePoint(1_000_000), (a, b, turn, by) => {
      const found = ringsOverlap(a, b);
      expect(ringsOverlap(b, a)).toBe(found);
      expect(ringsOverlap(a.toReversed(), b)).toBe(found);
      expect(ringsOverlap(shiftRing(turnRing(a, turn), by), shiftRing(turnRing(b, turn), by))).toBe(found);
    }),
    { ...seeded, numRuns: 400 },
  );
});

const ring = (...pairs: [number, number][]): Ring => pairs.map(([x, y]) => ({ x, y }));
const square = ring([0, 0], [10, 0], [10, 10], [0, 10]);
const uShape = ring([0, 0], [30, 0], [30, 20], [20, 20], [20, 10], [10, 10], [10, 20], [0, 20]);

test.each([
  ['itself', square, square, true],
  ['one edge in common, side by side', square, shiftRing(square, { x: 10, y: 3 }), false],
  ['one corner in common', square, shiftRing(square, { x: 10, y: 10 }), false],
  ['inside without contact', square, ring([2, 2], [4, 2], [4, 4]), true],
  ['inside, on two corners', square, ring([0, 0], [10, 10], [4, 6]), true],
  ['inside, along an edge', square, ring([2, 0], [8, 0], [5, 5]), true],
  ['a bar that fills the inlet of a U', uShape, ring([10, 10], [20, 10], [20, 30], [10, 30]), false],
  ['a bar one unit too deep for it', uShape, ring([10, 9], [20, 9], [20, 30], [10, 30]), true],
  ['a bar one unit too wide for it', uShape, ring([10, 10], [21, 10], [21, 30], [10, 30]), true],
  ['a cross through corners only', ring([0, 0], [5, -5], [10, 0], [5, 5]), ring([0, 0], [5, -1], [10, 0], [5, 1]), true],
  ['apart', square, shiftRing(square, { x: 11, y: 0 }), false],
])('%s', (_, a, b, expected) => expect(ringsOverlap(a, b)).toBe(expected));
