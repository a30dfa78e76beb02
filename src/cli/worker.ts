import { parentPort, workerData } from 'node:worker_threads';
import { answerOrder, type Order } from '../nesting/spread.ts';
import { createTaskHandler } from '../nesting/tasks.ts';

/** One worker thread: does the tasks it is sent, one at a time; a shared flag tells it to end the present one. */
const port = parentPort!;
const stopped = new Int32Array(workerData as SharedArrayBuffer);
const handle = createTaskHandler();
const pause = async () => Atomics.load(stopped, 0) === 1;

port.on('message', async (order: Order) => port.postMessage(await answerOrder(handle, order, pause)));
