import { describe, expect, test } from 'vitest';
import type { Ring } from '../../src/geometry/point.ts';
import { DEPTHS_PER_STEP, rasterOf, type Raster } from '../../src/nesting/tables-raster.ts';

const edgesOf = (...rings: Ring[]) => Float64Array.from(rings.flatMap((ring) => ring.flatMap((a, k) => [a.x, a.y, ring[(k + 1) % ring.length]!.x, ring[(k + 1) % ring.length]!.y])));
const none = new Float64Array(0);
const box = (x: number, y: number, w: number, h: number): Ring => [{ x, y }, { x: x + w, y }, { x: x + w, y: y + h }, { x, y: y + h }];

/** µm at the node nearest to a place. */
function depthAt(raster: Raster, x: number, y: number): number {
  const column = Math.round((x - raster.originX) / raster.step);
  const row = Math.round((y - raster.originY) / raster.step);
  return (raster.depths[row * raster.columns + column]! * raster.step) / DEPTHS_PER_STEP;
}

describe('the raster of depths', () => {
  const step = 500;
  const unit = step / DEPTHS_PER_STEP;

  test('of a rectangle is the distance to its nearest side', () => {
    const raster = rasterOf(edgesOf(box(-10_250, -20_000, 20_500, 40_000)), none, step);
    for (let y = -19_500; y < 20_000; y += step) {
      for (let x = -10_000; x <= 10_000; x += step) {
        const exact = Math.min(10_250 - Math.abs(x), 20_000 - Math.abs(y));
        expect(Math.abs(depthAt(raster, x, y) - exact)).toBeLessThanOrEqual(unit);
      }
    }
    expect(depthAt(raster, 10_500, 0)).toBe(-250);
    expect(depthAt(raster, 11_000, 0)).toBeLessThan(-600);
  });

  test('sees holes, and slits of no width', () => {
    const hole = box(-1000, -1000, 2000, 2000).toReversed();
    const slit = Float64Array.of(5000, -8000, 5000, 8000);
    const raster = rasterOf(edgesOf(box(-10_000, -10_000, 20_000, 20_000), hole), slit, step);
    expect(depthAt(raster, 0, 0)).toBeLessThan(-700);
    expect(depthAt(raster, 3000, 0)).toBe(2000);
    expect(depthAt(raster, 5000, 0)).toBe(0);
    expect(depthAt(raster, 6000, 0)).toBe(1000);
    expect(depthAt(raster, -4000, 4000)).toBeCloseTo(Math.hypot(3000, 3000), -2);
  });

  test('of a circle is exact near the contour and within a hundredth of the radius everywhere', () => {
    const radius = 30_000;
    const circle = Array.from({ length: 720 }, (_, k) => ({ x: radius * Math.cos((k * Math.PI) / 360), y: radius * Math.sin((k * Math.PI) / 360) }));
    const raster = rasterOf(edgesOf(circle), none, step);
    let worst = 0;
    let worstNear = 0;
    for (let y = -29_000; y <= 29_000; y += step) {
      for (let x = -29_000; x <= 29_000; x += step) {
        const r = Math.hypot(x, y);
        if (r > radius - step) continue;
        const error = Math.abs(depthAt(raster, x, y) - (radius - r));
        worst = Math.max(worst, error);
        if (r > radius / 2) worstNear = Math.max(worstNear, error);
      }
    }
    expect(worstNear).toBeLessThan(unit + 10);
    expect(worst).toBeLessThan(radius / 100);
  });
});
