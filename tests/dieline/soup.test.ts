import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { flattenPath } from '../../src/geometry/flatten.ts';
import { loopArea } from '../../src/geometry/loop-area.ts';
import type { CurvePath } from '../../src/geometry/curve.ts';
import { toMicrons } from '../../src/base/units.ts';
import { crossing } from '../../src/geometry/predicates.ts';
import { page, read } from './support.ts';

const SEED = { seed: 20_261_125 };

/** Coarse places, so that ends, lines and arcs fall on one another often; some are off by less than joining, some by more. */
const place = fc.tuple(fc.integer({ min: 0, max: 8 }), fc.constantFrom(0, 0, 0, 0, 0.008, 0.3)).map(([cell, off]) => cell * 10 + off);
const point = fc.tuple(place, place).map(([x, y]) => `${x} ${y}`);
const piece = fc.oneof(
  { weight: 6, arbitrary: fc.tuple(point, point).map(([a, b]) => `M${a}L${b}`) },
  { weight: 2, arbitrary: fc.tuple(point, point, fc.constantFrom(5, 10, 20), fc.constantFrom('0 0', '0 1', '1 0', '1 1')).map(([a, b, r, flags]) => `M${a}A${r} ${r} 0 ${flags} ${b}`) },
  { weight: 1, arbitrary: fc.tuple(point, point, point, point).map(([a, b, c, d]) => `M${a}C${b} ${c} ${d}`) },
  { weight: 1, arbitrary: fc.tuple(point, point, point).map(([a, b, c]) => `M${a}L${b}L${c}Z`) },
);
const line = fc.tuple(piece, fc.constantFrom('black', 'black', 'black', 'red'), fc.constantFrom('', '', 'id="cut"', 'class="crease"', 'stroke-dasharray="3 2"')).map(([d, stroke, more]) => `<path d="${d}" stroke="${stroke}" fill="none" ${more}/>`);

function joinsUp(path: CurvePath): boolean {
  return path.every(({ to }, i) => {
    const next = path[(i + 1) % path.length].from;
    return to.x === next.x && to.y === next.y;
  });
}

/** Proper crossings between pieces of a closed path, whole µm. */
function crossings(path: CurvePath): number {
  const points = flattenPath(path, 0.05).slice(0, -1).map(({ x, y }) => ({ x: toMicrons(x), y: toMicrons(y) }));
  let count = 0;
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length];
    for (let j = i + 2; j < points.length; j++) {
      if (crossing(a, b, points[j], points[(j + 1) % points.length]).kind === 'proper') count++;
    }
  });
  return count;
}

describe('any soup of lines', () => {
  test('is read without failing, into closed simple outlines with openings inside', () => {
    fc.assert(
      fc.property(fc.array(line, { minLength: 1, maxLength: 30 }), (lines) => {
        const { blanks, issues } = read(page(lines.join('')));
        for (const { outline, openings, areaMm2, rules } of blanks) {
          expect(joinsUp(outline)).toBe(true);
          expect(loopArea(outline)).toBeCloseTo(areaMm2, 9);
          expect(areaMm2).toBeGreaterThan(0);
          expect(crossings(outline)).toBe(0);
          for (const opening of openings) {
            expect(joinsUp(opening)).toBe(true);
            expect(loopArea(opening)).toBeLessThan(0);
            expect(-loopArea(opening)).toBeLessThan(areaMm2);
          }
          expect(rules.every(({ curves }) => curves.length > 0)).toBe(true);
        }
        expect(blanks.length === 0).toBe(issues.some(({ severity }) => severity === 'error' ));
      }),
      { ...SEED, numRuns: 120 },
    );
  });
});
