import { describe, expect, test } from 'vitest';
import { fitArtwork, type ArtworkContent } from '../../src/layout/artwork-fit.ts';
import { polygonDesign, rectangle } from '../support/layouts.ts';

const design = { ...rectangle('box', 100, 60), drawing: { paths: [{ role: 'Cutting', d: 'M40 0 L40 30' }, { role: 'Creasing', d: 'M70 0 L70 60' }] } };
const square = (x: number, y: number, width: number, height: number) => ({ minX: x, minY: y, maxX: x + width, maxY: y + height });
const content = (changes: Partial<ArtworkContent> = {}): ArtworkContent => ({ width: 106, height: 66, trim: undefined, bleed: undefined, dieLines: [], printed: undefined, texts: [], ...changes });
const fit = (changes: Partial<ArtworkContent> = {}, at?: { x: number; y: number }) => fitArtwork(content(changes), design, { bleed: 3, at, where: 'a.pdf' });
const codeOf = (changes: Partial<ArtworkContent>) => {
  try {
    return fit(changes).by;
  } catch (error) {
    return (error as Error).message;
  }
};

describe('the place of the artwork', () => {
  test('a page that is the blank with one bleed all round lies on it by its middle', () => {
    expect(fit()).toEqual({ offset: { x: -3, y: -3 }, by: 'page', issues: [] });
  });

  test('the trim box comes before the page, the die line before both, the user before all', () => {
    expect(fit({ width: 200, height: 150, trim: square(20, 30, 100, 60) })).toMatchObject({ offset: { x: -20, y: -30 }, by: 'trim box' });
    expect(fit({ width: 200, height: 150, trim: square(20, 30, 100, 60), dieLines: [square(50, 40, 100.1, 60)] })).toMatchObject({ offset: { x: expect.closeTo(-50.05, 9), y: -40 }, by: 'die line' });
    expect(fit({ width: 300, height: 20 }, { x: -7, y: 1 })).toMatchObject({ offset: { x: -7, y: 1 }, by: 'given' });
  });

  test('what fits no blank is refused, with the reason', () => {
    expect(codeOf({ width: 120, height: 66 })).toBe('artwork-size');
    expect(codeOf({ width: 66, height: 106 })).toBe('artwork-turned');
    expect(codeOf({ dieLines: [square(3, 3, 98, 60)] })).toBe('artwork-other-die-line');
    expect(codeOf({ width: 90, height: 50 })).toBe('artwork-size');
  });
});

const area = (x: number, y: number, width: number, height: number) => [{ outer: [[x, y], [x + width, y], [x + width, y + height], [x, y + height]].map(([px, py]) => ({ x: px! * 1000, y: py! * 1000 })), holes: [] }];
const rounded = (value: unknown) => Math.round(Number(value) * 100) / 100;

