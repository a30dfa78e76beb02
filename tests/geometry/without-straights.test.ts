import { expect, test } from 'vitest';
import { withoutStraights } from '../../src/geometry/without-straights.ts';

test('withoutStraights drops repeated and straight-through points, keeps turns back', () => {
  const at = (...pairs: [number, number][]) => pairs.map(([x, y]) => ({ x, y }));
  expect(withoutStraights(at([0, 0], [5, 0], [5, 0], [10, 0], [10, 10], [0, 10], [0, 5]))).toEqual(at([0, 0], [10, 0], [10, 10], [0, 10]));
  expect(withoutStraights(at([0, 0], [20, 0], [10, 0], [10, 10]))).toEqual(at([0, 0], [20, 0], [10, 0], [10, 10]));
});
