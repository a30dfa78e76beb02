import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inkedM2, inkZones } from '../../src/estimate/ink-zones.ts';
import type { MmRing, PlacedBlank } from '../../src/layout/layout-file.ts';
import { at, layoutWith, polygonDesign, rectangle } from '../support/layouts.ts';

const corner: MmRing = [[0, 0], [120, 0], [120, 40], [50, 40], [50, 90], [0, 90]];
const sheet = { sheet: { width: 1000, height: 700 } };

describe('ink zones', () => {
  test('one blank in one zone: its inked area over the zone’s part of the sheet', () => {
    const { shares, fromMm } = inkZones(layoutWith([rectangle('a', 40, 70)], [at('a', 205, 100)], sheet), 0.5, 50);
    expect(fromMm).toBe(0);
    expect(shares).toHaveLength(20);
    expect(shares[4]).toBeCloseTo((0.5 * 40 * 70) / (50 * 700), 9);
    expect(shares.filter((share) => share > 0)).toHaveLength(1);
  });

  test('zones lie centred; the outer ones are only as wide as the sheet reaches', () => {
    const { shares, fromMm } = inkZones(layoutWith([rectangle('a', 1000, 700)], [at('a', 0, 0)], sheet), 0.3, 32.5);
    expect(shares).toHaveLength(31);
    expect(fromMm).toBeCloseTo(-3.75, 9);
    for (const share of shares) expect(share).toBeCloseTo(0.3, 6);
  });

  // A blank inked in its left half only, once upright and once on its head beside it.
  test('turning a blank moves its solid to the other side', () => {
    const layout = layoutWith([rectangle('a', 100, 70)], [at('a', 0, 0), at('a', 200, 80, 180)], sheet);
    const { shares, upright } = inkZones(layout, [[1, 0]], 50);
    const full = (50 * 70) / (50 * 700);
    expect(shares.slice(0, 4).map((share) => Math.round(share / full))).toEqual([1, 0, 0, 1]);
    expect(upright.slice(0, 4).map((share) => Math.round(share / full))).toEqual([1, 0, 1, 0]);
  });

  test('rows are counted from the top of the drawing: a quarter turn counter-clockwise brings the top to the left', () => {
    const layout = layoutWith([rectangle('a', 100, 100)], [at('a', 100, 0, 90)], sheet);
    expect(inkZones(layout, [[1], [0]], 50).shares.slice(0, 2).map((share) => share > 0)).toEqual([true, false]);
  });

  test('all the ink of the blanks lies in the zones, however they are turned', () => {
    const place = fc.record({ rotation: fc.constantFrom(0, 90, 180, 270), x: fc.integer({ min: 200, max: 800 }), y: fc.integer({ min: 200, max: 500 }) }).map((one): PlacedBlank => ({ design: 'l', ...one }));
    const coverage = fc.oneof(fc.double({ min: 0, max: 1, noNaN: true }), fc.array(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 4 }));
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 6 }), coverage, fc.double({ min: 10, max: 90, noNaN: true }), (placements, inked, zoneMm) => {
        const { shares, upright, fromMm } = inkZones(layoutWith([polygonDesign('l', corner)], placements, sheet), inked, zoneMm);
        const widthOf = (zone: number) => Math.min(1000, fromMm + (zone + 1) * zoneMm) - Math.max(0, fromMm + zone * zoneMm);
        const m2 = (all: readonly number[]) => all.reduce((sum, share, zone) => sum + (share * widthOf(zone) * 700) / 1e6, 0);
        const wanted = placements.length * inkedM2(corner, inked);
        expect(m2(shares)).toBeCloseTo(wanted, 5);
        expect(m2(upright)).toBeCloseTo(wanted, 5);
      }),
      { seed: 41, numRuns: 150 },
    );
  });
});
