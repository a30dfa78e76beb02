import fc from 'fast-check';
import { expect, test } from 'vitest';
import { intersect, subtract, unite } from '../../src/geometry/boolean.ts';
import { doubleArea, type Polygon, type Ring } from '../../src/geometry/point.ts';
import { TURNS, turnRing } from '../../src/geometry/turn.ts';
import { columnRing, placedStar } from '../support/lattice.ts';
import { isSimple } from '../support/rings.ts';

const square = (x: number, y: number, side: number): Ring => [{ x, y }, { x: x + side, y }, { x: x + side, y: y + side }, { x, y: y + side }];
const solid = (outer: Ring): Polygon => ({ outer, holes: [] });
const areaOf = (polygons: readonly Polygon[]) =>
  polygons.flatMap(({ outer, holes }) => [outer, ...holes]).reduce((sum, ring) => sum + doubleArea(ring) / 2, 0);

test('a square out of a square leaves a hole; what stands in the hole comes back as its own polygon', () => {
  const [frame, ...rest] = subtract([solid(square(0, 0, 30))], [solid(square(10, 10, 10))]);
  expect(rest).toEqual([]);
  expect(doubleArea(frame.outer) / 2).toBe(900);
  expect(frame.holes.map((hole) => doubleArea(hole) / 2)).toEqual([-100]);
  expect(unite([frame, solid(square(13, 13, 4))])).toHaveLength(2);
  const [filled] = unite([frame, solid(square(10, 10, 10))]);
  expect(filled.holes).toEqual([]);
  expect(doubleArea(filled.outer) / 2).toBe(900);
  expect(intersect([solid(square(0, 0, 10))], [solid(square(20, 0, 10))])).toEqual([]);
  expect(unite([])).toEqual([]);
});

test('areas add up, orientations are kept, whatever the quarter turn', () => {
  const anyRing = fc.oneof(columnRing.map((ring) => ring.map(({ x, y }) => ({ x: 1000 * x, y: 1000 * y }))), placedStar(5_000).filter(isSimple));
  fc.assert(
    fc.property(anyRing, anyRing, fc.constantFrom(...TURNS), (a, b, turn) => {
      const [p, q] = [[solid(turnRing(a, turn))], [solid(turnRing(b, turn))]];
      const union = unite([...p, ...q]);
      const both = intersect(p, q);
      const rest = subtract(p, q);
      // A rounded crossing moves two edges of up to 20 mm by up to 0.71 µm.
      const slack = 30_000 * (1 + a.length + b.length);
      expect(Math.abs(areaOf(union) + areaOf(both) - areaOf(p) - areaOf(q))).toBeLessThan(slack);
      expect(Math.abs(areaOf(rest) + areaOf(both) - areaOf(p))).toBeLessThan(slack);
      for (const { outer, holes } of [...union, ...both, ...rest]) {
        expect(doubleArea(outer)).toBeGreaterThan(0);
        for (const hole of holes) expect(doubleArea(hole)).toBeLessThan(0);
      }
    }),
    { seed: 20260111, numRuns: 200 },
  );
});
