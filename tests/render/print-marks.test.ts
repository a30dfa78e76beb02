import { describe, expect, test } from 'vitest';
import type { Box } from '../../src/geometry/point.ts';
import type { LayoutFile } from '../../src/layout/layout-file.ts';
import { printMarks, type PrintMarks } from '../../src/render/print-marks.ts';
import { viewOfLayout } from '../../src/render/view-of-layout.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';

const card = rectangle('card', 100, 60);
const marksOf = (placements: LayoutFile['placements'], changes: Partial<LayoutFile> = {}) => printMarks(viewOfLayout(layoutWith([card], placements, changes), { figures: [] }), 'layout L-7');

/** Every mark's box, millimetres. */
function boxesOf({ register, sideLay, centre, printToCut, patches }: PrintMarks): Box[] {
  return [
    ...register.map(({ at: { x, y }, size }) => ({ minX: x - size / 2, maxX: x + size / 2, minY: y - size / 2, maxY: y + size / 2 })),
    ...(sideLay ? [sideLay] : []),
    ...[...centre, ...printToCut].map(({ from, to }) => ({ minX: Math.min(from.x, to.x), maxX: Math.max(from.x, to.x), minY: Math.min(from.y, to.y), maxY: Math.max(from.y, to.y) })),
    ...patches.map(({ box }) => box),
  ];
}

describe('marks in the waste', () => {
  const ink = { printable: { x: 3, y: 10, width: 994, height: 687 } };

  test('all kinds where there is room, within the ink area', () => {
    const marks = marksOf([at('card', 200, 100), at('card', 600, 400, 180)], ink);
    expect(marks.missing).toEqual([]);
    expect(marks.sideLay).toMatchObject({ minX: 3, maxX: 5 });
    expect(marks.centre.map(({ from }) => from)).toEqual([{ x: 500, y: 10 }, { x: 500, y: 697 }]);
    for (const { minX, maxX, minY, maxY } of boxesOf(marks)) expect([minX >= 3, maxX <= 997, minY >= 10, maxY <= 697]).toEqual([true, true, true, true]);
  });

  test('none on a blank or in its bleed', () => {
    const placements = Array.from({ length: 54 }, (_, i) => at('card', 6 + 109 * (i % 9), 14 + 68 * Math.floor(i / 9)));
    for (const { minX, maxX, minY, maxY } of boxesOf(marksOf(placements, ink))) {
      for (const { x, y } of placements) expect(minX >= x + 103 || maxX <= x - 3 || minY >= y + 63 || maxY <= y - 3).toBe(true);
    }
  });

  test('print-to-cut marks go on in line with straight knives, beyond the bleed', () => {
    const { printToCut } = marksOf([at('card', 200, 100)], ink);
    expect(printToCut.length).toBeGreaterThan(3);
    for (const { from, to } of printToCut) {
      const isUpright = from.x === to.x;
      expect(isUpright ? [200, 300] : [100, 160]).toContain(isUpright ? from.x : from.y);
      const away = isUpright ? Math.max(100 - from.y, from.y - 160) : Math.max(200 - from.x, from.x - 300);
      expect(away).toBeGreaterThanOrEqual(3);
    }
  });

  test('the lay mark changes sides with the lay', () => {
    expect(marksOf([at('card', 200, 100)], { ...ink, lay: 'right' }).sideLay).toMatchObject({ minX: 995, maxX: 997 });
  });

  test('what has no room is named: a blank that fills the sheet', () => {
    const whole = rectangle('whole', 988, 681);
    const view = viewOfLayout(layoutWith([whole], [at('whole', 6, 13)], ink), { figures: [] });
    const marks = printMarks(view, 'layout L-7');
    expect(marks.missing).toEqual(['register', 'side-lay', 'centre-gripper', 'centre-tail', 'print-to-cut', 'sheet-id']);
    expect(boxesOf(marks)).toEqual([]);
  });

  test('the colour bar has patches of its own height, within the ink', () => {
    const { patches } = marksOf([at('card', 200, 100)], { ...ink, keepOut: [{ kind: 'colour-bar', ring: [[0, 300], [1000, 300], [1000, 306], [0, 306]] }] });
    expect(patches).toHaveLength(165);
    expect(patches[0]).toMatchObject({ box: { minX: 3, minY: 300, maxX: 9, maxY: 306 }, cmyk: [1, 0, 0, 0] });
  });
});
