import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { spread, type Thread } from '../nesting/spread.ts';
import type { Task, TaskRunner } from '../nesting/tasks.ts';

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
        return await spread(tasks, workers.map(threadOf));
      } finally {
        clearInterval(timer);
      }
    },
    close: async () => {
      await Promise.all(workers.splice(0).map((worker) => worker.terminate()));
    },
  };
}

function threadOf(worker: Worker): Thread {
  return {
    post: (order) => worker.postMessage(order),
    listen: (take, fail) => {
      worker.on('message', take);
      worker.on('error', fail);
      return () => {
        worker.off('message', take);
        worker.off('error', fail);
      };
    },
  };
}
