import type { Executor } from './executor.ts';
import type { Threads } from './threads.ts';

/**
 * Believes no machine: an answer counts when judge and checker agree with it here, that nothing is possible when it is
 * found here too. Else the task is computed on this machine; `onRefused` is told why. Checking takes a small part of the
 * time of a search (docs/scale.md).
 */
export function checkedExecutor(executor: Executor, threads: Threads, onRefused: (reason: string) => void): Executor {
  return {
    ...executor,
    run: async (key, task) => {
      const done = await executor.run(key, task);
      if ('issues' in done) return threads.compute(task);
      const checked = await threads.check(task, done.packed);
      if (checked.ok) return done;
      onRefused(checked.reason);
      return threads.compute(task);
    },
    close: async () => {
      await Promise.all([executor.close(), threads.close()]);
    },
  };
}
