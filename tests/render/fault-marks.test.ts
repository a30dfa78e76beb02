import fc from 'fast-check';
import { expect, test } from 'vitest';
import { faultMarks } from '../../src/render/fault-marks.ts';
import { textWidth } from '../../src/render/text-width.ts';

const room = { minX: -20, minY: -20, maxX: 320, maxY: 220 };

/** Boxes of the numbers as they are drawn. */
function labels(places: readonly { x: number; y: number }[], unit: number) {
  return faultMarks(places.map((at, i) => ({ at, numbers: [i + 1] })), unit, room).flatMap((item) => {
    if (item.kind !== 'text') return [];
    const minX = item.at.x;
    return [{ minX, maxX: minX + textWidth(item.text, item.size, true), minY: item.at.y, maxY: item.at.y + 0.7 * item.size }];
  });
}

test('numbers of faults 1.5 mm apart do not cover one another, wherever they lie', () => {
  fc.assert(fc.property(fc.integer({ min: 0, max: 290 }), fc.integer({ min: 0, max: 195 }), fc.integer({ min: 2, max: 6 }), fc.boolean(), (x, y, count, upright) => {
    const boxes = labels(Array.from({ length: count }, (_, i) => (upright ? { x, y: y + 1.5 * i } : { x: x + 1.5 * i, y })), 3);
    expect(boxes).toHaveLength(count);
    for (const [i, a] of boxes.entries()) for (const b of boxes.slice(0, i)) expect(a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY).toBe(true);
  }));
});

test('a number away from its place is tied to it by a line; one alone stands beside it without', () => {
  const lines = (places: readonly { x: number; y: number }[]) => faultMarks(places.map((at, i) => ({ at, numbers: [i + 1] })), 3, room).filter((item) => item.kind === 'path').length - places.length;
  expect(lines([{ x: 50, y: 50 }])).toBe(0);
  expect(lines([{ x: 50, y: 50 }, { x: 51.5, y: 50 }, { x: 53, y: 50 }])).toBeGreaterThan(0);
});
