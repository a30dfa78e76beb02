import { spread, type Reply, type Thread } from '../../nesting/spread.ts';
import type { TaskRunner } from '../../nesting/tasks.ts';
import type { LaneMessage } from './lane-worker.ts';
import type { Control, SearchControl } from './search-control.ts';

export interface LanePool extends TaskRunner {
  /** Hands on to the threads what the search was told. */
  tell(control: Control): void;
  close(): void;
}

/** Lanes are few and fixed; a page leaves one core to the person. */
const MOST_THREADS = 8;

export function defaultThreads(): number {
  return Math.max(1, Math.min(MOST_THREADS, navigator.hardwareConcurrency - 1));
}

/** Spreads tasks over Web Workers, started when they are first needed: the page's counterpart of the command line's pool. */
export function createLanePool(width: number, control: SearchControl): LanePool {
  const workers: Worker[] = [];
  const post = (worker: Worker, message: LaneMessage) => worker.postMessage(message);
  return {
    breathe: control.breathe,
    run: (tasks) => {
      while (workers.length < Math.min(width, tasks.length)) workers.push(new Worker(new URL('lane-worker.js', location.href), { type: 'module' }));
      return spread(tasks, workers.map(threadOf));
    },
    tell: (told) => {
      for (const worker of workers) post(worker, { control: told });
    },
    close: () => {
      for (const worker of workers.splice(0)) worker.terminate();
    },
  };

  function threadOf(worker: Worker): Thread {
    return {
      post: (order) => post(worker, { order }),
      listen: (take, fail) => {
        worker.onmessage = ({ data }: MessageEvent<Reply>) => take(data);
        worker.onerror = (event) => fail(new Error(event.message));
        return () => {
          worker.onmessage = null;
          worker.onerror = null;
        };
      },
    };
  }
}
