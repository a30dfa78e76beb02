import { expect, test } from 'vitest';
import { createRandom } from '../../src/base/random.ts';
import { createTimeKeeper } from '../../src/shop/batch/time-left.ts';

test('the time told is true: over many batches the rest lies within the error told nineteen times of twenty', () => {
  const random = createRandom(3);
  let within = 0;
  const batches = 400;
  for (let batch = 0; batch < batches; batch++) {
    const works = Array.from({ length: 200 }, () => 1 + 20 * random.unit() ** 3);
    const keeper = createTimeKeeper();
    for (const work of works.slice(0, 60)) keeper.computed(work);
    const spent = works.slice(0, 60).reduce((sum, work) => sum + work, 0) / 7;
    const rest = works.slice(60).reduce((sum, work) => sum + work, 0) / 7;
    const { seconds, error } = keeper.left(140, spent)!;
    if (Math.abs(seconds - rest) <= error) within++;
  }
  expect(within / batches).toBeGreaterThan(0.92);
  expect(within / batches).toBeLessThan(0.99);
});

test('nothing is told from three tasks', () => {
  const keeper = createTimeKeeper();
  for (const work of [1, 2, 3]) keeper.computed(work);
  expect(keeper.left(100, 10)).toBeUndefined();
});
