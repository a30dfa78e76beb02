import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mapPath, rotation, scaling, translation } from '../../src/geometry/affine.ts';
import { ellipseArc } from '../../src/geometry/arc.ts';
import type { CurvePath } from '../../src/geometry/curve.ts';
import { flattenLoop, flattenPath } from '../../src/geometry/flatten.ts';
import { loopArea } from '../../src/geometry/loop-area.ts';
import { readPathData } from '../../src/geometry/path-data.ts';
import { boxOf, doubleArea, ringArea, type Point, type Ring } from '../../src/geometry/point.ts';
import { decimal, ellipseLoop, mixedLoop, samplePath, wildCubicLoop } from '../support/curves.ts';
import { isSimple } from '../support/rings.ts';
import { distanceToOutline, isWithin } from '../support/outline-distance.ts';

const seeded = { seed: 20260101, numRuns: 40, endOnFailure: true };
const SNAP = Math.SQRT1_2;
/** Double rounding of coordinates near a metre, µm. */
const NOISE = 1e-6;

const anyLoop = fc.oneof(ellipseLoop, mixedLoop);
const tolerance = decimal(0.005, 0.5);

function inMicrons(points: readonly Point[]): Point[] {
  return points.map(({ x, y }) => ({ x: x * 1000, y: y * 1000 }));
}

/** How far a point stands out of a ring; 0 within. */
function excess(p: Point, ring: Ring): number {
  return isWithin(p, ring) ? 0 : distanceToOutline(p, ring);
}

