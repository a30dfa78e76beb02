import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { convexParts } from '../../src/geometry/convex-parts.ts';
import type { Ring } from '../../src/geometry/point.ts';
import { doubleArea } from '../../src/geometry/point.ts';
import { turnRing } from '../../src/geometry/turn.ts';
import { cartonRing, skylineRings, starRings, withFlatVertices } from '../support/rings.ts';

const key = (p: { x: number; y: number }) => `${p.x},${p.y}`;

function expectTiling(ring: Ring): void {
  const parts = convexParts(ring);
  const corners = new Set(ring.map(key));
  let total = 0;
  for (const part of parts) {
    total += doubleArea(part);
    part.forEach((p, i) => {
      const q = part[(i + 1) % part.length]!;
      const r = part[(i + 2) % part.length]!;
      expect((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)).toBeGreaterThan(0);
      expect(corners.has(key(p))).toBe(true);
    });
  }
  expect(total).toBe(doubleArea(ring));
  expect(parts.length).toBeLessThanOrEqual(ring.length - 2);
}

describe('convex parts', () => {
  test('tile stars and skylines exactly, with strictly convex corners taken from the ring', () => {
    fc.assert(fc.property(fc.oneof(starRings(), skylineRings()), expectTiling), { seed: 11, numRuns: 300 });
  });

  test('flat vertices change nothing but which vertices are named', () => {
    fc.assert(
      fc.property(skylineRings(), fc.integer({ min: 2, max: 5 }), (ring, pieces) => expectTiling(withFlatVertices(ring, pieces))),
      { seed: 12, numRuns: 100 },
    );
  });

  test('a convex ring is one part, an L is two, a plus is three', () => {
    const l = [{ x: 0, y: 0 }, { x: 2, y: 0 }, { x: 2, y: 1 }, { x: 1, y: 1 }, { x: 1, y: 2 }, { x: 0, y: 2 }];
    const plus = [[1, 0], [2, 0], [2, 1], [3, 1], [3, 2], [2, 2], [2, 3], [1, 3], [1, 2], [0, 2], [0, 1], [1, 1]].map(([x, y]) => ({ x: x!, y: y! }));
    expect(convexParts([{ x: 0, y: 0 }, { x: 4, y: 0 }, { x: 5, y: 3 }, { x: 1, y: 2 }])).toHaveLength(1);
    expect(convexParts(l)).toHaveLength(2);
    expect(convexParts(plus)).toHaveLength(3);
  });

  test('a carton of several hundred points, in every turn', () => {
    const carton = cartonRing(14);
    expect(carton.length).toBeGreaterThan(280);
    for (const turn of [0, 1, 2, 3] as const) expectTiling(turnRing(carton, turn));
  });

  test('a clockwise ring and one that crosses itself are refused', () => {
    const bowTie = [{ x: 0, y: 0 }, { x: 10, y: 10 }, { x: 10, y: 0 }, { x: 0, y: 10 }];
    expect(() => convexParts(bowTie)).toThrow(RangeError);
    expect(() => convexParts(cartonRing(5).toReversed())).toThrow(RangeError);
    expect(() => convexParts([{ x: 0, y: 0 }, { x: 0, y: 10 }, { x: 10, y: 0 }])).toThrow(RangeError);
  });
});
