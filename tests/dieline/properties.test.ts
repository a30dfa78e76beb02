import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { codes, figures, page, read } from './support.ts';

const SEED = { seed: 14_054, numRuns: 40 };

type Segment = readonly [x1: number, y1: number, x2: number, y2: number];

/** A carton's outline and creases as loose segments: panels of given widths with flaps of given heights at both ends. */
const carton = fc
  .record({
    panels: fc.array(fc.record({ width: fc.integer({ min: 20, max: 70 }), above: fc.integer({ min: 0, max: 40 }), below: fc.integer({ min: 0, max: 40 }) }), { minLength: 1, maxLength: 4 }),
    height: fc.integer({ min: 20, max: 90 }),
  })
  .map(({ panels, height }) => {
    const cut: Segment[] = [];
    const crease: Segment[] = [];
    const [top, bottom] = [60, 60 + height];
    let x = 10;
    let area = 0;
    panels.forEach(({ width, above, below }, i) => {
      const right = x + width;
      area += width * (height + above + below);
      for (const [y, reach] of [[top, -above], [bottom, below]]) {
        if (reach === 0) {
          cut.push([x, y, right, y]);
          continue;
        }
        crease.push([x, y, right, y]);
        cut.push([x, y, x, y + reach], [x, y + reach, right, y + reach], [right, y + reach, right, y]);
      }
      if (i > 0) crease.push([x, top, x, bottom]);
      x = right;
    });
    cut.push([10, top, 10, bottom], [x, top, x, bottom]);
    return { cut, crease, area };
  });

/** Each line reversed or not, split or not at a place on it given in the file's three decimals, in any order. */
function shuffled(segments: readonly Segment[]): fc.Arbitrary<Segment[]> {
  return fc
    .tuple(...segments.map((segment) => fc.tuple(fc.constant(segment), fc.boolean(), fc.option(fc.integer({ min: 50, max: 950 })))))
    .map((choices) =>
      choices.flatMap(([[x1, y1, x2, y2], reversed, at]): Segment[] => {
        const [a, b] = reversed ? [[x2, y2], [x1, y1]] : [[x1, y1], [x2, y2]];
        if (at === null) return [[a[0], a[1], b[0], b[1]]];
        const middle = [a[0] + ((b[0] - a[0]) * at) / 1000, a[1] + ((b[1] - a[1]) * at) / 1000];
        return [[a[0], a[1], middle[0], middle[1]], [middle[0], middle[1], b[0], b[1]]];
      }),
    )
    .chain((list) => fc.shuffledSubarray(list, { minLength: list.length }));
}

const drawLines = (segments: readonly Segment[]) => segments.map(([x1, y1, x2, y2]) => `<line x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}"/>`).join('');
const draw = (cut: readonly Segment[], crease: readonly Segment[], attributes = '') => page(`<g ${attributes}><g id="cut" stroke="red">${drawLines(cut)}</g><g id="crease" stroke="blue">${drawLines(crease)}</g></g>`);

describe('the same lines', () => {
  test('in any order, direction and pieces give the same blank', () => {
    const cases = carton.chain(({ cut, crease, area }) => fc.record({ cut: fc.constant(cut), crease: fc.constant(crease), area: fc.constant(area), otherCut: shuffled(cut), otherCrease: fc.constant(crease) }));
    fc.assert(
      fc.property(cases, ({ cut, crease, area, otherCut, otherCrease }) => {
        const [plain] = figures(read(draw(cut, crease)));
        expect(plain.area).toBeCloseTo(area, 3);
        expect(figures(read(draw(otherCut, otherCrease)))).toEqual([plain]);
      }),
      SEED,
    );
  });

  test('drawn twice count once', () => {
    fc.assert(
      fc.property(carton, ({ cut, crease }) => {
        const once = read(draw(cut, crease));
        const twice = read(draw([...cut, ...cut.toReversed()], [...crease, ...crease]));
        expect(figures(twice)).toEqual(figures(once));
        expect(codes(twice)).toContain('line-doubled');
      }),
      SEED,
    );
  });

  test('without names give the same outline', () => {
    fc.assert(
      fc.property(carton, ({ cut, crease }) => {
        const [named] = figures(read(draw(cut, crease)));
        const [unnamed] = figures(read(page(`<g stroke="red">${drawLines(cut)}</g><g stroke="blue">${drawLines(crease)}</g>`)));
        expect([unnamed.size, unnamed.area]).toEqual([named.size, named.area]);
        const total = (rules: Record<string, number>) => Object.values(rules).reduce((sum, length) => sum + length, 0);
        expect(total(unnamed.rules)).toBeCloseTo(total(named.rules), 2);
      }),
      SEED,
    );
  });
});

describe('moved, turned and scaled drawings', () => {
  test('keep area and lengths under rotation, translation and mirroring', () => {
    const moves = fc.record({ angle: fc.double({ min: 0, max: 360, noNaN: true }), x: fc.integer({ min: -500, max: 500 }), mirrored: fc.boolean() });
    fc.assert(
      fc.property(carton, moves, ({ cut, crease, area }, { angle, x, mirrored }) => {
        const [{ areaMm2 }] = read(draw(cut, crease, `transform="translate(${x} 7) rotate(${angle}) scale(${mirrored ? -1 : 1} 1)"`)).blanks;
        expect(areaMm2).toBeCloseTo(area, 4);
      }),
      SEED,
    );
  });

  test('scale with the user unit', () => {
    fc.assert(
      fc.property(carton, fc.constantFrom(0.25, 0.5, 2, 25.4), ({ cut, crease, area }, scale) => {
        const [{ areaMm2 }] = read(draw(cut, crease), { scale }).blanks;
        expect(areaMm2 / (area * scale ** 2)).toBeCloseTo(1, 9);
      }),
      SEED,
    );
  });
});

describe('round shapes', () => {
  const radius = fc.integer({ min: 3, max: 900 }).map((tenths) => tenths / 10 + 3);

  test('keep their area as circles, as arcs in pieces and doubled', () => {
    fc.assert(
      fc.property(radius, fc.integer({ min: 1, max: 359 }), fc.integer({ min: 0, max: 359 }), (r, opening, turn) => {
        const at = (degrees: number) => `${150 + r * Math.cos((degrees * Math.PI) / 180)} ${150 + r * Math.sin((degrees * Math.PI) / 180)}`;
        const [a, b] = [turn, turn + opening];
        const arcs = `<path d="M${at(a)}A${r} ${r} 0 ${opening > 180 ? 1 : 0} 1 ${at(b)}"/><path d="M${at(a)}A${r} ${r} 0 ${opening > 180 ? 0 : 1} 0 ${at(b)}"/>`;
        const circle = `<circle cx="150" cy="150" r="${r}"/>`;
        for (const shapes of [circle, arcs, circle + arcs]) {
          const dieline = read(page(`<g stroke="black" fill="none">${shapes}</g>`));
          expect(dieline.blanks).toHaveLength(1);
          expect(dieline.blanks[0].areaMm2 / (Math.PI * r * r)).toBeCloseTo(1, 6);
          expect(figures(dieline)[0].rules.Cutting).toBeCloseTo(2 * Math.PI * r, 2);
        }
      }),
      SEED,
    );
  });
});
