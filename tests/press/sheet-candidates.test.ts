import { describe, expect, test } from 'vitest';
import { pressSchema, readRecord } from '../../src/press/records.ts';
import { listedCandidates, listedRanges, offers, sheetListSchema } from '../../src/press/sheet-candidates.ts';

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

  test('a list offers every sheet that it brings, and no other', () => {
    const shelf = list({ sheets: [{ sheet: '1020x720', grain: 'x' }, { sheet: '700x500' }], parents: [{ sheet: '1400x1000', grain: 'y' }], reels: [{ width: 720, cutOffs: [1020] }, { width: 640, least: 400, greatest: 900 }] });
    const mill = list({ sheets: [{ sheet: '1020x720', grain: 'y' }], parents: [{ sheet: '1400x1100', grain: 'y' }], reels: [{ width: 720, cutOffs: [900] }], madeToOrder: { least: '500x400', greatest: '900x700', grain: 'x' } });
    for (const [own, other] of [[shelf, mill], [mill, shelf]] as const) {
      for (const candidate of listedCandidates(own, {})) {
        expect(offers(own, candidate)).toBe(true);
        expect(offers(other, candidate)).toBe(false);
      }
      for (const { least, greatest, candidateOf } of listedRanges(own, {})) {
        for (const size of [least, greatest]) expect(offers(own, candidateOf(size))).toBe(true);
        expect(offers(other, candidateOf(least))).toBe(false);
      }
    }
    const reel = { grain: 'x', origin: { kind: 'reel', width: 640 } } as const;
    expect([900, 901, 399].map((cutOff) => offers(shelf, { ...reel, sheet: { width: cutOff, height: 640 } }))).toEqual([true, false, false]);
    const ordered = { grain: 'x', origin: { kind: 'made-to-order' } } as const;
    expect([[900, 700], [901, 700], [500, 399]].map(([width, height]) => offers(mill, { ...ordered, sheet: { width: width!, height: height! } }))).toEqual([true, false, false]);
    // One on the desk of which nobody gave the grain: by its size, either way round.
    const usual = { sheet: { width: 720, height: 1020 }, grain: undefined, origin: { kind: 'stock' } } as const;
    expect([offers(shelf, usual), offers(mill, usual), offers(shelf, { ...usual, sheet: { width: 721, height: 1020 } })]).toEqual([true, true, false]);
  });
});
