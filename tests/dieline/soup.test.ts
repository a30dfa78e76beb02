import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { flattenLoop } from '../../src/geometry/flatten.ts';
import { loopArea } from '../../src/geometry/loop-area.ts';
import type { CurvePath } from '../../src/geometry/curve.ts';
import { ringFaults } from '../../src/geometry/validity.ts';
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

/** Whether a loop can be laid out: flattened to the outside, coarsely or finely, it is a simple ring. */
function isSimple(path: CurvePath): boolean {
  return [0.02, 0.001].some((toleranceMm) => ringFaults(flattenLoop(path, { toleranceMm, side: 'outside' }).ring).length === 0);
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
          expect(isSimple(outline)).toBe(true);
          for (const opening of openings) {
            expect(joinsUp(opening) && isSimple(opening)).toBe(true);
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
