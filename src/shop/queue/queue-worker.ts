import { Worker } from 'bullmq';
import type { Threads } from '../batch/threads.ts';
import { queueName, type QueueConnection } from './connection.ts';
import { packDone, unpackTask, type PackedTask } from './packed-task.ts';

/**
 * A machine that ends takes its tasks with it so often before a task is given up: more than a few, since machines end for
 * other reasons, and a task that fails by itself is counted by its tries.
 */
const MOST_DEATHS = 10;

export interface WorkerSettings {
  /** Seconds after which a machine that has gone silent loses its tasks to others. */
  readonly leaseSeconds: number;
  readonly onDone: () => void;
  readonly onFailed: (message: string) => void;
  readonly onTrouble: () => void;
  readonly onBack: () => void;
}

export interface QueueWorker {
  /** Ends after the tasks in hand; `now` leaves them to others. */
  close(now: boolean): Promise<void>;
}

/**
 * Works at the queue of this engine. Tasks run in threads, so that this one goes on renewing their locks however long they
 * take; a result that comes after another machine took the task over is refused by the queue.
 */
export function workAtQueue({ options }: QueueConnection, threads: Threads, { leaseSeconds, onDone, onFailed, onTrouble, onBack }: WorkerSettings): QueueWorker {
  const leaseMs = leaseSeconds * 1000;
  const worker = new Worker<PackedTask, string>(queueName(), async (job) => packDone(await threads.compute(unpackTask(job.data, job.id!))), {
    connection: { ...options },
    concurrency: threads.count,
    lockDuration: leaseMs,
    stalledInterval: leaseMs / 2,
    maxStalledCount: MOST_DEATHS,
  });
  worker.on('completed', onDone);
  worker.on('failed', (_, error) => onFailed(error.message));
  worker.on('error', onTrouble);
  worker.on('ready', onBack);
  return { close: (now) => worker.close(now) };
}
