import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/base/issue.ts';
import { layoutFingerprint } from '../../src/layout/fingerprint.ts';
import { readLayoutFile, writeLayoutFile, type LayoutFile } from '../../src/layout/layout-file.ts';
import { english } from '../../src/render/messages/english.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';

/** The least that a file may hold. */
const bare = {
  format: 'blankwright-layout',
  version: 1,
  units: 'mm',
  sheet: { width: 1020, height: 720 },
  usable: { x: 6, y: 13, width: 1008, height: 697 },
  rules: { gap: 6, bleed: 3 },
  designs: [{ id: 'carton', outline: [[0, 0], [100, 0], [100, 60], [0, 60]] }],
  placements: [{ design: 'carton', rotation: 0, x: 10, y: 20 }],
};

describe('reading', () => {
  test('fills in what may be absent', () => {
    const read = readLayoutFile(bare, 'a.json');
    expect(read).toEqual({
      sheet: bare.sheet,
      usable: bare.usable,
      printable: { x: 0, y: 0, width: 1020, height: 720 },
      lay: 'left',
      keepOut: [],
      rules: { gap: 6, bleed: 3, bleedMeeting: 'apart', commonKnife: false },
      designs: [{ ...bare.designs[0], openings: [], rotations: [0, 90, 180, 270] }],
      placements: bare.placements,
    });
  });

  test('passes over fields it does not know and carries the result along', () => {
    const read = readLayoutFile({ ...bare, note: 'x', sheet: { ...bare.sheet, grain: 'x' }, result: { ups: 99, more: [1] } }, 'a.json');
    expect(read.result).toEqual({ ups: 99, more: [1] });
    expect(read.sheet).toEqual(bare.sheet);
    expect(readLayoutFile({ ...bare, result: 'none' }, 'a.json').result).toBeUndefined();
  });

  const spoiled = (change: (file: any) => void) => {
    const copy = structuredClone(bare);
    change(copy);
    return copy;
  };
  test.each<[string, unknown, string, string?]>([
    ['nothing', undefined, 'layout-format'],
    ['null', null, 'layout-format'],
    ['a list', [bare], 'layout-format'],
    ['another format', { ...bare, format: 'other' }, 'layout-format'],
    ['a later version', { ...bare, version: 2 }, 'layout-version'],
    ['no version', { ...bare, version: undefined }, 'layout-version'],
    ['inches', { ...bare, units: 'in' }, 'layout-field', 'units must be mm'],
    ['no sheet', { ...bare, sheet: undefined }, 'layout-field', 'sheet must be an object'],
    ['a sheet of no width', spoiled((f) => (f.sheet.width = 0)), 'layout-field', 'sheet.width must be a number over 0'],
    ['an endless sheet', spoiled((f) => (f.sheet.width = Infinity)), 'layout-field', 'sheet.width must be a finite number'],
    ['a length in words', spoiled((f) => (f.rules.gap = '6 mm')), 'layout-field', 'rules.gap must be a finite number'],
    ['a gap under nothing', spoiled((f) => (f.rules.gap = -1)), 'layout-field', 'rules.gap must be a number not under 0'],
    ['not a number', spoiled((f) => (f.placements[0].x = NaN)), 'layout-field', 'placements[0].x must be a finite number'],
    ['a number lost to null', spoiled((f) => (f.placements[0].y = null)), 'layout-field', 'placements[0].y must be a finite number'],
    ['farther than any sheet', spoiled((f) => (f.placements[0].y = 1e9)), 'layout-field'],
    ['two points', spoiled((f) => (f.designs[0].outline.length = 2)), 'layout-field', 'designs[0].outline must be at least 3 entries'],
    ['a point of three', spoiled((f) => f.designs[0].outline[1].push(3)), 'layout-field'],
    ['20 001 points', spoiled((f) => (f.designs[0].outline = Array.from({ length: 20_001 }, (_, i) => [i, i * i % 7]))), 'layout-field'],
    ['no design', { ...bare, designs: [] }, 'layout-field'],
    ['rotations in words', spoiled((f) => (f.designs[0].rotations = ['all'])), 'layout-field'],
    ['an unknown meeting of bleeds', spoiled((f) => (f.rules.bleedMeeting = 'mixed')), 'layout-field', 'rules.bleedMeeting must be apart or cut'],
    ['placements as an object', { ...bare, placements: {} }, 'layout-field', 'placements must be an array'],
  ])('refuses %s', (_, content, code, sentence) => {
    let refused: InputError | undefined;
    try {
      readLayoutFile(content, 'a.json');
    } catch (error) {
      refused = error as InputError;
    }
    expect(refused).toBeInstanceOf(InputError);
    expect(refused!.issues[0]!.code).toBe(code);
    expect(english.sentence(refused!.issues[0]!)).toContain(sentence ?? 'a.json');
  });

  test('names every wrong field', () => {
    try {
      readLayoutFile({ ...bare, lay: 'top', rules: { gap: 6 } }, 'a.json');
      expect.unreachable();
    } catch (error) {
      expect((error as InputError).issues.map((issue) => issue.facts!['field'])).toEqual(['lay', 'rules.bleed']);
    }
  });
});

describe('writing', () => {
  const layout: LayoutFile = layoutWith([{ ...rectangle('a "b"', 12.5, 7), drawing: { fingerprint: 'f', outline: 'M0 0 H12.5 V7 H0 Z', paths: [{ role: 'Creasing', d: 'M0 3 H12.5' }] } }], [at('a "b"', 10 / 3, -0)], {
    keepOut: [{ kind: 'colour-bar', ring: [[0, 0], [9, 0], [9, 9]] }],
    result: { ups: 1, yield: 0.123456 },
  });

  test('reads back as what was written, to three decimals', () => {
    const text = writeLayoutFile(layout);
    const read = readLayoutFile(JSON.parse(text), 'a.json');
    expect(read).toEqual({ ...layout, placements: [{ ...layout.placements[0], x: 3.333, y: 0 }] });
    expect(text).toContain('{ "design": "a \\"b\\"", "rotation": 0, "x": 3.333, "y": 0 }');
  });

  test('equal layouts are equal bytes, whatever order their fields were set in', () => {
    const reversed = (value: unknown): unknown =>
      Array.isArray(value) ? value.map(reversed) : typeof value === 'object' && value !== null ? Object.fromEntries(Object.entries(value).reverse().map(([key, inner]) => [key, reversed(inner)])) : value;
    const { result, ...believed } = layout;
    expect(writeLayoutFile({ ...(reversed(believed) as LayoutFile), result: result! })).toBe(writeLayoutFile(layout));
  });

  test('writing once more changes nothing', () => {
    const mm = fc.double({ min: -1000, max: 1000, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.record({ design: fc.string(), rotation: fc.constantFrom(0, 90, 180, 270), x: mm, y: mm })), (placements) => {
        const once = writeLayoutFile({ ...layout, placements });
        expect(writeLayoutFile(readLayoutFile(JSON.parse(once), 'a.json'))).toBe(once);
      }),
      { seed: 7 },
    );
  });

  test('the fingerprint follows what is believed and nothing else', () => {
    const without = { ...layout, result: { ups: 2 } };
    expect(layoutFingerprint(layout)).toMatch(/^[0-9a-f]{64}$/);
    expect(layoutFingerprint(without)).toBe(layoutFingerprint(layout));
    expect(layoutFingerprint({ ...layout, rules: { ...layout.rules, gap: 6.001 } })).not.toBe(layoutFingerprint(layout));
  });
});
