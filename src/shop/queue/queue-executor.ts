import { Queue, QueueEvents } from 'bullmq';
import type { NestTask } from '../../pipeline/nest-task.ts';
import { SetAside, TRIES, type Done, type Executor } from '../batch/executor.ts';
import { queueName, type QueueConnection } from './connection.ts';
import { packTask, unpackDone, type PackedTask } from './packed-task.ts';

/** Tasks that are in the queue at a time: enough for a hundred machines, some megabytes. */
const WIDTH = 2_000;
/** Results nobody has fetched yet stay so long, and at most so many: a coordinator that comes back finds them. */
const KEPT = { age: 7 * 86_400, count: 10_000 };
/** How often tasks are looked for whose news may have been missed, and how many at a time. */
const SWEEP_MS = 2_000;
const SWEEP_SIZE = 250;
/** Events the server remembers; what is missed is found by the sweep. */
const EVENTS = 5_000;

export type QueueNote = 'lost' | 'back' | 'no-machine';

interface Waiting {
  readonly task: NestTask;
  readonly resolve: (done: Done) => void;
  readonly reject: (error: Error) => void;
  since: number;
}

/**
 * Tasks on a queue that other machines work at. A task goes by its fingerprint, so it is there once whoever asks; news of
 * its end comes as an event, and is looked for where none comes: the server may have been started anew, tasks may be gone.
 */
export function queueExecutor({ options }: QueueConnection, onNote: (note: QueueNote) => void): Executor {
  const connection = { ...options };
  const queue = new Queue<PackedTask, string>(queueName(), { connection, streams: { events: { maxLen: EVENTS } } });
  const events = new QueueEvents(queueName(), { connection });
  const waiting = new Map<string, Waiting>();
  const forgetting = new Set<Promise<unknown>>();
  const settle = (key: string, use: (one: Waiting) => void) => {
    const one = waiting.get(key);
    waiting.delete(key);
    if (one) use(one);
  };
  const done = (key: string, text: string) => settle(key, ({ resolve, reject }) => {
    try {
      resolve(unpackDone(text));
    } catch (error) {
      reject(new SetAside((error as Error).message));
    }
  });
  const failed = (key: string, reason: string) => settle(key, ({ reject }) => reject(new SetAside(reason)));
  const add = (key: string, task: NestTask) =>
    queue.add('task', packTask(task), { jobId: key, attempts: TRIES, backoff: { type: 'fixed', delay: 500 }, removeOnComplete: KEPT, removeOnFail: KEPT });

  events.on('completed', ({ jobId, returnvalue }) => done(jobId, returnvalue as string));
  events.on('failed', ({ jobId, failedReason }) => failed(jobId, failedReason));

  /** What became of a task; one that is gone is asked anew. */
  const look = async (key: string) => {
    const one = waiting.get(key);
    if (!one) return;
    const job = await queue.getJob(key);
    if (!job) return void (await add(key, one.task));
    if (job.finishedOn === undefined) return;
    const state = await job.getState();
    if (state === 'completed') done(key, job.returnvalue);
    if (state === 'failed') failed(key, job.failedReason);
  };

  const sweep = async () => {
    await queue.getJobCounts('wait');
    const due = [...waiting].filter(([, { since }]) => performance.now() - since > SWEEP_MS).slice(0, SWEEP_SIZE);
    for (const [key, one] of due) {
      one.since = performance.now();
      // Those that were looked at go to the end.
      waiting.delete(key);
      waiting.set(key, one);
    }
    await Promise.all(due.map(([key]) => look(key)));
    if (due.length > 0 && (await queue.getWorkersCount().catch(() => 1)) === 0) onNote('no-machine');
  };
  let lost = false;
  const hear = (trouble: boolean) => {
    if (lost !== trouble) onNote(trouble ? 'lost' : 'back');
    lost = trouble;
  };
  queue.on('error', () => hear(true));
  events.on('error', () => hear(true));

  let sweeping: Promise<void> | undefined;
  const timer = setInterval(() => {
    // While the server is away a sweep waits for it.
    sweeping ??= sweep().then(() => hear(false)).catch(() => {}).finally(() => (sweeping = undefined));
  }, SWEEP_MS);

  return {
    width: WIDTH,
    run: (key, task) =>
      new Promise<Done>((resolve, reject) => {
        waiting.set(key, { task, resolve, reject, since: performance.now() });
        submit(key).catch(reject);
      }),
    forget: (key) => {
      const removal = queue.remove(key).catch(() => {}).finally(() => forgetting.delete(removal));
      forgetting.add(removal);
    },
    close: async () => {
      clearInterval(timer);
      await Promise.race([Promise.all(forgetting), new Promise((resolve) => setTimeout(resolve, SWEEP_MS).unref())]);
      await Promise.race([Promise.all([events.close(), queue.close()]), new Promise((resolve) => setTimeout(resolve, SWEEP_MS).unref())]);
    },
  };

  /** The task may be there from an earlier run: done, set aside then, or on its way. */
  async function submit(key: string): Promise<void> {
    const before = await queue.getJob(key);
    if (before?.finishedOn !== undefined) {
      const state = await before.getState();
      if (state === 'completed') return done(key, before.returnvalue);
      if (state === 'failed') await before.remove();
    }
    const one = waiting.get(key);
    if (one) await add(key, one.task);
  }
}
