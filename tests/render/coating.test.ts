import { describe, expect, test } from 'vitest';
import { flattenPath } from '../../src/geometry/flatten.ts';
import type { Point } from '../../src/geometry/point.ts';
import { coatingForm } from '../../src/render/coating.ts';
import { viewOfLayout } from '../../src/render/view-of-layout.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';

/** A blank with a glue flap of 15 mm on its left, drawn 1 mm inside knife and crease, and a code area of 20 × 10. */
const carton = {
  ...rectangle('carton', 100, 60),
  drawing: { paths: [{ role: 'Creasing', d: 'M15 0.5 L15 59.5' }, { role: 'Gluing', d: 'M1 1 L14 1 L14 59 L1 59 Z' }, { role: 'VarnishFree', d: 'M60 20 L80 20 L80 30 L60 30 Z' }] },
};
const layout = layoutWith([carton], [at('carton', 20, 20), at('carton', 300, 100, 180), at('carton', 500, 20, 90)]);
const form = (changed = layout) => coatingForm(changed, viewOfLayout(changed, { figures: [] }));

/** Even-odd over all closed paths. */
function isCoated({ x, y }: Point): boolean {
  let inside = false;
  for (const curves of form()!.coated) {
    const ring = flattenPath(curves, 0.01);
    ring.slice(1).forEach((b, i) => {
      const a = ring[i]!;
      if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
    });
  }
  return inside;
}

describe('the coating form', () => {
  test.each([
    ['upright', (x: number, y: number) => ({ x: 20 + x, y: 20 + y })],
    ['turned by half', (x: number, y: number) => ({ x: 300 - x, y: 100 - y })],
    ['turned by a quarter', (x: number, y: number) => ({ x: 500 - y, y: 20 + x })],
  ])('%s: the flap stays free to knife and crease and through the bleed, the code area too, all else is coated', (_, place) => {
    for (const [x, y] of [[7, 30], [0.4, 30], [-2, 30], [7, -2], [14.6, 30], [70, 25]] as const) expect([x, y, isCoated(place(x, y))]).toEqual([x, y, false]);
    for (const [x, y] of [[15.5, 30], [50, 30], [55, 25], [80.1, 25], [102, 30], [50, -2], [50, 62]] as const) expect([x, y, isCoated(place(x, y))]).toEqual([x, y, true]);
  });

  test('areas station by station; designs without a free area are named; none at all is no form', () => {
    const [first] = form()!.stations;
    expect(first!.freeAreas).toBe(2);
    // 15 × 60 of the flap and the code area as it is drawn.
    expect(first!.freeMm2).toBeCloseTo(900 + 200, -1);
    const bare = rectangle('bare', 40, 40);
    const both = layoutWith([carton, bare], [at('carton', 20, 20), at('bare', 200, 20)]);
    expect(form(both)!.withoutFree).toEqual(['bare']);
    expect(form(layoutWith([bare], [at('bare', 20, 20)]))).toBeUndefined();
  });
});
