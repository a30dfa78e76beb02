import { parentPort, workerData } from 'node:worker_threads';
import { createTaskHandler } from '../nesting/tasks.ts';
import type { Order, Reply } from './worker-pool.ts';

/** One worker thread: does the tasks it is sent, one at a time; a shared flag tells it to end the present one. */
const port = parentPort!;
const stopped = new Int32Array(workerData as SharedArrayBuffer);
const handle = createTaskHandler();
const pause = async () => Atomics.load(stopped, 0) === 1;

port.on('message', async ({ index, task }: Order) => {
  let reply: Reply;
  try {
    reply = { index, result: await handle(task, pause) };
  } catch (error) {
    reply = { index, failure: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
  port.postMessage(reply);
});
