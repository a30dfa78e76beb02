import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { createWatch, PATIENCE_MS, type Watch } from '../../src/desk/engine/watch.ts';

/** When a thread that says nothing is told of. */
describe('the watch over a thread', () => {
  let told: boolean[];
  let asleep: number;
  let watch: Watch;

  beforeEach(() => {
    vi.useFakeTimers();
    told = [];
    asleep = 0;
    watch = createWatch((silent) => told.push(silent), () => Date.now() + asleep);
  });
  afterEach(() => {
    watch.rest();
    vi.useRealTimers();
  });
  const pass = (milliseconds: number) => vi.advanceTimersByTime(milliseconds);

  test('nothing is said of a thread without a question, nor of one whose work goes on', () => {
    pass(10 * PATIENCE_MS);
    watch.begin();
    for (let i = 0; i < 20; i++) {
      pass(PATIENCE_MS / 2);
      watch.sign();
    }
    expect(told).toEqual([]);
  });

  test('told once; a sign of life takes it back', () => {
    watch.begin();
    pass(PATIENCE_MS - 2000);
    expect(told).toEqual([]);
    pass(10_000);
    expect(told).toEqual([true]);
    watch.sign();
    expect(told).toEqual([true, false]);
    pass(PATIENCE_MS + 2000);
    expect(told).toEqual([true, false, true]);
    watch.rest();
    expect(told.at(-1)).toBe(false);
  });

  test('further questions behind the one at work are no sign of life', () => {
    watch.begin();
    for (let i = 0; i < 10; i++) {
      pass(PATIENCE_MS / 5);
      watch.begin();
    }
    expect(told).toEqual([true]);
  });

  test('who goes on waiting is told after twice as long; the next question has the usual patience', () => {
    watch.begin();
    pass(PATIENCE_MS + 1000);
    watch.wait();
    pass(2 * PATIENCE_MS - 2000);
    expect(told).toEqual([true, false]);
    pass(4000);
    expect(told).toEqual([true, false, true]);
    watch.rest();
    watch.begin();
    pass(PATIENCE_MS + 1000);
    expect(told).toEqual([true, false, true, false, true]);
  });

  test('a machine that slept for a night is not taken for a silent thread', () => {
    watch.begin();
    pass(5000);
    asleep = 8 * 3_600_000;
    pass(5000);
    expect(told).toEqual([]);
  });
});
