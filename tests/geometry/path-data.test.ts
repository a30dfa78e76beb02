import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/base/issue.ts';
import type { CurvePath } from '../../src/geometry/curve.ts';
import { flattenPath } from '../../src/geometry/flatten.ts';
import { parsePathData, readPathData, writePathData } from '../../src/geometry/path-data.ts';
import { curvePoint, ellipseLoop, mixedLoop, samplePath } from '../support/curves.ts';
import { distanceToOutline } from '../support/outline-distance.ts';

const ends = (text: string) => readPathData(text).map((path) => [path[0].from, ...path.map((curve) => curve.to)].map(({ x, y }) => [x, y]));

describe('readPathData', () => {
  test('absolute and relative lines, repeated commands, implicit lines after a move', () => {
    expect(ends('M1 2 3 4 L5 6 7 8 H9 V0 h-1 v+2 l1-1')).toEqual([[[1, 2], [3, 4], [5, 6], [7, 8], [9, 8], [9, 0], [8, 0], [8, 2], [9, 1]]]);
    expect(ends('m1,2,3,4 5,6')).toEqual([[[1, 2], [4, 6], [9, 12]]]);
  });

  test('several subpaths; a closed one ends where it begins, the next may go on from there', () => {
    expect(ends('M0 0H10V10Z l0 -5 M20 20 l1 0z')).toEqual([
      [[0, 0], [10, 0], [10, 10], [0, 0]],
      [[0, 0], [0, -5]],
      [[20, 20], [21, 20], [20, 20]],
    ]);
    expect(ends('M5 5 M0 0')).toEqual([]);
  });

  test('numbers as drawing programs pack them', () => {
    expect(ends('M.5.5L1e1-2.5E-1 09 1')).toEqual([[[0.5, 0.5], [10, -0.25], [9, 1]]]);
    const [[packed]] = readPathData('M0 0a5 5 0 0110 0');
    const [[spaced]] = readPathData('M0 0 A 5 5 0 0 1 10 0');
    expect(packed).toEqual(spaced);
  });

  test('quadratic curves are raised to cubic ones exactly, T and S reflect only their own kind', () => {
    const [[first, second]] = readPathData('M0 0 Q5 10 10 0 T20 0');
    for (const t of [0.1, 0.5, 0.8]) {
      const s = 1 - t;
      expect(curvePoint(first, t).x).toBeCloseTo(2 * s * t * 5 + t * t * 10, 12);
      expect(curvePoint(first, t).y).toBeCloseTo(2 * s * t * 10, 12);
      expect(curvePoint(second, t).y).toBeCloseTo(-2 * s * t * 10, 12);
    }
    const [[, smooth]] = readPathData('M0 0 C0 5 5 5 5 0 S10 -5 10 0');
    expect(smooth).toMatchObject({ control1: { x: 5, y: -5 }, control2: { x: 10, y: -5 } });
    const [[, afterQuadratic]] = readPathData('M0 0 Q5 10 10 0 S15 5 20 0');
    expect(afterQuadratic).toMatchObject({ control1: { x: 10, y: 0 } });
  });

  test('arcs: direction and size flags, radii too small, zero radius, equal ends', () => {
    const middle = (text: string) => curvePoint(readPathData(text)[0][0], 0.5);
    expect(middle('M0 0 A5 5 0 0 1 10 0').y).toBeCloseTo(-5, 12);
    expect(middle('M0 0 A5 5 0 0 0 10 0').y).toBeCloseTo(5, 12);
    // Radius 13, chord 10: the centre is 12 from the chord.
    expect(middle('M0 0 A13 13 0 0 1 10 0').y).toBeCloseTo(-1, 12);
    expect(middle('M0 0 A13 13 0 1 1 10 0').y).toBeCloseTo(-25, 12);
    expect(readPathData('M0 0 A1 2 0 0 1 10 0')[0][0]).toMatchObject({ kind: 'arc', radiusX: 5, radiusY: 10 });
    expect(readPathData('M0 0 A0 5 0 0 1 10 0')[0][0]).toEqual({ kind: 'line', from: { x: 0, y: 0 }, to: { x: 10, y: 0 } });
    expect(readPathData('M0 0 A5 5 0 1 1 0 0 L1 0')[0]).toHaveLength(1);
  });

  test.each([
    ['M0 0 L1 2 3', 11],
    ['M0 0 X', 6],
    ['M0 0 R1 1', 6],
    ['L1 1', 0],
    ['M0 0 A1 1 0 2 1 4 4', 13],
    ['M0 0 L1e400 0', 6],
    ['M0 0 Z 5 5', 7],
    ['M0 0 L 10 mm', 10],
  ])('%s is wrong at character %i; what stood before is kept', (text, position) => {
    const { faultAt, paths } = parsePathData(text);
    expect(faultAt).toBeGreaterThanOrEqual(position - 1);
    expect(faultAt).toBeLessThanOrEqual(position + 1);
    expect(paths.length).toBe(text === 'M0 0 L1 2 3' ? 1 : 0);
    expect(() => readPathData(text)).toThrow(InputError);
  });

  test('a run of 200 000 points is read in linear time', () => {
    const text = `M0 0L${Array.from({ length: 200_000 }, (_, i) => `${i % 997} ${i % 991}`).join(' ')}`;
    const started = performance.now();
    expect(readPathData(text)[0]).toHaveLength(200_000);
    // A quadratic reader takes tens of seconds here.
    expect(performance.now() - started).toBeLessThan(5000);
  });
});

/** A slender ellipse moves by a multiple of what its rounded end points do. */
function isStout([curve]: CurvePath): boolean {
  return curve.kind !== 'arc' || Math.max(curve.radiusX / curve.radiusY, curve.radiusY / curve.radiusX) < 8;
}

test('what is written reads back as the same outline, to the decimals written', () => {
  fc.assert(
    fc.property(fc.oneof(ellipseLoop.filter(isStout), mixedLoop), (loop) => {
      const text = writePathData(loop, 4);
      expect(text).toMatch(/^M.*Z$/);
      const [back] = readPathData(text);
      const outline = flattenPath(loop, 0.0005);
      // Rounding of ends and controls (0.00007), of tilt (0.0001° on 200 mm: 0.0004) and the two flattenings.
      for (const p of samplePath(back, 20)) expect(distanceToOutline(p, outline)).toBeLessThan(0.0025);
      expect(writePathData(back, 4)).toHaveLength(writePathData(readPathData(writePathData(back, 4))[0], 4).length);
    }),
    { seed: 20260102, numRuns: 60 },
  );
});

test('an open path has no Z, kinds stay kinds', () => {
  expect(writePathData(readPathData('M0 0 L1.23456 0 C1 1 2 2 3 3 A5 5 0 0 1 8 3')[0], 2)).toBe('M0 0 L1.23 0 C1 1 2 2 3 3 A5 5 0 0 1 8 3');
  expect(writePathData([], 3)).toBe('');
});
