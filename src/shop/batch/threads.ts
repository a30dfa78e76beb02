import { availableParallelism } from 'node:os';
import { Tinypool } from 'tinypool';
import type { NestTask } from '../../pipeline/nest-task.ts';
import type { Checked } from '../../proof/check.ts';
import { SetAside, TRIES, type Done, type Executor } from './executor.ts';

/** More memory than any task of ours has needed, MB; a thread that wants more ends, and only its task fails. */
const MEMORY_MB = 2048;

export interface Threads {
  readonly count: number;
  /** Computes one task in a thread of its own; throws what the thread threw. */
  compute(task: NestTask): Promise<Done>;
  /** Checks an answer of another machine in a thread: judge, sheet and rules, limit. */
  check(task: NestTask, packed: Uint8Array): Promise<Checked>;
  close(): Promise<void>;
}

/** Threads that compute tasks, so that this one stays awake. One a core where no number is given. */
export function startThreads(wanted: number | undefined): Threads {
  const count = wanted ?? availableParallelism();
  const script = new URL(import.meta.url.endsWith('.ts') ? './task-thread.ts' : './task-thread.js', import.meta.url);
  const pool = new Tinypool({ filename: script.href, minThreads: 0, maxThreads: count, idleTimeout: 10_000, resourceLimits: { maxOldGenerationSizeMb: MEMORY_MB } });
  return { count, compute: (task) => pool.run(task) as Promise<Done>, check: (task, packed) => pool.run({ task, packed }, { name: 'checkPacked' }) as Promise<Checked>, close: () => pool.destroy() };
}

/** Tasks in threads of this machine. Twice as many as threads are handed over, so that none waits. */
export function threadExecutor(threads: Threads): Executor {
  return {
    width: 2 * threads.count,
    run: async (_, task) => {
      for (let tried = 1; ; tried++) {
        try {
          return await threads.compute(task);
        } catch (error) {
          if (tried >= TRIES) throw new SetAside((error as Error).message);
        }
      }
    },
    close: threads.close,
  };
}
