import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/base/issue.ts';
import { resolveRules } from '../../src/press/rules.ts';
import { sheetAreas, type MarginSettings } from '../../src/press/sheet-areas.ts';

const sheet = { width: 1020, height: 720 };

describe('knife and ink areas', () => {
  test('with nothing given, the gripper margin is raised to ink margin and bleed', () => {
    const areas = sheetAreas(sheet, {}, resolveRules({}));
    expect(areas.usable).toEqual({ x: 6, y: 13, width: 1008, height: 697 });
    expect(areas.printable).toEqual({ x: 3, y: 10, width: 1014, height: 707 });
    expect(areas.notes.map((note) => note.code)).toEqual(['margin-raised-for-bleed']);
  });

  test('a bar at the tail lies inside the margin, which grows only as far as needed', () => {
    const small = sheetAreas(sheet, { bar: { place: 'tail', height: 4 } }, resolveRules({}));
    expect(small.usable.height).toBe(697);
    const high = sheetAreas(sheet, { bar: { place: 'tail', height: 6 } }, resolveRules({}));
    expect(high.usable.height).toBe(720 - 13 - 12);
    expect(high.bar).toEqual({ x: 3, y: 711, width: 1014, height: 6 });
  });

  test('a bar without bleed keeps 2 mm from the knives', () => {
    const areas = sheetAreas(sheet, { bar: { place: 'gripper', height: 6 } }, resolveRules({ gap: 4, bleed: 0 }));
    expect(areas.usable.y).toBe(18);
    expect(areas.bar?.y).toBe(10);
  });

  test('a bar in the centre is a band over the whole width and leaves the margins alone', () => {
    const areas = sheetAreas(sheet, { bar: { place: 'centre', height: 6 } }, resolveRules({}));
    expect(areas.bar).toEqual({ x: 0, y: 357, width: 1020, height: 6 });
    expect(areas.usable.height).toBe(697);
  });

  test('ink margins not given are never more than the knife margin given', () => {
    const areas = sheetAreas(sheet, { gripper: 8, sideMargins: [2, 9] }, resolveRules({ bleed: 0, gap: 3 }));
    expect(areas.printable.y).toBe(8);
    expect(areas.printable.x).toBe(2);
    expect(areas.usable).toEqual({ x: 2, y: 8, width: 1009, height: 702 });
    expect(areas.notes).toEqual([]);
  });

  test('a sheet with nothing left is refused with the figures', () => {
    expect(() => sheetAreas({ width: 100, height: 22 }, {}, resolveRules({}))).toThrow(InputError);
    expect(() => sheetAreas({ width: 100, height: 34 }, { bar: { place: 'centre', height: 6 } }, resolveRules({}))).toThrow(InputError);
  });

  test('bleed stays printable and bars stay clear of knives, whatever is given', () => {
    const length = fc.integer({ min: 0, max: 30 });
    const settings = fc.record(
      { gripper: length, tail: length, sideMargins: fc.tuple(length, length), inkGripper: length, inkTail: length, inkSides: length, bar: fc.record({ place: fc.constantFrom('tail', 'gripper'), height: fc.integer({ min: 1, max: 12 }) }) },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(settings, fc.integer({ min: 0, max: 5 }), (given, bleed) => {
        const areas = sheetAreas(sheet, given as MarginSettings, resolveRules({ bleed }));
        const { usable, printable, bar } = areas;
        expect(usable.x - printable.x).toBeGreaterThanOrEqual(bleed);
        expect(usable.y - printable.y).toBeGreaterThanOrEqual(bleed);
        expect(printable.x + printable.width - usable.x - usable.width).toBeGreaterThanOrEqual(bleed);
        expect(printable.y + printable.height - usable.y - usable.height).toBeGreaterThanOrEqual(bleed);
        if (bar && bar.y < 360) expect(usable.y - bar.y - bar.height).toBeGreaterThanOrEqual(Math.max(2, bleed));
        if (bar && bar.y > 360) expect(bar.y - usable.y - usable.height).toBeGreaterThanOrEqual(Math.max(2, bleed));
      }),
      { seed: 7 },
    );
  });
});

describe('gap and bleed', () => {
  test.each([
    [{}, 6, 3],
    [{ bleed: 2 }, 5, 2],
    [{ bleed: 4 }, 8, 4],
    [{ gap: 4 }, 4, 2],
    [{ gap: 10 }, 10, 3],
    [{ gap: 0 }, 0, 0],
    [{ gap: 7, bleed: 3 }, 7, 3],
  ])('%j', (given, gap, bleed) => {
    expect(resolveRules(given)).toEqual({ gap, bleed, bleedMeeting: 'apart' });
  });

  test('bleeds that overlap need leave to be cut', () => {
    expect(() => resolveRules({ gap: 4, bleed: 3 })).toThrow('bleeds-overlap');
    expect(resolveRules({ gap: 4, bleed: 3, bleedMeeting: 'cut' }).gap).toBe(4);
  });
});
