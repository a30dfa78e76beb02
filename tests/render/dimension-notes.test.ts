import { expect, test } from 'vitest';
import { boxOf } from '../../src/geometry/point.ts';
import type { LayoutFile } from '../../src/layout/layout-file.ts';
import { createFormat } from '../../src/render/format.ts';
import { dimensionNotes } from '../../src/render/production-notes.ts';
import { placedBoxes } from '../../src/render/step-runs.ts';
import { viewOfLayout } from '../../src/render/view-of-layout.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';

const card = rectangle('card', 100, 60);
const bar = (from: number, to: number): LayoutFile['keepOut'] => [{ kind: 'colour-bar', ring: [[0, from], [1000, from], [1000, to], [0, to]] }];

test.each([
  ['a wide tail', 620, []],
  ['a narrow tail', 637, []],
  ['a bar at the tail with room below it', 600, bar(691, 697)],
  ['a bar at the tail with blanks right below it', 628, bar(691, 697)],
])('dimensions lie on no blank: %s', (_, y, keepOut) => {
  const view = viewOfLayout(layoutWith([card], [at('card', 100, 20), at('card', 300, y)], { keepOut }), { figures: [] });
  const lines = dimensionNotes(view, createFormat('en')).flatMap((item) => (item.kind === 'path' ? item.paths : []));
  expect(lines.length).toBeGreaterThan(10);
  for (const path of lines) {
    const box = boxOf(path.flatMap(({ from, to }) => [from, to]));
    for (const blank of placedBoxes(view)) expect(box.minX >= blank.maxX || box.maxX <= blank.minX || box.minY >= blank.maxY - 1e-6 || box.maxY <= blank.minY).toBe(true);
  }
});