describe('flattenLoop', () => {
  test('outside holds the loop, inside is held by it, near runs along it', () => {
    fc.assert(
      fc.property(anyLoop, tolerance, (loop, toleranceMm) => {
        const samples = inMicrons(samplePath(loop, 120));
        const fine = inMicrons(flattenPath(loop, 0.001)).slice(0, -1);
        const outside = flattenLoop(loop, { toleranceMm, side: 'outside' });
        const inside = flattenLoop(loop, { toleranceMm, side: 'inside' });
        const near = flattenLoop(loop, { toleranceMm, side: 'near' });
        // Next to a sharp corner tangents may cross the other side; then nothing is promised.
        if (isSimple(outside.ring)) for (const p of samples) expect(excess(p, outside.ring)).toBeLessThanOrEqual(SNAP + NOISE);
        if (isSimple(inside.ring)) for (const p of inside.ring) expect(excess(p, fine)).toBeLessThanOrEqual(SNAP + 1 + NOISE);
        for (const { ring, deviationMicrons } of [outside, inside, near]) {
          expect(deviationMicrons).toBeLessThanOrEqual(toleranceMm * 1000 + SNAP + 0.1 + NOISE);
          for (const p of samples) expect(distanceToOutline(p, ring)).toBeLessThanOrEqual(deviationMicrons + NOISE);
          expect(doubleArea(ring)).toBeGreaterThan(0);
        }
        expect(ringArea(inside.ring)).toBeLessThanOrEqual(ringArea(outside.ring));
      }),
      seeded,
    );
  });

  test('the ring never strays further from the loop than it says', () => {
    fc.assert(
      fc.property(anyLoop, tolerance, fc.constantFrom('outside' as const, 'inside' as const, 'near' as const), (loop, toleranceMm, side) => {
        const { ring, deviationMicrons } = flattenLoop(loop, { toleranceMm, side });
        const fine = inMicrons(flattenPath(loop, 0.001)).slice(0, -1);
        for (const p of ring) expect(distanceToOutline(p, fine)).toBeLessThanOrEqual(deviationMicrons + 1 + NOISE);
      }),
      { ...seeded, numRuns: 40 },
    );
  });

  test('cusps, loops and turns back of a cubic curve keep the tolerance and the deviation returned', () => {
    fc.assert(
      fc.property(wildCubicLoop, tolerance, fc.constantFrom('outside' as const, 'inside' as const, 'near' as const), (loop, toleranceMm, side) => {
        const { ring, deviationMicrons } = flattenLoop(loop, { toleranceMm, side });
        expect(deviationMicrons).toBeLessThanOrEqual(toleranceMm * 1000 + SNAP + 0.1 + NOISE);
        for (const p of inMicrons(samplePath(loop, 60))) expect(distanceToOutline(p, ring)).toBeLessThanOrEqual(deviationMicrons + NOISE);
      }),
      { ...seeded, numRuns: 300 },
    );
  });

  test('the box of the outside ring is the box of the loop, rounded', () => {
    fc.assert(
      fc.property(ellipseLoop, tolerance, (loop, toleranceMm) => {
        const [arc] = loop;
        if (arc.kind !== 'arc') throw new Error('ellipses are arcs');
        const { centre, radiusX, radiusY, tilt } = arc;
        // Half width of a tilted ellipse, closed form.
        const halfWidth = Math.hypot(radiusX * Math.cos(tilt), radiusY * Math.sin(tilt));
        const halfHeight = Math.hypot(radiusX * Math.sin(tilt), radiusY * Math.cos(tilt));
        const box = boxOf(flattenLoop(loop, { toleranceMm, side: 'outside' }).ring);
        expect(Math.abs(box.minX - (centre.x - halfWidth) * 1000)).toBeLessThanOrEqual(0.5 + NOISE);
        expect(Math.abs(box.maxX - (centre.x + halfWidth) * 1000)).toBeLessThanOrEqual(0.5 + NOISE);
        expect(Math.abs(box.minY - (centre.y - halfHeight) * 1000)).toBeLessThanOrEqual(0.5 + NOISE);
        expect(Math.abs(box.maxY - (centre.y + halfHeight) * 1000)).toBeLessThanOrEqual(0.5 + NOISE);
      }),
      seeded,
    );
  });

  test('a circle of 50 mm: exact box, area within the tolerance, few vertices', () => {
    const circle: CurvePath = [ellipseArc({ centre: { x: 25.4, y: -3.1 }, radiusX: 25, radiusY: 25, tilt: 0 }, 0, 2 * Math.PI)];
    const { ring, deviationMicrons } = flattenLoop(circle, { toleranceMm: 0.02, side: 'outside' });
    expect(boxOf(ring)).toEqual({ minX: 400, maxX: 50_400, minY: -28_100, maxY: 21_900 });
    expect(ringArea(ring)).toBeGreaterThan(Math.PI * 25_000 ** 2);
    expect(ringArea(ring)).toBeLessThan(Math.PI * (25_000 + deviationMicrons) ** 2);
    // sec(θ/2) − 1 ≤ 0.02/25 holds from 20 steps a quarter on: 4 × 20 tangents, each vertex the crossing of two.
    expect(ring).toHaveLength(80);
    expect(deviationMicrons).toBeLessThanOrEqual(20.8);
  });

  test('quarter turns, mirrors and shifts by whole micrometres go through flattening', () => {
    const maps = [
      { map: rotation(90), onPoint: ({ x, y }: Point) => ({ x: -y, y: x }) },
      { map: rotation(180), onPoint: ({ x, y }: Point) => ({ x: -x, y: -y }) },
      { map: scaling(-1, 1), onPoint: ({ x, y }: Point) => ({ x: -x, y }) },
      { map: translation(123.456, -7.5), onPoint: ({ x, y }: Point) => ({ x: x + 123_456, y: y - 7_500 }) },
    ];
    fc.assert(
      fc.property(anyLoop, fc.constantFrom(...maps), (loop, { map, onPoint }) => {
        const options = { toleranceMm: 0.05, side: 'outside' as const };
        const plain = flattenLoop(loop, options).ring.map(onPoint);
        const mapped = flattenLoop(mapPath(map, loop), options).ring;
        // The same outline up to the rounding of a vertex and of nearly straight ones left out.
        for (const p of mapped) expect(distanceToOutline(p, plain)).toBeLessThanOrEqual(1.5);
        for (const p of plain) expect(distanceToOutline(p, mapped)).toBeLessThanOrEqual(1.5);
      }),
      seeded,
    );
  });

  test('a rounded rectangle keeps its sides and has no vertex at the tangent points', () => {
    const [loop] = readPathData('M10 0 H90 A10 10 0 0 1 100 10 V50 A10 10 0 0 1 90 60 H10 A10 10 0 0 1 0 50 V10 A10 10 0 0 1 10 0 Z');
    const { ring } = flattenLoop(loop, { toleranceMm: 0.05, side: 'outside' });
    expect(boxOf(ring)).toEqual({ minX: 0, maxX: 100_000, minY: 0, maxY: 60_000 });
    expect(ring).not.toContainEqual({ x: 10_000, y: 0 });
    expect(ring.filter((p) => p.y === 0)).toHaveLength(2);
    expect(ringArea(ring) / 1e6).toBeGreaterThan(loopArea(loop));
  });

  test('a straight cubic that overshoots its end keeps the turn back, a point keeps one vertex', () => {
    const [spike] = readPathData('M0 0 C20 0 20 0 10 0 L10 10 Z');
    const { ring } = flattenLoop(spike, { toleranceMm: 0.01, side: 'outside' });
    expect(boxOf(ring).maxX).toBeGreaterThan(14_000);
    const [dot] = readPathData('M5 5 L5 5');
    expect(flattenLoop(dot, { toleranceMm: 0.01, side: 'outside' }).ring).toEqual([{ x: 5000, y: 5000 }]);
  });
});

test('loopArea agrees with a fine polygon', () => {
  fc.assert(
    fc.property(anyLoop, (loop) => {
      const fine = flattenPath(loop, 0.001);
      const perimeter = fine.slice(1).reduce((sum, p, i) => sum + Math.hypot(p.x - fine[i].x, p.y - fine[i].y), 0);
      expect(Math.abs(doubleArea(fine) / 2 - loopArea(loop))).toBeLessThan(0.001 * perimeter);
    }),
    { ...seeded, numRuns: 40 },
  );
});
