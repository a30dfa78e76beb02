import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { rowsSearch } from '../../src/nesting/searches/rows.ts';
import { layoutIsValid } from '../../src/nesting/valid.ts';
import { generatedJob } from '../support/carton-generator.ts';
import { mostOf, runSearches } from '../support/run-patterns.ts';
import { handCount } from '../support/slow-rows.ts';

/** Written by bench/patterns.ts, which takes all two hundred and every pattern search. */
const expected: { name: string; byHand: number; rows: number; ups: number }[] = JSON.parse(readFileSync(new URL('expected-patterns.json', import.meta.url), 'utf8'));

const sample = Array.from({ length: 40 }, (_, i) => 5 * i);

test('the list is complete, and no pattern search together with the others is below a careful worker', () => {
  expect(expected.length).toBe(200);
  for (const { name, byHand, rows, ups } of expected) {
    expect(rows, name).toBeGreaterThanOrEqual(byHand);
    expect(ups, name).toBeGreaterThanOrEqual(rows);
  }
});

test.each(sample)('rows of job %i are as good as written down', (seed) => {
  const { name, problem } = generatedJob(seed);
  expect(name).toBe(expected[seed].name);
  const { candidates } = runSearches([rowsSearch], problem);
  for (const { placements } of candidates) expect(layoutIsValid(problem, placements)).toBe(true);
  const ups = mostOf(candidates)?.placements.length ?? 0;
  expect(ups).toBeGreaterThanOrEqual(expected[seed].rows);
  expect(ups, 'better than written down: run bench/patterns.ts --write').toBeLessThanOrEqual(expected[seed].rows);
});

test.each([3, 12, 20, 35, 61])('the careful worker counts job %i as written down', (seed) => {
  expect(handCount(generatedJob(seed).problem)).toBe(expected[seed].byHand);
});
