import { describe, expect, test } from 'vitest';
import { pressSchema, readRecord } from '../../src/press/records.ts';
import { listedCandidates, sheetListSchema } from '../../src/press/sheet-candidates.ts';

const list = (json: unknown) => readRecord(sheetListSchema, json, 'sheets.json');

describe('sheets that could be bought', () => {
  // bvdm/ZFA learning unit "Grundlagen der Kalkulation von Druckerzeugnissen" 4.1: a 70 × 100 sheet with long grain, halved, has short grain.
  test('a long-grain 70 × 100 halved is a short-grain 50 × 70', () => {
    const halves = listedCandidates(list({ parents: [{ sheet: '1000x700', grain: 'x' }] }), {}).filter(({ boughtM2 }) => boughtM2 === 0.35);
    expect(halves).toContainEqual(expect.objectContaining({ sheet: { width: 700, height: 500 }, grain: 'y' }));
  });

  test('a parent in 2, 3 and 4; the board bought is the parent’s share', () => {
    const pieces = listedCandidates(list({ parents: [{ sheet: '1400x1000', grain: 'x' }] }), {});
    expect(pieces.map(({ sheet }) => [sheet.width, sheet.height].map(Math.round))).toEqual([[1400, 500], [1000, 700], [1400, 333], [1000, 467], [1400, 250], [700, 500], [1000, 350]]);
    for (const { boughtM2, origin } of pieces) expect(boughtM2 * (origin.kind === 'parent' ? origin.parts : 0)).toBeCloseTo(1.4, 12);
  });

  test('both grains are two candidates; a reel’s grain runs along its length', () => {
    expect(listedCandidates(list({ sheets: [{ sheet: '1020x720', grain: 'both' }] }), {}).map(({ grain }) => grain)).toEqual(['x', 'y']);
    const [reel] = listedCandidates(list({ reels: [{ width: 1020, cutOffs: [720] }] }), {});
    expect(reel).toMatchObject({ sheet: { width: 1020, height: 720 }, grain: 'y', boughtM2: 0.7344 });
  });

  test('sheets that a machine does not take are left out', () => {
    const press = readRecord(pressSchema, { maxSheet: '740x530' }, 'p');
    expect(listedCandidates(list({ sheets: [{ sheet: '1020x720' }, { sheet: '720x510' }] }), { press })).toHaveLength(1);
  });

  test('the place of a wrong field is named', () => {
    expect(() => list({ sheets: [{ sheet: 'large' }] })).toThrow('field-not-valid');
  });
});
