import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { forbids, noFitPolygon, outlineDistance, withGap } from '../../src/geometry/no-fit.ts';
import { grownNoFit } from '../../src/geometry/no-fit-grown.ts';
import { nearestFree } from '../../src/geometry/nearest-free.ts';
import { noFitOutline } from '../../src/geometry/no-fit-outline.ts';
import { boxOf, shiftRing } from '../../src/geometry/point.ts';
import { locatePoint } from '../../src/geometry/predicates.ts';
import { cartonRing, cellRing, skylineRings, starRings } from '../support/rings.ts';
import { slowDistance } from '../support/slow-overlap.ts';

const rings = fc.oneof(starRings(12), skylineRings(5));
const shifts = fc.record({ x: fc.integer({ min: -220_000, max: 220_000 }), y: fc.integer({ min: -220_000, max: 220_000 }) });

describe('the grown outline', () => {
  test('parts allowed from forbidden shifts within its deviation', () => {
    const seen = { forbidden: 0, free: 0 };
    fc.assert(
      fc.property(rings, rings, fc.constantFrom(1000, 7000), fc.array(shifts, { minLength: 20, maxLength: 20 }), (a, b, gap, tries) => {
        const noFit = noFitPolygon(a, b, gap);
        const { polygon, deviationMicrons } = grownNoFit(noFit, 10);
        expect(deviationMicrons).toBeLessThan(13);
        const loose = withGap(noFit, gap + Math.ceil(deviationMicrons));
        const strict = withGap(noFit, gap - 2);
        for (const d of tries) {
          const places = [polygon.outer, ...polygon.holes].map((ring) => locatePoint(d, ring));
          const inside = places[0] !== 'outside' && places.slice(1).every((place) => place !== 'inside');
          if (forbids(strict, d.x, d.y)) expect(inside).toBe(true);
          if (inside) expect(forbids(loose, d.x, d.y)).toBe(true);
          seen[inside ? 'forbidden' : 'free']++;
        }
      }),
      { seed: 91, numRuns: 60 },
    );
    expect(Math.min(seen.forbidden, seen.free)).toBeGreaterThan(100);
  });

  test('keeps axis-parallel contacts exact', () => {
    const carton = cartonRing(6);
    const bare = boxOf(noFitOutline(noFitPolygon(carton, carton)).outer);
    expect(boxOf(grownNoFit(noFitPolygon(carton, carton, 5000), 10).polygon.outer)).toEqual({ minX: bare.minX - 5000, minY: bare.minY - 5000, maxX: bare.maxX + 5000, maxY: bare.maxY + 5000 });
  });

  test('closes pockets and slits that the gap fills', () => {
    const socket = cellRing(['###.###', '##...##', '#.....#', '#.....#', '#######'], 1000);
    const key = cellRing(['.#.', '###'], 1000);
    expect(grownNoFit(noFitPolygon(socket, key, 300), 10).polygon.holes).toHaveLength(1);
    expect(grownNoFit(noFitPolygon(socket, key, 1200), 10).polygon.holes).toHaveLength(0);
  });
});

describe('the distance of two outlines at a shift', () => {
  test('is that of every corner against every edge, 0 where they meet', () => {
    fc.assert(
      fc.property(rings, rings, shifts, (a, b, d) => {
        const noFit = noFitPolygon(a, b);
        const expected = forbids(noFit, d.x, d.y) ? 0 : slowDistance(a, shiftRing(b, d));
        expect(Math.abs(outlineDistance(noFit, d.x, d.y) - expected)).toBeLessThan(1e-6);
      }),
      { seed: 92, numRuns: 300 },
    );
  });
});

describe('the way out', () => {
  test('ends on an allowed shift, and no whole shift much nearer is allowed', () => {
    fc.assert(
      fc.property(rings, rings, shifts, (a, b, d) => {
        const noFit = noFitPolygon(a, b);
        if (!forbids(noFit, d.x, d.y)) return;
        const { place, depth } = nearestFree(noFitOutline(noFit), d);
        const around = [-2, -1, 0, 1, 2].flatMap((x) => [-2, -1, 0, 1, 2].map((y) => ({ x: Math.round(place.x) + x, y: Math.round(place.y) + y })));
        expect(around.some((p) => !forbids(noFit, p.x, p.y))).toBe(true);
        for (let k = 0; k < 16; k++) {
          const angle = (2 * Math.PI * k) / 16;
          const nearer = Math.max(0, depth - 3);
          expect(forbids(noFit, Math.round(d.x + nearer * Math.cos(angle)), Math.round(d.y + nearer * Math.sin(angle))) || depth < 4).toBe(true);
        }
      }),
      { seed: 93, numRuns: 200 },
    );
  });

  test('takes a slit or a single point when that is nearest', () => {
    const u = cellRing(['#.#', '#.#', '###'], 10);
    const slit = noFitOutline(noFitPolygon(u, cellRing(['#', '#'], 10)));
    expect(nearestFree(slit, { x: 8, y: 15 })).toEqual({ place: { x: 10, y: 15 }, depth: 2 });
    const socket = noFitOutline(noFitPolygon(cellRing(['##.##', '#...#', '#####'], 10), cellRing(['.#.', '###'], 10)));
    expect(nearestFree(socket, { x: 7, y: 14 })).toEqual({ place: { x: 10, y: 10 }, depth: 5 });
  });
});
