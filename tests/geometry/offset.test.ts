import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { growPolygon, shrinkPolygon } from '../../src/geometry/offset.ts';
import { boxOf, doubleArea, ringArea, type Point, type Polygon, type Ring } from '../../src/geometry/point.ts';
import { TURNS, turnRing } from '../../src/geometry/turn.ts';
import { distanceToOutline, isWithin } from '../support/outline-distance.ts';
import { cartonRing, skylineRings, starRings } from '../support/rings.ts';

const seeded = { seed: 20260112, numRuns: 40 };
const anyRing = fc.oneof(starRings(16, 60_000), skylineRings(6, 10_000));
const distance = fc.integer({ min: 1, max: 15_000 });
const tolerance = fc.integer({ min: 2, max: 200 });
const solid = (outer: Ring): Polygon => ({ outer, holes: [] });
/** Where edges of the grown outline meet in an inner corner their crossing is rounded. */
const INNER_CORNER = 1;

/** Points along the ring's edges, corners included. */
function along(ring: Ring, perEdge = 4): Point[] {
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length];
    return Array.from({ length: perEdge }, (_, k) => ({ x: a.x + (k / perEdge) * (b.x - a.x), y: a.y + (k / perEdge) * (b.y - a.y) }));
  });
}

describe('growPolygon', () => {
  test('every point of the grown outline is at least the distance away and no more than the deviation further', () => {
    fc.assert(
      fc.property(anyRing, distance, tolerance, (ring, by, arcTolerance) => {
        const { polygon, deviationMicrons } = growPolygon(solid(ring), by, arcTolerance);
        expect(deviationMicrons).toBeLessThanOrEqual(arcTolerance + 2.2);
        for (const p of [polygon.outer, ...polygon.holes].flatMap((outline) => along(outline))) {
          const away = distanceToOutline(p, ring);
          expect(isWithin(p, ring)).toBe(false);
          expect(away).toBeGreaterThanOrEqual(by - INNER_CORNER);
          expect(away).toBeLessThanOrEqual(by + deviationMicrons);
        }
      }),
      seeded,
    );
  });

  test('boxes grow by exactly the distance', () => {
    fc.assert(
      fc.property(anyRing, distance, (ring, by) => {
        const before = boxOf(ring);
        const after = boxOf(growPolygon(solid(ring), by, 50).polygon.outer);
        expect(after).toEqual({ minX: before.minX - by, minY: before.minY - by, maxX: before.maxX + by, maxY: before.maxY + by });
      }),
      seeded,
    );
  });

  test('a convex area A with perimeter P grows to A + P d + π d²', () => {
    const hexagon = Array.from({ length: 6 }, (_, i) => ({ x: Math.round(40_000 * Math.cos((i * Math.PI) / 3 + 0.2)), y: Math.round(40_000 * Math.sin((i * Math.PI) / 3 + 0.2)) }));
    const perimeter = hexagon.reduce((sum, a, i) => sum + Math.hypot(hexagon[(i + 1) % 6].x - a.x, hexagon[(i + 1) % 6].y - a.y), 0);
    for (const by of [1_000, 5_000, 20_000]) {
      const exact = ringArea(hexagon) + perimeter * by + Math.PI * by * by;
      const { polygon, deviationMicrons } = growPolygon(solid(hexagon), by, 2);
      expect(ringArea(polygon.outer)).toBeGreaterThan(exact);
      expect(ringArea(polygon.outer)).toBeLessThan(exact + (perimeter + 2 * Math.PI * by) * deviationMicrons);
    }
  });

  test('a rectangle keeps its straight sides to the micrometre; a small hole fills, a large one shrinks', () => {
    const rectangle: Ring = [{ x: 0, y: 0 }, { x: 90_000, y: 0 }, { x: 90_000, y: 50_000 }, { x: 0, y: 50_000 }];
    const hole: Ring = [{ x: 10_000, y: 10_000 }, { x: 10_000, y: 30_000 }, { x: 40_000, y: 30_000 }, { x: 40_000, y: 10_000 }];
    const { polygon } = growPolygon({ outer: rectangle, holes: [hole] }, 3_000, 10);
    expect(boxOf(polygon.outer)).toEqual({ minX: -3_000, minY: -3_000, maxX: 93_000, maxY: 53_000 });
    expect(polygon.holes.map(boxOf)).toEqual([{ minX: 13_000, minY: 13_000, maxX: 37_000, maxY: 27_000 }]);
    expect(doubleArea(polygon.holes[0])).toBeLessThan(0);
    expect(growPolygon({ outer: rectangle, holes: [hole] }, 10_000, 10).polygon.holes).toEqual([]);
    expect(growPolygon(solid(rectangle), 0, 10)).toEqual({ polygon: solid(rectangle), deviationMicrons: 0 });
  });

  test('turns with the polygon', () => {
    fc.assert(
      fc.property(anyRing, distance, fc.constantFrom(...TURNS), (ring, by, turn) => {
        const plain = turnRing(growPolygon(solid(ring), by, 20).polygon.outer, turn);
        const turned = growPolygon(solid(turnRing(ring, turn)), by, 20).polygon.outer;
        for (const p of turned) expect(distanceToOutline(p, plain)).toBeLessThan(1.5);
        for (const p of plain) expect(distanceToOutline(p, turned)).toBeLessThan(1.5);
      }),
      seeded,
    );
  });

  test('a carton of 300 points gets few more', () => {
    const carton = cartonRing(11);
    const { polygon } = growPolygon(solid(carton), 3_000, 20);
    expect(polygon.outer.length).toBeLessThan(1.3 * carton.length);
    expect(polygon.holes).toEqual([]);
  });
});

