import fc from 'fast-check';
import { expect, test } from 'vitest';
import { areaFactor, compose, IDENTITY, inverse, mapCurve, mapPath, mapPoint, reversePath, rotation, scaling, translation, type Affine } from '../../src/geometry/affine.ts';
import { loopArea } from '../../src/geometry/loop-area.ts';
import { curvePoint, decimal, ellipseLoop, mixedLoop } from '../support/curves.ts';

const seeded = { seed: 20260103, numRuns: 200 };
const anyLoop = fc.oneof(ellipseLoop, mixedLoop);
const anyMap: fc.Arbitrary<Affine> = fc
  .record({ a: decimal(-2, 2), b: decimal(-2, 2), c: decimal(-2, 2), d: decimal(-2, 2), e: decimal(-50, 50), f: decimal(-50, 50) })
  .filter((map) => Math.abs(areaFactor(map)) > 0.05);

test('a curve mapped is the map of its points, arcs included, whatever the map', () => {
  fc.assert(
    fc.property(anyLoop, fc.oneof(anyMap, fc.constantFrom(rotation(30), rotation(90), scaling(1, -1), scaling(2), compose(scaling(-1, 1), rotation(45)))), (loop, map) => {
      for (const curve of loop) {
        const image = mapCurve(map, curve);
        expect(image.kind).toBe(curve.kind);
        if (image.kind === 'arc') expect(Math.min(image.radiusX, image.radiusY)).toBeGreaterThan(0);
        for (const t of [0, 0.13, 0.5, 0.77, 1]) {
          const expected = mapPoint(map, curvePoint(curve, t));
          const actual = curvePoint(image, t);
          expect(actual.x).toBeCloseTo(expected.x, 8);
          expect(actual.y).toBeCloseTo(expected.y, 8);
        }
      }
    }),
    seeded,
  );
});

test('areas change by the factor, signs by mirroring', () => {
  fc.assert(
    fc.property(anyLoop, anyMap, (loop, map) => {
      const expected = loopArea(loop) * areaFactor(map);
      expect(loopArea(mapPath(map, loop)) / expected).toBeCloseTo(1, 8);
      expect(loopArea(reversePath(loop)) / -loopArea(loop)).toBeCloseTo(1, 10);
    }),
    seeded,
  );
});

test('composing and inverting', () => {
  fc.assert(
    fc.property(anyMap, anyMap, decimal(-100, 100), decimal(-100, 100), (outer, inner, x, y) => {
      const p = { x, y };
      const direct = mapPoint(outer, mapPoint(inner, p));
      const composed = mapPoint(compose(outer, inner), p);
      expect(composed.x).toBeCloseTo(direct.x, 9);
      expect(composed.y).toBeCloseTo(direct.y, 9);
      const back = mapPoint(inverse(outer)!, mapPoint(outer, p));
      expect(back.x).toBeCloseTo(x, 8);
      expect(back.y).toBeCloseTo(y, 8);
    }),
    seeded,
  );
  expect(inverse(scaling(1, 0))).toBeUndefined();
});

test('quarter turns are exact and circles stay circles', () => {
  expect(rotation(0)).toEqual(IDENTITY);
  expect(mapPoint(rotation(90), { x: 3, y: 1 })).toEqual({ x: -1, y: 3 });
  expect(mapPoint(rotation(-90), { x: 3, y: 1 })).toEqual({ x: 1, y: -3 });
  expect(mapPoint(compose(translation(10, 0), rotation(450)), { x: 3, y: 1 })).toEqual({ x: 9, y: 3 });
  const circle = { kind: 'arc' as const, from: { x: 5, y: 0 }, to: { x: 0, y: 5 }, centre: { x: 0, y: 0 }, radiusX: 5, radiusY: 5, tilt: 0, start: 0, sweep: Math.PI / 2 };
  const turned = mapCurve(rotation(90), circle);
  expect(turned).toMatchObject({ radiusX: 5, radiusY: 5, from: { x: 0, y: 5 }, to: { x: -5, y: 0 } });
});
