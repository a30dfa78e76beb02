import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { WASTE_CAUSES, wasteOf, type Waste } from '../../src/estimate/waste.ts';
import type { LayoutFile, MmRing } from '../../src/layout/layout-file.ts';

const square: MmRing = [[0, 0], [100, 0], [100, 100], [0, 100]];
const corner: MmRing = [[0, 0], [100, 0], [100, 40], [40, 40], [40, 100], [0, 100]];

function layout(outline: MmRing, placements: readonly (readonly [x: number, y: number, rotation?: number])[], more: Partial<LayoutFile> = {}): LayoutFile {
  return {
    sheet: { width: 500, height: 400 },
    usable: { x: 10, y: 20, width: 480, height: 365 },
    printable: { x: 5, y: 15, width: 490, height: 380 },
    lay: 'left',
    keepOut: [],
    rules: { gap: 6, bleed: 0, bleedMeeting: 'apart', commonKnife: false },
    designs: [{ id: 'a', outline, openings: [], rotations: [0, 90, 180, 270] }],
    placements: placements.map(([x, y, rotation = 0]) => ({ design: 'a', rotation, x, y })),
    ...more,
  };
}

const total = (waste: Waste) => WASTE_CAUSES.reduce((sum, cause) => sum + waste[cause], 0);

describe('where the board goes', () => {
  test('an empty sheet is margins and offcut', () => {
    expect(wasteOf(layout(square, []))).toEqual({ blanks: 0, gripper: 10_000, tail: 7_500, 'side-margins': 7_300, 'colour-bar': 0, 'keep-outs': 0, gaps: 0, between: 0, edges: 175_200 });
  });

  test('two squares a gap apart: half a gap around each, none counted twice, the rest at the edges', () => {
    const waste = wasteOf(layout(square, [[10, 20], [116, 20]]));
    expect(waste.blanks).toBeCloseTo(20_000, 6);
    // 3 mm above both and at the right end, the 6 mm between them up to the blanks' height, two quarter rounds of 3 mm
    // above the gap and one at the right; the left end and the lower edge lie in the margins.
    const rounds = (3 * Math.PI * 9) / 4;
    expect(waste.gaps).toBeGreaterThanOrEqual(2 * 300 + 300 + 600 + rounds);
    expect(waste.gaps).toBeLessThan(2 * 300 + 300 + 600 + rounds + 1);
    expect(waste.between).toBe(0);
  });

  test('the notch of an angle is offcut between blanks but for the gap along its edges', () => {
    const waste = wasteOf(layout(corner, [[100, 100]]));
    // Hull less angle is a triangle with legs of 60 mm; strips of 3 mm along both legs belong to the gap.
    const triangle = 60 * 60 / 2;
    const strips = 2 * 3 * 60 - 9;
    expect(waste.between).toBeGreaterThan(triangle - strips - 10);
    expect(waste.between).toBeLessThan(triangle - strips + 10);
  });

  test('a bar in the tail margin is the bar’s, a centre bar and a spoiled corner are kept free', () => {
    const ring = (x0: number, y0: number, x1: number, y1: number): MmRing => [[x0, y0], [x1, y0], [x1, y1], [x0, y1]];
    const waste = wasteOf(layout(square, [[10, 20]], { keepOut: [{ kind: 'colour-bar', ring: ring(5, 389, 495, 395) }, { kind: 'spoiled', ring: ring(450, 350, 520, 420) }] }));
    expect(waste['colour-bar']).toBe(490 * 6);
    expect(waste['keep-outs']).toBe(50 * 50 - 45 * 6);
    expect(waste.tail).toBe(500 * 15 - 490 * 6 - (50 * 15 - 45 * 6));
  });

  test('the parts add up to the sheet, whatever is on it', () => {
    const place = fc.tuple(fc.integer({ min: -50_000, max: 520_000 }), fc.integer({ min: -50_000, max: 420_000 }), fc.constantFrom(0, 90, 180, 270));
    const keepOut = fc.tuple(fc.integer({ min: -50, max: 520 }), fc.integer({ min: -50, max: 420 }), fc.integer({ min: 1, max: 200 }), fc.constantFrom('colour-bar', 'spoiled'));
    fc.assert(
      fc.property(fc.constantFrom(square, corner), fc.array(place, { maxLength: 12 }), fc.array(keepOut, { maxLength: 3 }), fc.integer({ min: 0, max: 20 }), (outline, places, kept, gap) => {
        const waste = wasteOf(
          layout(outline, places.map(([x, y, rotation]) => [x / 1000, y / 1000, rotation]), {
            rules: { gap, bleed: 0, bleedMeeting: 'apart', commonKnife: false },
            keepOut: kept.map(([x, y, size, kind]) => ({ kind, ring: [[x, y], [x + size, y], [x + size, y + 6], [x, y + 6]] })),
          }),
        );
        // Crossings of edges are rounded to micrometres: a thousandth of a mm² for every metre of edge, far below 1 mm².
        expect(Math.abs(total(waste) - 200_000)).toBeLessThan(1);
        for (const cause of WASTE_CAUSES) expect(waste[cause]).toBeGreaterThanOrEqual(0);
      }),
      { seed: 1, numRuns: 150 },
    );
  });
});
