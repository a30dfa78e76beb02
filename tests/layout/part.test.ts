import { describe, expect, test } from 'vitest';
import type { Blank } from '../../src/dieline/dieline.ts';
import { readPathData } from '../../src/geometry/path-data.ts';
import { boxOf, doubleArea, type Ring } from '../../src/geometry/point.ts';
import { judge } from '../../src/layout/judge.ts';
import { readLayoutFile, writeLayoutFile } from '../../src/layout/layout-file.ts';
import { layoutOf, placementsOf } from '../../src/layout/layout-of.ts';
import { partOfDesign, preparePart } from '../../src/layout/part.ts';
import type { Problem } from '../../src/layout/problem.ts';
import { stationOrder } from '../../src/layout/station-order.ts';

function blankOf(outline: string, openings: readonly string[] = [], rules: readonly string[] = []): Blank {
  const path = (d: string) => readPathData(d)[0]!;
  return {
    number: 1,
    outline: path(outline),
    openings: openings.map(path),
    rules: rules.map((d) => ({ role: 'Creasing', reason: 'name', curves: path(d), closed: false, source: 'test' })),
    box: boxOf([]),
    areaMm2: 0,
  };
}

/** A tray of 80 × 50 with round corners of 8, an oval window and a crease, away from the origin and clockwise. */
const tray = blankOf(
  'M-20 -30 V4 A8 8 0 0 0 -12 12 H52 A8 8 0 0 0 60 4 V-30 A8 8 0 0 0 52 -38 H-12 A8 8 0 0 0 -20 -30 Z',
  ['M10 -13 A10 6 0 0 0 30 -13 A10 6 0 0 0 10 -13 Z'],
  ['M-20 -20 H60'],
);

describe('a blank as a part', () => {
  const { part, design } = preparePart(tray, { id: 'tray', turns: [0, 2], fingerprint: 'ab' });

  test('its box stands at the origin, outer ring counter-clockwise, opening clockwise', () => {
    expect(boxOf(part.outline)).toEqual({ minX: 0, minY: 0, maxX: 80_000, maxY: 50_000 });
    expect(doubleArea(part.outline)).toBeGreaterThan(0);
    expect(part.openings.map((ring) => doubleArea(ring) < 0)).toEqual([true]);
    expect(part.turns).toEqual([0, 2]);
  });

  test('the polygon holds the true blank, and the hole is no larger than the true one', () => {
    const trueArea = 80 * 50 - (4 - Math.PI) * 64;
    const trueHole = Math.PI * 60;
    const areaMm2 = (ring: Ring) => Math.abs(doubleArea(ring)) / 2e6;
    expect(areaMm2(part.outline)).toBeGreaterThan(trueArea);
    expect(areaMm2(part.outline)).toBeLessThan(trueArea + 1);
    expect(areaMm2(part.openings[0]!)).toBeLessThan(trueHole);
    expect(areaMm2(part.openings[0]!)).toBeGreaterThan(trueHole - 1);
  });

  test('the design says the same in millimetres and keeps the true curves', () => {
    expect(design.rotations).toEqual([0, 180]);
    expect(design.outline).toEqual(part.outline.map(({ x, y }) => [x / 1000, y / 1000]));
    expect(design.drawing!.fingerprint).toBe('ab');
    expect(design.drawing!.outline).toContain('A8 8');
    expect(design.drawing!.paths).toEqual([{ role: 'Creasing', d: 'M0 18 L80 18' }]);
    const { outlineExcess } = part;
    expect(partOfDesign(design)).toEqual(part);
    expect(outlineExcess).toBeGreaterThan(0);
    expect(outlineExcess).toBeLessThanOrEqual(21);
  });

  test('two bows a hair apart stay apart, and an outline that crosses itself is refused with its place', () => {
    // Two discs of radius 10 with 0.006 mm between them: tangents that err by up to 0.02 mm cross there.
    const bows = blankOf('M0.603074 6.579799 A10 10 0 1 1 8.263518 19.848078 L14.298301 25.882860 A10 10 0 1 1 29.146378 32.806632 L10 45 L-12 25 Z');
    expect(preparePart(bows, { id: 'bows', turns: [0], fingerprint: '' }).part.outline.length).toBeGreaterThan(20);
    const crossed = blankOf('M0 0 H40 V10 L10 -5 V10 H0 Z');
    expect(() => preparePart(crossed, { id: 'crossed', turns: [0], fingerprint: '' })).toThrow('ring-not-simple');
  });

  const problem: Problem = {
    sheet: { width: 300_000, height: 200_000 },
    usable: { minX: 6000, minY: 12_000, maxX: 294_000, maxY: 190_000 },
    printable: { minX: 3000, minY: 9000, maxX: 297_000, maxY: 197_000 },
    lay: 'left',
    keepOuts: [{ kind: 'colour-bar', ring: [{ x: 0, y: 191_000 }, { x: 300_000, y: 193_000 }, { x: 0, y: 193_000 }], clearance: 3000 }],
    rules: { gap: 6000, bleed: 3000, bleedMeeting: 'apart', commonKnife: false },
    parts: [part],
    demand: { kind: 'most' },
    locked: [],
    symmetry: 'none',
  };

  test('from placements to a file and back, sound where the polygons are', () => {
    const placements = [
      { part: 0, turn: 2, x: 172_000, y: 62_000 },
      { part: 0, turn: 0, x: 6000, y: 12_000 },
    ] as const;
    const layout = layoutOf(problem, [design], placements, { ups: 2 });
    expect(layout.placements.map(({ x, rotation }) => [x, rotation])).toEqual([[6, 0], [172, 180]]);
    expect(judge(layout).faults).toEqual([]);
    const read = readLayoutFile(JSON.parse(writeLayoutFile(layout)), 'a.json');
    expect(read).toEqual(layout);
    expect(placementsOf(read, [part])).toEqual([placements[1], placements[0]]);
  });

  test('stations count from the gripper, then from the lay, along rows that are not quite straight', () => {
    const row = [0, 1, 2].map((i) => ({ part: 0, turn: 0, x: i * 90_000, y: 12_000 + ((i * 7) % 3) } as const));
    const next = { part: 0, turn: 0, x: 0, y: 70_000 } as const;
    expect(stationOrder([next, row[2]!, row[0]!, row[1]!], [part], 'left')).toEqual([...row, next]);
    expect(stationOrder([next, row[2]!, row[0]!, row[1]!], [part], 'right')).toEqual([...row.toReversed(), next]);
  });
});
