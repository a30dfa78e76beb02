import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ArcCurve, CubicCurve } from '../../src/geometry/curve.ts';
import { arcCubics } from '../../src/render/arc-cubics.ts';

function pointOn({ from, control1, control2, to }: CubicCurve, t: number) {
  const mix = (a: number, b: number, c: number, d: number) => (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t ** 2 * c + t ** 3 * d;
  return { x: mix(from.x, control1.x, control2.x, to.x), y: mix(from.y, control1.y, control2.y, to.y) };
}

describe('arcs as cubic curves', () => {
  test('run end to end and stay on the ellipse within 2.8 parts in 10 000', () => {
    const angle = fc.double({ min: -6.28, max: 6.28, noNaN: true });
    fc.assert(
      fc.property(angle, angle.filter((sweep) => Math.abs(sweep) > 0.01), angle, fc.integer({ min: 1, max: 100 }), fc.integer({ min: 1, max: 100 }), (start, sweep, tilt, radiusX, radiusY) => {
        const centre = { x: 3, y: -7 };
        const place = (at: number) => ({
          x: centre.x + Math.cos(tilt) * radiusX * Math.cos(at) - Math.sin(tilt) * radiusY * Math.sin(at),
          y: centre.y + Math.sin(tilt) * radiusX * Math.cos(at) + Math.cos(tilt) * radiusY * Math.sin(at),
        });
        const arc: ArcCurve = { kind: 'arc', centre, radiusX, radiusY, tilt, start, sweep, from: place(start), to: place(start + sweep) };
        const cubics = arcCubics(arc);
        expect(cubics[0]!.from).toEqual(arc.from);
        expect(cubics.at(-1)!.to).toEqual(arc.to);
        for (let i = 1; i < cubics.length; i++) expect(cubics[i]!.from).toEqual(cubics[i - 1]!.to);
        for (const cubic of cubics) {
          for (const t of [0, 0.2, 0.5, 0.9]) {
            const p = pointOn(cubic, t);
            const [dx, dy] = [p.x - centre.x, p.y - centre.y];
            const u = (Math.cos(tilt) * dx + Math.sin(tilt) * dy) / radiusX;
            const v = (-Math.sin(tilt) * dx + Math.cos(tilt) * dy) / radiusY;
            expect(Math.abs(Math.sqrt(u * u + v * v) - 1)).toBeLessThan(0.00028);
          }
        }
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});
