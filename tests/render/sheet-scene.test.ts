import { describe, expect, test } from 'vitest';
import { registerMarks } from '../../src/render/register-marks.ts';
import { scaleFor } from '../../src/render/scale.ts';
import type { SceneItem, TextItem } from '../../src/render/scene.ts';
import { sheetScene } from '../../src/render/sheet-scene.ts';
import { runsBetween } from '../../src/render/steps.ts';
import { textWidth } from '../../src/render/text-width.ts';
import { carton, grid, roundLabel, sheetView } from './views.ts';

const isText = (item: SceneItem): item is TextItem => item.kind === 'text';

/** Where a text stands, mm. */
function textBox({ text, at, size, anchor, turn, bold }: TextItem) {
  const width = textWidth(text, size, bold);
  const before = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
  const [ascent, descent] = [size * 0.72, size * 0.21];
  return turn === 0
    ? { minX: at.x - before, maxX: at.x - before + width, minY: at.y - descent, maxY: at.y + ascent }
    : { minX: at.x - ascent, maxX: at.x + descent, minY: at.y - before, maxY: at.y - before + width };
}

const big = carton(180, 90, 150);
const middling = carton(60, 40, 90);
const small = carton(30, 18, 40);
const round = roundLabel(20);
const views = {
  'four large cartons': sheetView(1400, 1000, big, grid(big, 40, 30, { rows: 2, columns: 2, stepX: 600, stepY: 380 })),
  'twelve cartons': sheetView(1020, 720, middling, grid(middling, 8, 13, { rows: 3, columns: 4, stepX: 218, stepY: 204, turned: (row) => row % 2 === 1 })),
  'sixty cartons upright': sheetView(720, 1020, small, grid(small, 6, 13, { rows: 10, columns: 6, stepX: 116, stepY: 98, turned: (row) => row % 2 === 1 }), { grain: 'y', lay: 'right' }),
  '384 rounds': sheetView(1020, 720, round, grid(round, 8, 14, { rows: 16, columns: 24, stepX: 41, stepY: 42, shift: 20 })),
  'an empty sheet': sheetView(1020, 720, middling, []),
  'a long reel': sheetView(3000, 500, middling, grid(middling, 30, 20, { rows: 2, columns: 13, stepX: 218, stepY: 204 })),
  'faults marked': sheetView(1020, 720, middling, grid(middling, 8, 13, { rows: 1, columns: 2, stepX: 200, stepY: 0 }), { faults: [{ x: 210, y: 300 }, { x: 500, y: 600 }] }),
  'a small sheet': sheetView(297, 210, round, grid(round, 8, 14, { rows: 4, columns: 6, stepX: 46, stepY: 46 })),
};

describe.each(Object.entries(views))('picture of %s', (_, view) => {
  const scene = sheetScene(view);
  const texts = scene.layers.flatMap(({ items }) => items.filter(isText));

  test('nothing that is written is clipped', () => {
    for (const text of texts) {
      const box = textBox(text);
      expect([text.text, box.minX >= scene.box.minX && box.maxX <= scene.box.maxX && box.minY >= scene.box.minY && box.maxY <= scene.box.maxY]).toEqual([text.text, true]);
    }
  });

  test('no two texts lie on one another', () => {
    const boxes = texts.map((text) => ({ text: text.text, ...textBox(text) }));
    const met = boxes.flatMap((a, i) => boxes.slice(i + 1).filter((b) => a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY).map((b) => `${a.text} / ${b.text}`));
    expect(met).toEqual([]);
  });

  test('every station has its number, readable when the sheet is printed on A4', () => {
    const numbers = scene.layers.filter(({ name }) => name === 'Stations').flatMap(({ items }) => items.filter(isText));
    expect(numbers.map(({ text }) => text)).toEqual(view.placements.map((_unused, i) => String(i + 1)));
    const { minX, minY, maxX, maxY } = scene.box;
    const [long, short] = [Math.max(maxX - minX, maxY - minY), Math.min(maxX - minX, maxY - minY)];
    const onA4 = Math.min(277 / long, 190 / short);
    // 1.4 mm is four points: small, but printed numbers of that size are read.
    for (const { size } of numbers) expect(size * onA4).toBeGreaterThan(1.4);
  });

  test('register marks keep clear of blanks and their bleed', () => {
    for (const { at, size } of registerMarks(view)) {
      for (const { design, turn, x, y } of view.placements) {
        const ring = view.designs[design]!.ring;
        const [w, h] = [Math.max(...ring.map((p) => p.x)), Math.max(...ring.map((p) => p.y))];
        const [left, low] = turn === 2 ? [x - w, y - h] : [x, y];
        const reach = size / 2 + view.bleed;
        expect(at.x + reach <= left || at.x - reach >= left + w || at.y + reach <= low || at.y - reach >= low + h).toBe(true);
      }
    }
  });
});

describe('steps between blanks', () => {
  test('equal steps are taken together, rest and margins stand alone', () => {
    expect(runsBetween([0, 8, 226, 444, 662, 874, 1020, 8])).toEqual([
      { from: 0, step: 8, count: 1 },
      { from: 8, step: 218, count: 3 },
      { from: 662, step: 212, count: 1 },
      { from: 874, step: 146, count: 1 },
    ]);
  });
});

describe('sizes of text', () => {
  test('grow with the sheet, so that they are alike on paper', () => {
    expect(scaleFor({ width: 2040, height: 1440 }).unit).toBeCloseTo(2 * scaleFor({ width: 1020, height: 720 }).unit, 9);
  });
});
