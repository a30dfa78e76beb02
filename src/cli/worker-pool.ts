import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { ResultOf, Task, TaskRunner } from '../nesting/tasks.ts';

/** What is sent to a worker, and what comes back. */
export interface Order {
  readonly index: number;
  readonly task: Task;
}

export type Reply = { readonly index: number; readonly result: ResultOf<Task> } | { readonly index: number; readonly failure: string };

export interface WorkerPool extends TaskRunner {
  /** Ends the threads. */
  close(): Promise<void>;
}

/** One thread a core, at most eight: lanes are few. */
export function defaultWorkers(): number {
  return Math.min(8, availableParallelism());
}

/** How often `stop` is asked while threads work, milliseconds. */
const STOP_POLL_MS = 10;

/** Spreads tasks over `width` threads, started when they are first needed. A thread that fails ends the run with its error. */
export function createWorkerPool(width: number): WorkerPool {
  const flag = new SharedArrayBuffer(4);
  const stopped = new Int32Array(flag);
  // The same folder holds this module and the worker, compiled or not.
  const script = new URL(import.meta.url.endsWith('.ts') ? './worker.ts' : './worker.js', import.meta.url);
  const workers: Worker[] = [];
  return {
    breathe: () => new Promise((resolve) => setImmediate(resolve)),
    run: async <T extends Task>(tasks: readonly T[], stop: () => boolean) => {
      while (workers.length < Math.min(width, tasks.length)) {
        const worker = new Worker(script, { workerData: flag });
        // An idle thread keeps no process alive; while tasks run the timer below does.
        worker.unref();
        workers.push(worker);
      }
      Atomics.store(stopped, 0, stop() ? 1 : 0);
      const timer = setInterval(() => {
        if (stop()) Atomics.store(stopped, 0, 1);
      }, STOP_POLL_MS);
      try {
        return (await spread(tasks, workers)) as ResultOf<T>[];
      } finally {
        clearInterval(timer);
      }
    },
    close: async () => {
      await Promise.all(workers.splice(0).map((worker) => worker.terminate()));
    },
  };
}

/** Every worker takes the next task as soon as it is free. */
function spread(tasks: readonly Task[], workers: readonly Worker[]): Promise<ResultOf<Task>[]> {
  const results: ResultOf<Task>[] = [];
  let next = 0;
  const serve = (worker: Worker) =>
    new Promise<void>((resolve, reject) => {
      const give = () => {
        if (next >= tasks.length) {
          leave();
          resolve();
          return;
        }
        const order: Order = { index: next, task: tasks[next] };
        next++;
        worker.postMessage(order);
      };
      const take = (reply: Reply) => {
        if ('failure' in reply) {
          leave();
          reject(new Error(`a worker thread failed: ${reply.failure}`));
          return;
        }
        results[reply.index] = reply.result;
        give();
      };
      const fail = (error: unknown) => {
        leave();
        reject(error);
      };
      const leave = () => {
        worker.off('message', take);
        worker.off('error', fail);
      };
      worker.on('message', take);
      worker.on('error', fail);
      give();
    });
  return Promise.all(workers.map(serve)).then(() => results);
}
