import { describe, expect, test } from 'vitest';
import { packed, type PackingTerms } from '../../src/estimate/packing.ts';
import { casesInLayer } from '../../src/pipeline/quote-packing.ts';

const terms = (more: Partial<PackingTerms> = {}): PackingTerms => ({ isGlued: true, caliperMm: 0.45, rows: 1, deckMm: 144, grammage: 300, ...more });
const figureOf = (name: string, quantity: number, more: Partial<PackingTerms>) => packed(quantity, terms(more)).figures.find((one) => one.name === name)?.value;

// Computed: board of 0.45 mm is 0.9 mm glued flat and 1.35 mm at the seam, so 500 cartons are 450 to 675 mm long.
describe('cartons of 0.45 mm board, glued flat', () => {
  test('0.9 mm each, 1.35 mm at the seam; 500 are 450 to 675 mm', () => {
    expect(figureOf('thickness glued flat', 500, {})).toBeCloseTo(0.9, 12);
    expect(figureOf('thickness at the seam', 500, {})).toBeCloseTo(1.35, 12);
    expect(figureOf('row of a case, by thickness glued flat', 500, { perCase: 500 })).toBeCloseTo(450, 9);
    expect(figureOf('row of a case, by thickness at the seam', 500, { perCase: 500 })).toBeCloseTo(675, 9);
  });

  // The quotient comes out even; a double must not lose one.
  test.each([[675, 1, 500], [674.9, 1, 499], [675, 2, 1000], [1.35, 1, 1]])('a case %f mm long inside with %i rows holds %i', (caseLengthMm, rows, count) => {
    expect(packed(1, terms({ caseLengthMm, rows })).perCase.value).toBe(count);
  });

  test('labels lie single: 500 of 0.08 mm are 40 mm', () => {
    expect(figureOf('row of a case, by thickness', 500, { isGlued: false, caliperMm: 0.08, perCase: 500 })).toBeCloseTo(40, 9);
    expect(figureOf('thickness at the seam', 500, { isGlued: false })).toBeUndefined();
  });

  test('a measured thickness goes before the one worked out', () => {
    expect(packed(1, terms({ thicknessMm: 1.2, caseLengthMm: 600 })).perCase.value).toBe(500);
    expect(packed(1, terms({ thicknessMm: 1, seamMm: 1.5, caseLengthMm: 600 })).perCase.value).toBe(400);
  });
});

// Worked by hand: 24 240 cartons of 6.459 g in cases of 500: 49 cases, 6 × 5 on a pallet, 2 pallets;
// 156.566 kg + 49 × 0.45 kg + 2 × 25 kg.
test('cases, pallets, net and gross weight', () => {
  const { cases, pallets, netWeight, grossWeight } = packed(24_240, terms({ perCase: 500, casesPerLayer: 6, caseHeightMm: 180, palletHeightMm: 1200, caseKg: 0.45, palletKg: 25, blankM2: 0.02153 }));
  expect([cases.value, pallets.value]).toEqual([49, 2]);
  expect(netWeight.value).toBeCloseTo(156.566, 3);
  expect(grossWeight.value).toBeCloseTo(228.616, 3);
});

test('what nobody gave is open and named', () => {
  const { perCase, grossWeight } = packed(5000, terms({ caliperMm: undefined }));
  expect(perCase).toMatchObject({ value: null, missing: ['case length or cartons per case', 'caliper'] });
  expect(grossWeight.missing).toEqual(expect.arrayContaining(['blank area', 'case weight', 'pallet weight', 'cases per pallet']));
});

// Computed: 600 × 400 divides a pallet of 1200 × 800 into 4; 400 × 300 into 8; 700 × 200 lies six times, one turned.
test.each([['600x400', 600, 400, 4], ['400x300', 400, 300, 8], ['700x200', 700, 200, 6], ['800x600', 800, 600, 2]])('cases of %s in a layer', (_, width, height, count) => {
  expect(casesInLayer({ width, height }, { width: 1200, height: 800 }, 'x')).toBe(count);
});
test('a case larger than the pallet is refused', () => expect(() => casesInLayer({ width: 900, height: 1300 }, { width: 1200, height: 800 }, 'x')).toThrow('case-larger-than-pallet'));
