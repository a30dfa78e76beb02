import { Polygon as FlattenPolygon, Segment, Point as FlattenPoint } from '@flatten-js/core';
import { EndType, FillRule, JoinType, areaPaths, inflatePaths, union } from 'clipper2-ts';
import fc from 'fast-check';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import polygonClipping from 'polygon-clipping';
import { describe, expect, test } from 'vitest';
import { intersect, subtract, unite } from '../../src/geometry/boolean.ts';
import { ringDistance, segmentDistance } from '../../src/geometry/distance.ts';
import { flattenLoop } from '../../src/geometry/flatten.ts';
import { growPolygon, shrinkPolygon } from '../../src/geometry/offset.ts';
import { readPathData } from '../../src/geometry/path-data.ts';
import { doubleArea, ringArea, shiftRing, type Polygon, type Ring } from '../../src/geometry/point.ts';
import { inflatedArea } from '../support/clipper2-wasm.ts';
import { wholePoint } from '../support/lattice.ts';
import { cartonRing, skylineRings, starRings } from '../support/rings.ts';

/** Independent libraries as second opinions; each test names its own. */

const anyRing = fc.oneof(starRings(16, 100_000), skylineRings(6, 15_000));
const solid = (outer: Ring): Polygon => ({ outer, holes: [] });
const ringsOf = (polygons: readonly Polygon[]) => polygons.flatMap(({ outer, holes }) => [outer, ...holes]);
const areaOf = (polygons: readonly Polygon[]) => ringsOf(polygons).reduce((sum, ring) => sum + doubleArea(ring) / 2, 0);
const perimeterOf = (rings: readonly Ring[]) =>
  rings.reduce((sum, ring) => sum + ring.reduce((length, a, i) => length + Math.hypot(ring[(i + 1) % ring.length].x - a.x, ring[(i + 1) % ring.length].y - a.y), 0), 0);

describe('distances, against @flatten-js/core 1.6', () => {
  const toFlatten = (ring: Ring) => new FlattenPolygon(ring.map(({ x, y }): [number, number] => [x, y]));

  test('of segments', () => {
    fc.assert(
      fc.property(wholePoint(100_000), wholePoint(100_000), wholePoint(100_000), wholePoint(100_000), (a, b, c, d) => {
        const [first, second] = [[a, b], [c, d]].map(([p, q]) => new Segment(new FlattenPoint(p.x, p.y), new FlattenPoint(q.x, q.y)));
        expect(segmentDistance(a, b, c, d).distance).toBeCloseTo(first.distanceTo(second)[0], 5);
      }),
      { seed: 20260201, numRuns: 500 },
    );
  });

  test('of outlines, apart and crossing', () => {
    fc.assert(
      fc.property(anyRing, anyRing, wholePoint(250_000), (a, b, by) => {
        const moved = shiftRing(b, by);
        expect(ringDistance(a, moved).distance).toBeCloseTo(toFlatten(a).distanceTo(toFlatten(moved))[0], 4);
      }),
      { seed: 20260202, numRuns: 60 },
    );
  });
});

describe('booleans', () => {
  const factory = new GeometryFactory();
  const toJsts = (ring: Ring) => factory.createPolygon([...ring, ring[0]].map(({ x, y }) => new Coordinate(x, y)));
  const toPairs = (ring: Ring): [number, number][][] => [ring.map(({ x, y }) => [x, y])];
  const pairsArea = (result: readonly (readonly (readonly (readonly [number, number])[])[])[]) =>
    result.flat().reduce((sum, ring) => sum + doubleArea(ring.map(([x, y]) => ({ x, y }))) / 2, 0);

  test('areas against polygon-clipping 0.15 and the overlays of jsts 2.12', () => {
    fc.assert(
      fc.property(anyRing, anyRing, wholePoint(60_000), (a, b, by) => {
        const moved = shiftRing(b, by);
        const [p, q] = [[solid(a)], [solid(moved)]];
        // Rounded crossings move the edges next to them by up to 0.71 µm.
        const slack = perimeterOf([a, moved]);
        const results = [unite([...p, ...q]), intersect(p, q), subtract(p, q)].map(areaOf);
        const floats = [
          polygonClipping.union(toPairs(a), toPairs(moved)),
          polygonClipping.intersection(toPairs(a), toPairs(moved)),
          polygonClipping.difference(toPairs(a), toPairs(moved)),
        ].map((result) => pairsArea(result as [number, number][][][]));
        const overlays = [OverlayOp.UNION, OverlayOp.INTERSECTION, OverlayOp.DIFFERENCE].map((operation) => OverlayOp.overlayOp(toJsts(a), toJsts(moved), operation));
        results.forEach((area, i) => {
          expect(Math.abs(area - floats[i])).toBeLessThan(slack);
          expect(Math.abs(area - overlays[i].getArea())).toBeLessThan(slack);
        });
      }),
      { seed: 20260203, numRuns: 60 },
    );
  });
});

