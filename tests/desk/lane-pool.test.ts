import { afterEach, expect, test, vi } from 'vitest';
import type { LaneMessage } from '../../src/desk/engine/lane-worker.ts';
import { createSearchControl } from '../../src/desk/engine/search-control.ts';
import type { Task } from '../../src/nesting/tasks.ts';

/** A thread that answers each order after a while with the order's own task. */
class EchoWorker {
  onmessage: (event: { data: unknown }) => void = () => {};
  onerror = () => {};
  postMessage(message: LaneMessage): void {
    if (!('order' in message)) return;
    const { index, task } = message.order;
    setTimeout(() => this.onmessage({ data: { index, result: { echoed: task } } }), 5);
  }
  terminate(): void {}
}

afterEach(() => vi.unstubAllGlobals());

test('two runs at once each get their own results, whatever the number of threads', async () => {
  vi.stubGlobal('Worker', EchoWorker);
  vi.stubGlobal('location', { href: 'http://localhost/' });
  vi.stubGlobal('navigator', { hardwareConcurrency: 2 });
  const { createLanePool } = await import('../../src/desk/engine/lane-pool.ts');
  for (const width of [1, 3]) {
    const pool = createLanePool(width, createSearchControl(async () => {}, () => {}), () => {});
    const run = (name: string, count: number) => pool.run(Array.from({ length: count }, (_, i) => ({ name, i }) as unknown as Task), () => false);
    const [one, other, third] = await Promise.all([run('one', 4), run('other', 7), run('third', 1)]);
    const names = (results: readonly unknown[]) => results.map((result) => (result as { echoed: { name: string; i: number } }).echoed).map(({ name, i }) => `${name} ${i}`);
    expect(names(one)).toEqual([0, 1, 2, 3].map((i) => `one ${i}`));
    expect(names(other)).toEqual([0, 1, 2, 3, 4, 5, 6].map((i) => `other ${i}`));
    expect(names(third)).toEqual(['third 0']);
    pool.close();
  }
});
