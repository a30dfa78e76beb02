import { expect, test } from 'vitest';
import { sheetThumbnails } from '../../src/render/sheet-thumbnails.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';

const layout = layoutWith([rectangle('box', 100, 60)], [at('box', 10, 10)]);

test('a long caption takes more lines, in letters of the same size', () => {
  const caption = ['24 Nutzen', 'Zuschnitt 0,5 mm kürzer an der linken Kante (50 → 49,5 mm)'];
  const svg = sheetThumbnails('', Array.from({ length: 4 }, () => ({ layout, caption, marked: false })));
  const lines = [...svg.matchAll(/scale\(([\d.]+)\)"><text[^>]*>([^<]*)</g)].map(([, size, text]) => ({ size, text }));
  expect(lines.length).toBeGreaterThan(8);
  expect(lines.every(({ size }) => size === '1')).toBe(true);
  expect(lines.slice(0, lines.length / 4).map(({ text }) => text).join(' ')).toBe(caption.join(' '));
});

