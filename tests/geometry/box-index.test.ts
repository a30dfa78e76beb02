import fc from 'fast-check';
import { expect, test } from 'vitest';
import { indexBoxes } from '../../src/geometry/box-index.ts';
import { innerFit } from '../../src/geometry/inner-fit.ts';
import { boxOf, type Box } from '../../src/geometry/point.ts';
import { wholePoint } from '../support/lattice.ts';

const anyBox: fc.Arbitrary<Box> = fc.tuple(wholePoint(20), wholePoint(20)).map((corners) => boxOf(corners));

test('a search finds exactly the boxes that meet, touching included, in order', () => {
  fc.assert(
    fc.property(fc.array(anyBox, { maxLength: 60 }), anyBox, (boxes, query) => {
      const meeting = boxes.flatMap((box, i) =>
        box.minX <= query.maxX && query.minX <= box.maxX && box.minY <= query.maxY && query.minY <= box.maxY ? [i] : [],
      );
      expect(indexBoxes(boxes).search(query)).toEqual(meeting);
    }),
    { seed: 20260109, numRuns: 300 },
  );
});

test('inner fit: every corner shift keeps the box within, one unit more does not; a box as large as its container has one', () => {
  fc.assert(
    fc.property(anyBox, anyBox, (container, box) => {
      const shifts = innerFit(container, box);
      const width = (b: Box) => b.maxX - b.minX;
      const height = (b: Box) => b.maxY - b.minY;
      expect(shifts !== undefined).toBe(width(box) <= width(container) && height(box) <= height(container));
      if (!shifts) return;
      expect(box.minX + shifts.minX).toBe(container.minX);
      expect(box.maxX + shifts.maxX).toBe(container.maxX);
      expect(box.minY + shifts.minY).toBe(container.minY);
      expect(box.maxY + shifts.maxY).toBe(container.maxY);
    }),
    { seed: 20260110, numRuns: 300 },
  );
  const box = { minX: 5, minY: 6, maxX: 7, maxY: 9 };
  expect(innerFit(box, box)).toEqual({ minX: 0, minY: 0, maxX: 0, maxY: 0 });
});
