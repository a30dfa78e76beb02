import { describe, expect, test } from 'vitest';
import { bleedKept } from '../../src/estimate/bleed-kept.ts';
import type { LayoutFile } from '../../src/layout/layout-file.ts';

const layout: LayoutFile = {
  sheet: { width: 500, height: 400 },
  usable: { x: 6, y: 13, width: 488, height: 377 },
  printable: { x: 3, y: 10, width: 494, height: 387 },
  lay: 'left',
  keepOut: [],
  rules: { gap: 4, bleed: 3, bleedMeeting: 'cut', commonKnife: false },
  designs: [{ id: 'a', outline: [[0, 0], [100, 0], [100, 50], [0, 50]], openings: [], rotations: [0, 90] }],
  placements: [],
};
const placed = (...places: [x: number, y: number, rotation: number][]) => bleedKept({ ...layout, placements: places.map(([x, y, rotation]) => ({ design: 'a', rotation, x, y })) });

describe('bleed kept at facing edges', () => {
  test('at a gap of 4 mm each blank keeps 2 mm', () => {
    expect(placed([10, 20, 0], [114, 20, 0])).toEqual([{ blanks: [0, 1], keptMm: 2 }]);
  });

  test('from twice the bleed on nothing is cut', () => {
    expect(placed([10, 20, 0], [116, 20, 0])).toEqual([]);
  });

  test('turned blanks and corners count by their true distance', () => {
    // The second is turned: it covers x 113 … 163, y 73 … 173, so the corners are 3 and 3 mm apart.
    const [cut] = placed([10, 20, 0], [163, 73, 90]);
    expect(cut!.keptMm).toBeCloseTo(Math.sqrt(18) / 2, 3);
  });
});