describe('shrinkPolygon', () => {
  test('every point of the inset is at least the distance within, its outline no more than the deviation deeper', () => {
    fc.assert(
      fc.property(anyRing, distance, tolerance, (ring, by, arcTolerance) => {
        const { polygons, deviationMicrons } = shrinkPolygon(solid(ring), by, arcTolerance);
        for (const { outer, holes } of polygons) {
          expect(holes).toEqual([]);
          for (const p of along(outer)) {
            expect(isWithin(p, ring)).toBe(true);
            const deep = distanceToOutline(p, ring);
            expect(deep).toBeGreaterThanOrEqual(by - INNER_CORNER);
            expect(deep).toBeLessThanOrEqual(by + deviationMicrons);
          }
        }
      }),
      seeded,
    );
  });

  test('a dumb-bell parts in two, a narrow bar vanishes, a hole widens', () => {
    const dumbBell: Ring = [
      { x: 0, y: 0 }, { x: 20_000, y: 0 }, { x: 20_000, y: 8_000 }, { x: 40_000, y: 8_000 }, { x: 40_000, y: 0 }, { x: 60_000, y: 0 },
      { x: 60_000, y: 20_000 }, { x: 40_000, y: 20_000 }, { x: 40_000, y: 12_000 }, { x: 20_000, y: 12_000 }, { x: 20_000, y: 20_000 }, { x: 0, y: 20_000 },
    ];
    const halves = shrinkPolygon(solid(dumbBell), 3_000, 10).polygons.map(({ outer }) => boxOf(outer).minX).toSorted((a, b) => a - b);
    expect(halves).toHaveLength(2);
    expect(halves[0]).toBe(3_000);
    // In the middle of the neck's mouth, 2 mm from its corners along it: √(3² − 2²) = 2.236 mm inside.
    expect(halves[1]).toBeGreaterThanOrEqual(42_236);
    expect(halves[1]).toBeLessThanOrEqual(42_250);
    expect(shrinkPolygon(solid(dumbBell), 10_001, 10).polygons).toEqual([]);
    const square: Ring = [{ x: 0, y: 0 }, { x: 50_000, y: 0 }, { x: 50_000, y: 50_000 }, { x: 0, y: 50_000 }];
    const hole: Ring = [{ x: 20_000, y: 20_000 }, { x: 20_000, y: 30_000 }, { x: 30_000, y: 30_000 }, { x: 30_000, y: 20_000 }];
    const { polygons } = shrinkPolygon({ outer: square, holes: [hole] }, 5_000, 10);
    expect(polygons).toHaveLength(1);
    expect(boxOf(polygons[0].outer)).toEqual({ minX: 5_000, minY: 5_000, maxX: 45_000, maxY: 45_000 });
    expect(polygons[0].holes.map(boxOf)).toEqual([{ minX: 15_000, minY: 15_000, maxX: 35_000, maxY: 35_000 }]);
  });
});