describe('offsets', () => {
  test('the grown area lies between the round joins of the C++ library and its deviation', () => {
    fc.assert(
      fc.property(fc.oneof(anyRing, fc.constant(cartonRing(8))), fc.integer({ min: 100, max: 12_000 }), (ring, by) => {
        const { polygon, deviationMicrons } = growPolygon(solid(ring), by, 5);
        const outline = perimeterOf(ringsOf([polygon]));
        const reference = inflatedArea(ring, by, 0.5);
        expect(areaOf([polygon])).toBeGreaterThan(reference - outline);
        expect(areaOf([polygon])).toBeLessThan(reference + outline * (deviationMicrons + 1));
      }),
      { seed: 20260204, numRuns: 60 },
    );
  });

  test('the shrunk area stays below the library’s, by no more than its deviation', () => {
    fc.assert(
      fc.property(anyRing, fc.integer({ min: 100, max: 12_000 }), (ring, by) => {
        const { polygons, deviationMicrons } = shrinkPolygon(solid(ring), by, 5);
        const reference = inflatePaths([[...ring]], -by, JoinType.Round, EndType.Polygon, 2, 0.5);
        const outline = perimeterOf(reference) + perimeterOf(ringsOf(polygons));
        expect(areaOf(polygons)).toBeLessThanOrEqual(areaPaths(reference) + outline);
        expect(areaOf(polygons)).toBeGreaterThanOrEqual(areaPaths(reference) - outline * (deviationMicrons + 1));
      }),
      { seed: 20260205, numRuns: 60 },
    );
  });

  test('the offset library chosen grows a square of 100 mm by 10 mm with square corners to one of 120 mm, both ways round', () => {
    const square = [{ x: 0, y: 0 }, { x: 100_000, y: 0 }, { x: 100_000, y: 100_000 }, { x: 0, y: 100_000 }];
    for (const given of [square, square.toReversed()]) {
      const grown = inflatePaths([given], 10_000, JoinType.Miter, EndType.Polygon);
      expect(areaPaths(union(grown, FillRule.NonZero))).toBe(120_000 ** 2);
    }
  });
});

describe('closed forms (from memory, textbook geometry)', () => {
  test('a 60 mm circle, an ellipse, a stadium: area and flattening', () => {
    const areaMm2 = (text: string) => ringArea(flattenLoop(readPathData(text)[0], { toleranceMm: 0.001, side: 'near' }).ring) / 1e6;
    expect(areaMm2('M30 0 A30 30 0 0 1 -30 0 A30 30 0 0 1 30 0 Z')).toBeCloseTo(Math.PI * 900, 0);
    expect(areaMm2('M40 0 A40 25 0 0 1 -40 0 A40 25 0 0 1 40 0 Z')).toBeCloseTo(Math.PI * 40 * 25, 0);
    expect(areaMm2('M0 -20 H50 A20 20 0 0 1 50 20 H0 A20 20 0 0 1 0 -20 Z')).toBeCloseTo(50 * 40 + Math.PI * 400, 0);
  });

  test('the usual four-cubic circle (handle 0.5523 r) is too large by 0.028 % in radius at most', () => {
    const k = 0.5522847498 * 50;
    const text = `M50 0 C50 ${k} ${k} 50 0 50 S-50 ${k} -50 0 S${-k} -50 0 -50 S50 ${-k} 50 0 Z`;
    const { ring, deviationMicrons } = flattenLoop(readPathData(text)[0], { toleranceMm: 0.01, side: 'outside' });
    const radii = ring.map(({ x, y }) => Math.hypot(x, y));
    expect(Math.max(...radii)).toBeLessThan(50_000 * 1.000_28 + deviationMicrons);
    expect(Math.min(...radii)).toBeGreaterThan(50_000);
  });
});
