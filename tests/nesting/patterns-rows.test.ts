import { expect, test } from 'vitest';
import { createRandom } from '../../src/base/random.ts';
import type { Candidate, Problem } from '../../src/layout/problem.ts';
import { rowsSearch } from '../../src/nesting/searches/rows.ts';
import { layoutIsValid } from '../../src/nesting/valid.ts';
import { generatedJob } from '../support/carton-generator.ts';
import { handCount } from '../support/slow-rows.ts';

function candidatesOf(problem: Problem): Candidate[] {
  const steps = rowsSearch.run({ problem, random: createRandom(1), limit: Infinity, known: { best: undefined, cells: [] } });
  const found: Candidate[] = [];
  for (let step = steps.next(); !step.done; step = steps.next()) if (step.value.candidate) found.push(step.value.candidate);
  return found;
}

/** Every eighth of the two hundred; bench/patterns.ts takes them all. */
test('rows hold at least what a careful worker finds, and keep every rule', () => {
  for (let seed = 0; seed < 200; seed += 8) {
    const { name, problem } = generatedJob(seed);
    const candidates = candidatesOf(problem);
    for (const { placements } of candidates) expect(layoutIsValid(problem, placements), `${name}, seed ${seed}`).toBe(true);
    const most = Math.max(0, ...candidates.map(({ placements }) => placements.length));
    expect(most, `${name}, seed ${seed}`).toBeGreaterThanOrEqual(handCount(problem));
  }
});
