import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Turn } from '../../src/geometry/turn.ts';
import type { Problem } from '../../src/layout/problem.ts';
import { areaShares } from '../../src/nesting/limits/area-limit.ts';
import type { MixtureCertificate } from '../../src/nesting/limits/clique-certificate.ts';
import { grant } from '../../src/nesting/limits/granted.ts';
import { mixtureCovers } from '../../src/nesting/limits/mixture-cover.ts';
import { prepareLinearPrograms } from '../../src/nesting/linear-program.ts';
import { statedMixture } from '../../src/pipeline/verify-limit.ts';
import { checkMixture } from '../../src/proof/check.ts';
import { countsOnLattice, polyominoOutline, type Cells } from '../support/exhaustive.ts';
import { problemOf, ringOf, type PointMm } from '../support/problems.ts';

beforeAll(() => prepareLinearPrograms());

const SIDE = 20;
const DEPTH = { grids: [200], halvings: 1, mostCells: 1500, work: 4e5 };
const shape = fc.constantFrom<Cells>(
  [[0, 0], [1, 0]],
  [[0, 0], [1, 0], [0, 1]],
  [[0, 0], [1, 0], [2, 0], [1, 1]],
  [[0, 0], [1, 0], [1, 1], [2, 1]],
  [[0, 0], [0, 1], [0, 2], [1, 0]],
  [[0, 0], [2, 0], [0, 1], [1, 1], [2, 1]],
);
const design = fc.record({ shape, turns: fc.constantFrom<readonly Turn[]>([0], [0, 2], [0, 1, 2, 3]) });

function mixtureOf(designs: readonly { readonly shape: Cells; readonly turns: readonly Turn[] }[], columns: number, rows: number, more: Partial<Problem> = {}): Problem {
  const parts = designs.map(({ shape: cells, turns }, d) => ({ id: `${d}`, outline: ringOf(polyominoOutline(cells, SIDE)), openings: [], turns }));
  return problemOf([], [SIDE * columns, SIDE * rows], 0, [0], { parts, ...more });
}

describe('covers of several designs', () => {
  test('no layout that trying all finds is worth more, and no plan of two forms takes fewer pressings than they prove', () => {
    let useful = 0;
    fc.assert(
      fc.property(fc.array(design, { minLength: 2, maxLength: 3 }), fc.integer({ min: 3, max: 4 }), fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 3, maxLength: 3 }), fc.boolean(), (designs, columns, all, capped) => {
        const quantities = all.slice(0, designs.length);
        const layouts = countsOnLattice(designs, columns, 3);
        const most = designs.map((_, d) => (capped ? Math.max(...layouts.map((counts) => counts[d]!)) : Infinity));
        const problem = mixtureOf(designs, columns, 3);
        for (const certificate of mixtureCovers(problem, quantities, most, 1, DEPTH)) {
          const worths = certificate.designs.map(({ worth }) => worth);
          expect(checkMixture(JSON.parse(JSON.stringify(certificate)), statedMixture(problem))).toEqual({ ok: true, worths, most: certificate.most });
          for (const counts of layouts) expect(worthOf(counts, worths)).toBeLessThanOrEqual(certificate.most);
          expect(fewest(layouts, quantities)).toBeGreaterThanOrEqual(worthOf(quantities, worths) / certificate.most);
          useful++;
        }
      }),
      { numRuns: 8, seed: 61 },
    );
    expect(useful).toBeGreaterThan(8);
  });

  test('tees and crosses: more than areas prove', () => {
    const tee: PointMm[] = [[40, 0], [80, 0], [80, 80], [120, 80], [120, 120], [0, 120], [0, 80], [40, 80]];
    const cross: PointMm[] = [[40, 0], [80, 0], [80, 40], [120, 40], [120, 80], [80, 80], [80, 120], [40, 120], [40, 80], [0, 80], [0, 40], [40, 40]];
    const parts = [tee, cross].map((outline, d) => ({ id: `${d}`, outline: ringOf(outline), openings: [], turns: [0, 2] as const }));
    const problem = problemOf([], [400, 280], 4, [0], { parts });
    const quantities = [600, 400];
    const found = mixtureCovers(problem, quantities, [Infinity, Infinity], 1, { grids: [800], halvings: 1, mostCells: 4000, work: 2e7 });
    const bound = ({ designs, most }: MixtureCertificate) => worthOf(quantities, designs.map(({ worth }) => worth)) / most;
    expect(found.map(bound)).toEqual(found.map(bound).toSorted((a, b) => a - b));
    expect(bound(found.at(-1)!)).toBeGreaterThan(1.1 * worthOf(quantities, areaShares(problem, grant(problem))));
    expect(mixtureCovers(problem, quantities, [Infinity, Infinity], 1, { grids: [800], halvings: 1, mostCells: 4000, work: 2e7 })).toEqual(found);
  });

  test('a design that no sheet holds: nothing is claimed', () => {
    const problem = mixtureOf([{ shape: [[0, 0], [1, 0]], turns: [0] }, { shape: [[0, 0], [1, 0], [2, 0], [3, 0]], turns: [0] }], 3, 3);
    expect(mixtureCovers(problem, [1, 1], [Infinity, Infinity], 1, DEPTH)).toEqual([]);
  });
});

function worthOf(counts: readonly number[], worths: readonly number[]): number {
  return counts.reduce((sum, count, d) => sum + count * worths[d]!, 0);
}

/** Pressings of the best one or two forms. */
function fewest(layouts: readonly (readonly number[])[], quantities: readonly number[]): number {
  let least = Infinity;
  for (const a of layouts) {
    for (const b of layouts) {
      for (let first = 0; first <= Math.max(...quantities); first++) {
        const rest = Math.max(...quantities.map((quantity, d) => (quantity <= a[d]! * first ? 0 : Math.ceil((quantity - a[d]! * first) / b[d]!))));
        least = Math.min(least, first + rest);
      }
    }
  }
  return least;
}
