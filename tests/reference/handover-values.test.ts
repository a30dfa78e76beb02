import { describe, expect, test } from 'vitest';
import { channelWidth, creaseHeight, CUTTING_FORCE_N_PER_MM, cuttingForce } from '../../src/estimate/die-figures.ts';
import { backUpPlace } from '../../src/layout/back-up.ts';

describe('figures of a die', () => {
  test('crease rule and channels for board of 0.45 mm', () => {
    // h = 23.80 − board; width (1.3 … 1.5) × board + rule 0.71: makers of creasing matrix. 1.295 and 1.385 computed from it.
    expect(creaseHeight(0.45).value).toBeCloseTo(23.35, 9);
    expect(channelWidth(0.45, 'along').value).toBeCloseTo(1.295, 9);
    expect(channelWidth(0.45, 'across').value).toBeCloseTo(1.385, 9);
  });

  test('400 lb an inch is 70.05 N/mm; 36.0 m of knife take 257 tonnes-force', () => {
    expect(CUTTING_FORCE_N_PER_MM).toBeCloseTo(70.05, 2);
    expect(cuttingForce(36_000).value).toBeCloseTo(257.2, 1);
  });

  test('500 in of knife take 100 short tons without the rubber', () => {
    // Die makers' rule of thumb: 500 × 400 = 200 000 lb, to which 25 000 lb of rubber are added there.
    expect(cuttingForce(500 * 25.4).value! / 0.90718474).toBeCloseTo(100, 6);
  });
});

describe('the second side', () => {
  test('station (512.25, 304.5) on 1020 × 720', () => {
    const [station, sheet] = [{ x: 512.25, y: 304.5 }, { width: 1020, height: 720 }];
    expect(backUpPlace(station, sheet, 'work-and-turn')).toEqual({ x: 507.75, y: 304.5 });
    expect(backUpPlace(station, sheet, 'sheetwise')).toEqual({ x: 507.75, y: 304.5 });
    expect(backUpPlace(station, sheet, 'work-and-tumble')).toEqual({ x: 512.25, y: 415.5 });
    expect(backUpPlace(station, sheet, 'perfecting')).toEqual({ x: 512.25, y: 415.5 });
  });
});
