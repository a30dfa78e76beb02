import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import type { createWorkerPool as CreateWorkerPool } from '../../src/cli/worker-pool.ts';
import { solve, type SolveSettings } from '../../src/nesting/solve.ts';
import { inlineRunner } from '../../src/nesting/tasks.ts';
import { problemOf } from '../support/problems.ts';

// Threads need compiled modules; `npm test` builds first.
const compiled = pathToFileURL(join(import.meta.dirname, '..', '..', 'dist', 'cli', 'worker-pool.js')).href;
const { createWorkerPool } = (await import(compiled)) as { createWorkerPool: typeof CreateWorkerPool };

const problem = problemOf([[0, 0], [120, 0], [120, 45], [50, 45], [50, 130], [0, 130]], [400, 300], 4, [0, 1, 2, 3]);
const settings = { effort: 'quick', seed: 1, stop: () => undefined } as const satisfies Partial<SolveSettings>;

test('threads give the same bytes as one thread', async () => {
  const alone = JSON.stringify(await solve(problem, { ...settings, runner: inlineRunner() }));
  for (const width of [1, 3]) {
    const pool = createWorkerPool(width);
    const solution = await solve(problem, { ...settings, runner: pool });
    await pool.close();
    expect(JSON.stringify(solution)).toBe(alone);
  }
});

test('threads end their task when told to stop', async () => {
  const pool = createWorkerPool(2);
  let stop = false;
  const solved = solve(problem, { ...settings, effort: 'thorough', runner: pool, stop: () => (stop ? 'interrupted' : undefined) });
  setTimeout(() => (stop = true), 700);
  const solution = await solved;
  await pool.close();
  expect(solution.stopped).toBe('interrupted');
});