describe('bleed', () => {
  const missing = (changes: Partial<ArtworkContent>) => fit(changes).issues.map(({ facts }) => [facts!['edge'], rounded(facts!['missingMm'])]);

  test('edge by edge, in millimetres: by page, by bleed box, by ink', () => {
    expect(missing({ width: 100, height: 60 })).toEqual([['lower', 3], ['right', 3], ['upper', 3], ['left', 3]]);
    expect(missing({ trim: square(3, 3, 100, 60), bleed: square(1, 2, 104, 63) })).toEqual([['lower', 2], ['right', 1], ['upper', 1], ['left', 1]]);
    expect(missing({ printed: [area(0, 1.5, 103, 64.5)] })).toEqual([['lower', 1.5], ['right', 3]]);
  });

  test('an edge that ink stays clear of is unprinted; print that reaches no edge is no bleed', () => {
    expect(missing({ printed: [area(10, 10, 40, 40)] })).toEqual([]);
    expect(missing({ printed: [] })).toEqual([]);
  });

  test('only the stretch that is printed, with its place', () => {
    const [piece, ...rest] = fit({ printed: [area(23, 1, 40, 20)] }).issues;
    expect(rest).toEqual([]);
    expect(piece).toMatchObject({ code: 'artwork-bleed-missing', facts: { edge: 'lower', fromX: 20, toX: 60, lengthMm: 40, missingMm: 1, bleedMm: 3 } });
  });

  /** A panel with a flap of 30 × 20 mm on its upper edge and a notch between. */
  const flap = polygonDesign('flap', [[0, 0], [100, 0], [100, 40], [60, 40], [60, 60], [30, 60], [30, 40], [0, 40]]);
  const round = (printed: ReturnType<typeof area>[]) => fitArtwork(content({ width: 106, height: 66, printed }), flap, { bleed: 3, at: { x: -3, y: -3 }, where: 'a.pdf' }).issues
    .map(({ facts }) => [facts!['edge'], ...['fromX', 'fromY', 'toX', 'toY', 'missingMm'].map((key) => rounded(facts![key]))]);

  test('round a flap and at concave corners: what lies in the blank is no bleed, what lies beside the flap is', () => {
    // The print of the panel ends with it; that of the flap has its bleed. Beside the flap the panel's edge lacks it, up to the flap's bleed.
    expect(round([area(0, 0, 106, 43), area(30, 43, 36, 23)])).toEqual([['upper', 100, 40, 63, 40, 3], ['upper', 27, 40, 0, 40, 3]]);
    // A box all round covers everything, concave corners too.
    expect(round([area(0, 0, 106, 66)])).toEqual([]);
    // The flap's own sides, seen though they lie far within the blank's box.
    expect(round([area(0, 0, 106, 46), area(33, 43, 30, 23)])).toEqual([['right', 60, 43, 60, 60, 3], ['left', 30, 60, 30, 43, 3]]);
  });

  test('a curved edge is one stretch', () => {
    const ring = Array.from({ length: 90 }, (_, i): [number, number] => [Math.round((50 + 50 * Math.cos((i * Math.PI) / 45)) * 1000) / 1000, Math.round((50 + 50 * Math.sin((i * Math.PI) / 45)) * 1000) / 1000]);
    const disc = [{ outer: Array.from({ length: 360 }, (_, i) => ({ x: Math.round(53000 + 51000 * Math.cos((i * Math.PI) / 180)), y: Math.round(53000 + 51000 * Math.sin((i * Math.PI) / 180)) })), holes: [] }];
    const { issues } = fitArtwork(content({ width: 106, height: 106, printed: [disc] }), polygonDesign('label', ring), { bleed: 3, at: { x: -3, y: -3 }, where: 'a.pdf' });
    expect(issues.length).toBeLessThanOrEqual(5);
    for (const { facts } of issues) expect(Number(facts!['missingMm'])).toBeCloseTo(2, 0);
    expect(issues.reduce((sum, { facts }) => sum + Number(facts!['lengthMm'] ?? 0), 0)).toBeGreaterThan(300);
  });
});

describe('live matter', () => {
  const text = (content: string, x: number, y: number, more: object = {}) => ({ content, place: { x: x + 3, y: y + 3 }, heightMm: 4, ...more });
  const near = (changes: Partial<ArtworkContent>) => fit({ printed: [], ...changes }).issues.map(({ facts }) => [facts!['text'], Math.round(Number(facts!['mm']) * 1000) / 1000]);

  test('texts nearer than 2 mm to a knife, inner cuts among them; creases are no knives', () => {
    expect(near({ texts: [text('near the edge', 1.2, 30), text('below a cut', 41, 10), text('capitals', 20, 56.5), text('on a crease', 70, 30), text('far', 20, 20), text('beside the blank', 110, 20)] })).toEqual([['near the edge', 1.2], ['below a cut', 1], ['capitals', 0.7]]);
  });

  test('by their end too, whichever way they run; of a font that is not read the place is told', () => {
    expect(near({ texts: [text('long', 60, 30, { widthMm: 38.5 }), text('short', 60, 30, { widthMm: 20 }), text('upright', 90, 20, { widthMm: 39, direction: { x: 0, y: 1 } })] })).toEqual([['long', 1.5], ['upright', 1]]);
    expect(fit({ printed: [], texts: [text('', 1, 20, { widthMm: 3 })] }).issues).toMatchObject([{ code: 'artwork-unread-text-near-knife', facts: { x: 1, y: 20 } }]);
  });

  test('areas that end before a knife; print that a cut runs through is meant so', () => {
    const areas = (printed: ReturnType<typeof area>[]) => fit({ printed }).issues.map(({ code, facts }) => [code, rounded(facts!['mm'])]);
    expect(areas([area(4, 13, 40, 40)])).toEqual([['artwork-area-near-knife', 1]]);
    expect(areas([area(44.5, 10, 10, 10)])).toEqual([['artwork-area-near-knife', 1.5]]);
    expect(areas([area(33, 20, 20, 10)])).toEqual([]);
  });
});
