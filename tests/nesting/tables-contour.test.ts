import { describe, expect, test } from 'vitest';
import { noFitPolygon } from '../../src/geometry/no-fit.ts';
import type { Ring } from '../../src/geometry/point.ts';
import { noFitRaster } from '../../src/nesting/tables-contour.ts';
import { DEPTHS_PER_STEP, type Raster } from '../../src/nesting/tables-raster.ts';

const step = 500;
const unit = step / DEPTHS_PER_STEP;
const box = (w: number, h: number): Ring => [{ x: 0, y: 0 }, { x: w, y: 0 }, { x: w, y: h }, { x: 0, y: h }];

/** µm at the node nearest to a shift. */
function depthAt(raster: Raster, x: number, y: number): number {
  const column = Math.round((x - raster.originX) / raster.step);
  const row = Math.round((y - raster.originY) / raster.step);
  return (raster.depths[row * raster.columns + column] * raster.step) / DEPTHS_PER_STEP;
}

describe('the raster of a no-fit region', () => {
  test('of two rectangles is the way to the nearest side', () => {
    const raster = noFitRaster(noFitPolygon(box(10_250, 30_000), box(10_250, 10_000)), step);
    for (let y = -9500; y < 30_000; y += step) {
      for (let x = -10_000; x <= 10_000; x += step) {
        const exact = Math.min(10_250 - Math.abs(x), y + 10_000, 30_000 - y);
        expect(Math.abs(depthAt(raster, x, y) - exact)).toBeLessThanOrEqual(unit);
      }
    }
    expect(depthAt(raster, 10_500, 0)).toBe(-250);
    expect(depthAt(raster, 11_000, 0)).toBeLessThan(-600);
  });

  test('with a gap is the way to the contour at that gap, round at the corners', () => {
    const gap = 4000;
    const raster = noFitRaster(noFitPolygon(box(20_000, 12_000), box(20_000, 12_000), gap), step);
    let worst = 0;
    for (let y = -15_500; y <= 15_500; y += step) {
      for (let x = -23_500; x <= 23_500; x += step) {
        const beyondX = Math.max(0, Math.abs(x) - 20_000);
        const beyondY = Math.max(0, Math.abs(y) - 12_000);
        const outside = Math.sqrt(beyondX ** 2 + beyondY ** 2);
        const exact = outside > 0 ? gap - outside : gap + Math.min(20_000 - Math.abs(x), 12_000 - Math.abs(y));
        if (exact > -step) worst = Math.max(worst, Math.abs(depthAt(raster, x, y) - exact));
      }
    }
    expect(worst).toBeLessThan(20);
  });

  test('in an inlet counts to the contour at the gap, not to the outline', () => {
    const inlet: Ring = [{ x: 0, y: 0 }, { x: 40_000, y: 0 }, { x: 40_000, y: 30_000 }, { x: 30_000, y: 30_000 }, { x: 30_000, y: 10_000 }, { x: 10_000, y: 10_000 }, { x: 10_000, y: 30_000 }, { x: 0, y: 30_000 }];
    const bar = box(16_000, 40_000);
    const raster = noFitRaster(noFitPolygon(inlet, bar, 3000), step);
    // The bar stands 2 mm from each side of the inlet; the nearest allowed shift is straight out of it.
    expect(depthAt(raster, 12_000, 12_000)).toBeGreaterThan(10_000);
    expect(depthAt(raster, 12_000, 32_500)).toBeLessThan(1500);
  });

  test('keeps a slit of no width: a bar in an inlet as wide as itself', () => {
    const inlet: Ring = [{ x: 0, y: 0 }, { x: 30_000, y: 0 }, { x: 30_000, y: 30_000 }, { x: 20_000, y: 30_000 }, { x: 20_000, y: 10_000 }, { x: 10_000, y: 10_000 }, { x: 10_000, y: 30_000 }, { x: 0, y: 30_000 }];
    const raster = noFitRaster(noFitPolygon(inlet, box(10_000, 15_000)), step);
    for (let y = 10_000; y <= 29_500; y += step) expect(depthAt(raster, 10_000, y)).toBe(0);
    expect(depthAt(raster, 10_500, 20_000)).toBe(500);
    expect(depthAt(raster, 9500, 20_000)).toBe(500);
  });

  test('of two rounds has the depth of a disc within a hundredth of its radius', () => {
    const radius = 15_000;
    const round = Array.from({ length: 180 }, (_, k) => ({
      x: Math.round(radius + radius * Math.cos((k * Math.PI) / 90)),
      y: Math.round(radius + radius * Math.sin((k * Math.PI) / 90)),
    }));
    const raster = noFitRaster(noFitPolygon(round, round, 3000), step);
    let worst = 0;
    for (let y = -32_000; y <= 32_000; y += step) {
      for (let x = -32_000; x <= 32_000; x += step) {
        const exact = 2 * radius + 3000 - Math.sqrt(x * x + y * y);
        if (exact > 0) worst = Math.max(worst, Math.abs(depthAt(raster, x, y) - exact));
      }
    }
    expect(worst).toBeLessThan(radius / 50);
  });
});
