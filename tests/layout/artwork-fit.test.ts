import { describe, expect, test } from 'vitest';
import { fitArtwork, type ArtworkContent } from '../../src/layout/artwork-fit.ts';
import { rectangle } from '../support/layouts.ts';

const design = { ...rectangle('box', 100, 60), drawing: { paths: [{ role: 'Cutting', d: 'M40 0 L40 30' }, { role: 'Creasing', d: 'M70 0 L70 60' }] } };
const square = (x: number, y: number, width: number, height: number) => ({ minX: x, minY: y, maxX: x + width, maxY: y + height });
const content = (changes: Partial<ArtworkContent> = {}): ArtworkContent => ({ width: 106, height: 66, trim: undefined, bleed: undefined, dieLines: [], ink: undefined, texts: [], ...changes });
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

describe('bleed', () => {
  const missing = (changes: Partial<ArtworkContent>) => fit(changes).issues.map(({ facts }) => [facts!['edge'], Math.round(Number(facts!['missingMm']) * 100) / 100]);

  test('edge by edge, in millimetres: by page, by bleed box, by ink', () => {
    expect(missing({ width: 100, height: 60 })).toEqual([['left', 3], ['right', 3], ['lower', 3], ['upper', 3]]);
    expect(missing({ trim: square(3, 3, 100, 60), bleed: square(1, 2, 104, 63) })).toEqual([['left', 1], ['right', 1], ['lower', 2], ['upper', 1]]);
    expect(missing({ ink: square(0, 1.5, 103, 64.5) })).toEqual([['right', 3], ['lower', 1.5]]);
  });

  test('an edge that ink stays clear of is unprinted', () => {
    expect(missing({ ink: square(10, 10, 40, 40) })).toEqual([]);
    expect(missing({ ink: square(4, 10, 40, 40) })).toEqual([['left', 4]]);
  });
});

test('texts nearer than 2 mm to a knife, inner cuts among them; creases are no knives', () => {
  const text = (content: string, x: number, y: number) => ({ content, place: { x: x + 3, y: y + 3 }, heightMm: 4 });
  const { issues } = fit({ texts: [text('near the edge', 1.2, 30), text('below a cut', 41, 10), text('capitals', 20, 56.5), text('on a crease', 70, 30), text('far', 20, 20), text('beside the blank', 110, 20)] });
  expect(issues.map(({ facts }) => [facts!['text'], Math.round(Number(facts!['mm']) * 1000) / 1000])).toEqual([['near the edge', 1.2], ['below a cut', 1], ['capitals', 0.7]]);
});
