import { describe, expect, test } from 'vitest';
import { intersect, subtract } from '../../src/geometry/boolean.ts';
import { ringArea, type Polygon } from '../../src/geometry/point.ts';
import type { LayoutFile } from '../../src/layout/layout-file.ts';
import { printAreas } from '../../src/render/print-areas.ts';
import { at, layoutWith, polygonDesign, rectangle } from '../support/layouts.ts';

const area = (polygons: readonly Polygon[]) => polygons.reduce((sum, { outer, holes }) => sum + Math.abs(ringArea(outer)) - holes.reduce((inner, hole) => inner + Math.abs(ringArea(hole)), 0), 0) / 1e6;
const cut = { rules: { gap: 4, bleed: 3, bleedMeeting: 'cut', commonKnife: false } } satisfies Partial<LayoutFile>;

describe('where the print of a station may be', () => {
  test('the whole bleed where nobody is near: the rectangle, its four sides and four quarter rounds', () => {
    const [alone] = printAreas(layoutWith([rectangle('a', 100, 60)], [at('a', 50, 50)]));
    expect(area(alone!)).toBeCloseTo(6000 + 3 * 320 + Math.PI * 9, 0);
  });

  test('the middle of a gap narrower than two bleeds: 2 mm of 4, never over it', () => {
    const [left, right] = printAreas(layoutWith([rectangle('a', 100, 60)], [at('a', 50, 50), at('a', 154, 50)], cut));
    expect(intersect(left!, right!)).toEqual([]);
    expect(Math.max(...left!.flatMap(({ outer }) => outer.map(({ x }) => x)))).toBe(152_000);
    expect(Math.min(...right!.flatMap(({ outer }) => outer.map(({ x }) => x)))).toBe(152_000);
    // Three sides keep 3 mm, the fourth 2.
    expect(Math.abs(area(left!) - (6000 + 3 * 260 + 2 * 60 + Math.PI * 4.5 + 2 * 5.5))).toBeLessThan(3);
  });

  test('outlines that lean to one another: every area holds its blank and overlaps no other', () => {
    const lean = polygonDesign('lean', [[0, 0], [80, 0], [60, 50], [0, 50]]);
    const layout = layoutWith([lean], [at('lean', 10, 10), at('lean', 155, 62, 180)], cut);
    const areas = printAreas(layout);
    expect(intersect(areas[0]!, areas[1]!)).toEqual([]);
    for (const own of areas) expect(area(own)).toBeGreaterThan(3500);
    expect(area(subtract([{ outer: [[10, 10], [90, 10], [70, 60], [10, 60]].map(([x, y]) => ({ x: x! * 1000, y: y! * 1000 })), holes: [] }], areas[0]!))).toBeLessThan(0.01);
  });
});
