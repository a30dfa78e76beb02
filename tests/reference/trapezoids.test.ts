import { expect, test } from 'vitest';
import { gridSearch } from '../../src/nesting/searches/grid.ts';
import { rowsSearch } from '../../src/nesting/searches/rows.ts';
import { layoutIsValid } from '../../src/nesting/valid.ts';
import { rounds, trapezoids } from '../support/must-reach.ts';
import { mostOf, runSearches } from '../support/run-patterns.ts';

/** Sources beside the counts in tests/support/must-reach.ts. Rows alone reach them. */
test.each(trapezoids())('$name', ({ problem, ups }) => {
  const best = mostOf(runSearches([gridSearch, rowsSearch], problem).candidates)!;
  expect(layoutIsValid(problem, best.placements)).toBe(true);
  expect(best.placements.length).toBeGreaterThanOrEqual(ups);
});

/** On sheets, and in the squares that rows fill best. */
test.each(rounds().filter(({ name }) => !/(4\.7|6\.6|7) ×/.test(name)))('$name', ({ problem, ups }) => {
  const best = mostOf(runSearches([gridSearch, rowsSearch], problem).candidates)!;
  expect(layoutIsValid(problem, best.placements)).toBe(true);
  expect(best.placements.length).toBeGreaterThanOrEqual(ups);
});
