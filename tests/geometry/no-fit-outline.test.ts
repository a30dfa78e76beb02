import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { forbids, noFitPolygon } from '../../src/geometry/no-fit.ts';
import { noFitOutline } from '../../src/geometry/no-fit-outline.ts';
import type { Point, Ring } from '../../src/geometry/point.ts';
import { boxOf, doubleArea } from '../../src/geometry/point.ts';
import { TURNS, turnRing } from '../../src/geometry/turn.ts';
import { cellRing, cartonRing, skylineRings, starRings } from '../support/rings.ts';

const ring = (...points: [number, number][]): Ring => points.map(([x, y]) => ({ x, y }));

function onEdge(p: Point, a: Point, b: Point): boolean {
  const flat = (b.x - a.x) * (p.y - a.y) === (b.y - a.y) * (p.x - a.x);
  return flat && p.x >= Math.min(a.x, b.x) && p.x <= Math.max(a.x, b.x) && p.y >= Math.min(a.y, b.y) && p.y <= Math.max(a.y, b.y);
}

/** Winding number of a ring about a point off its edges. */
function winding(p: Point, loop: Ring): number {
  let turns = 0;
  loop.forEach((a, i) => {
    const b = loop[(i + 1) % loop.length];
    const side = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
    if (a.y <= p.y && b.y > p.y && side > 0) turns++;
    if (a.y > p.y && b.y <= p.y && side < 0) turns--;
  });
  return turns;
}

/** Shapes that hook into one another, and skylines; every coordinate even, so that odd shifts lie between edges. */
const hooks = [['#.#', '###'], ['##.##', '#...#', '#####'], ['.#.', '###'], ['##', '#.', '##'], ['##', '.#', '##'], ['###', '#.#', '#..', '###'], ['#'], ['###.###', '#.....#', '#.....#', '#######'], ['##.', '.##']];
const squareRings = fc.oneof(
  skylineRings(4, 2),
  fc.constantFrom(...hooks).map((rows) => cellRing(rows, 2)),
);

describe('the outline of a no-fit polygon', () => {
  test('parts free from forbidden whole shifts exactly where all edges are axis-parallel', () => {
    const seen = { pockets: 0, slits: 0, points: 0 };
    fc.assert(
      fc.property(squareRings, squareRings, fc.constantFrom(...TURNS), (a, b, turn) => {
        const turned = turnRing(b, turn);
        const noFit = noFitPolygon(a, turned);
        const { outer, pockets, slits, points } = noFitOutline(noFit);
        if (pockets.length > 0) seen.pockets++;
        if (slits.length > 0) seen.slits++;
        if (points.length > 0) seen.points++;
        const loops = [outer, ...pockets];
        const { minX, minY, maxX, maxY } = boxOf(outer);
        for (let x = minX; x <= maxX; x++) {
          for (let y = minY; y <= maxY; y++) {
            const p = { x, y };
            const onBoundary = loops.some((loop) => loop.some((q, i) => onEdge(p, q, loop[(i + 1) % loop.length])));
            const free = onBoundary || slits.some(([from, to]) => onEdge(p, from, to)) || points.some((q) => q.x === x && q.y === y) || loops.reduce((sum, loop) => sum + winding(p, loop), 0) === 0;
            expect(free).toBe(!forbids(noFit, x, y));
          }
        }
      }),
      { seed: 51, numRuns: 80 },
    );
    expect(Math.min(seen.pockets, seen.slits, seen.points)).toBeGreaterThan(0);
  });

  test('lies within a micrometre of shifts that touch, at any angle', () => {
    fc.assert(
      fc.property(starRings(), starRings(), (a, b) => {
        const noFit = noFitPolygon(a, b);
        const { outer, pockets } = noFitOutline(noFit);
        for (const corner of [outer, ...pockets].flat()) {
          let free = 0;
          let forbidden = 0;
          for (const dx of [-2, -1, 0, 1, 2]) for (const dy of [-2, -1, 0, 1, 2]) if (forbids(noFit, corner.x + dx, corner.y + dy)) forbidden++; else free++;
          expect(Math.min(free, forbidden)).toBeGreaterThan(0);
        }
      }),
      { seed: 52, numRuns: 50 },
    );
  });

  test('is the point reflection of that of the pair exchanged', () => {
    fc.assert(
      fc.property(skylineRings(), skylineRings(), (a, b) => {
        const one = noFitOutline(noFitPolygon(a, b));
        const other = noFitOutline(noFitPolygon(b, a));
        const corners = (outline: typeof one, sign: number) => [outline.outer, ...outline.pockets, outline.points].flat().map((p) => `${sign * p.x + 0},${sign * p.y + 0}`).sort();
        expect(corners(one, 1)).toEqual(corners(other, -1));
        expect(one.slits.length).toBe(other.slits.length);
      }),
      { seed: 53, numRuns: 100 },
    );
  });

  test('closes for cartons in all turns', () => {
    const carton = cartonRing(8);
    for (const turn of TURNS) {
      const { outer, pockets } = noFitOutline(noFitPolygon(carton, turnRing(carton, turn)));
      expect(doubleArea(outer)).toBeGreaterThan(2 * doubleArea(carton));
      for (const pocket of pockets) expect(doubleArea(pocket)).toBeLessThan(0);
    }
  });
});

describe('features of no width', () => {
  const u = cellRing(['#.#', '#.#', '###']);

  test('a bar in the inlet of a U just as wide: a slit', () => {
    const bar = cellRing(['#', '#']);
    expect(noFitOutline(noFitPolygon(u, bar))).toEqual({
      outer: ring([-1, -2], [3, -2], [3, 3], [-1, 3]),
      pockets: [],
      slits: [[{ x: 1, y: 1 }, { x: 1, y: 3 }]],
      points: [],
    });
  });

  test('a bar with room to spare: an inlet', () => {
    const { outer, slits } = noFitOutline(noFitPolygon(cellRing(['#...#', '#...#', '#####']), cellRing(['#'])));
    expect(outer).toHaveLength(8);
    expect(slits).toEqual([]);
  });

  test('U-pentominoes: half-turned ones hook into one another along slits', () => {
    const small = cellRing(['#.#', '###']);
    const noFit = noFitPolygon(small, turnRing(small, 2));
    const { slits, points } = noFitOutline(noFit);
    // Turned about the origin, the other U stands at (−3 … 0, −2 … 0). One arm of each goes into the other's inlet, down to its floor.
    expect(slits).toHaveLength(2);
    expect(points).toEqual([]);
    for (const [x, y] of [[2, 3], [4, 3]]) expect(forbids(noFit, x, y)).toBe(false);
    for (const [x, y] of [[3, 3], [2, 2], [4, 2]]) expect(forbids(noFit, x, y)).toBe(true);
  });

  test('a jigsaw piece in its place: a single point', () => {
    // A socket with an undercut, and the key that fills it.
    const socket = cellRing(['##.##', '#...#', '#####']);
    const key = cellRing(['.#.', '###']);
    const { points, slits, pockets } = noFitOutline(noFitPolygon(socket, key));
    expect(points).toEqual([{ x: 1, y: 1 }]);
    expect(slits).toEqual([]);
    expect(pockets).toEqual([]);
  });

  test('a key with play in its socket: a pocket', () => {
    const socket = cellRing(['###.###', '##...##', '#.....#', '#.....#', '#######']);
    const key = cellRing(['.#.', '###']);
    const { pockets } = noFitOutline(noFitPolygon(socket, key));
    expect(pockets).toHaveLength(1);
    expect(pockets[0]).toHaveLength(4);
    expect(doubleArea(pockets[0])).toBe(-4);
  });
});
