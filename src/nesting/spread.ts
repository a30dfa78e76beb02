import type { ResultOf, Task, TaskHandler } from './tasks.ts';

/** What is sent to a thread, and what comes back. */
export interface Order {
  readonly index: number;
  readonly task: Task;
}

export type Reply = { readonly index: number; readonly result: ResultOf<Task> } | { readonly index: number; readonly failure: string };

/** Another thread, whatever the host calls it. */
export interface Thread {
  post(order: Order): void;
  /** Hears replies and the thread's own end until the returned function is called. */
  listen(take: (reply: Reply) => void, fail: (error: unknown) => void): () => void;
}

/** Every thread takes the next task as soon as it is free. Results in the order of the tasks; a thread that fails fails the run. */
export function spread<T extends Task>(tasks: readonly T[], threads: readonly Thread[]): Promise<ResultOf<T>[]> {
  const results: ResultOf<T>[] = [];
  let next = 0;
  const serve = (thread: Thread) =>
    new Promise<void>((resolve, reject) => {
      const give = () => {
        if (next >= tasks.length) {
          leave();
          resolve();
          return;
        }
        const index = next++;
        thread.post({ index, task: tasks[index] });
      };
      const fail = (error: unknown) => {
        leave();
        reject(error);
      };
      const take = (reply: Reply) => {
        if ('failure' in reply) {
          fail(new Error(`a worker thread failed: ${reply.failure}`));
          return;
        }
        results[reply.index] = reply.result as ResultOf<T>;
        give();
      };
      const leave = thread.listen(take, fail);
      give();
    });
  return Promise.all(threads.map(serve)).then(() => results);
}

/** What a thread does with an order. A failure travels as text: not every host can send errors. */
export async function answerOrder(handle: TaskHandler, { index, task }: Order, pause: () => Promise<boolean>): Promise<Reply> {
  try {
    return { index, result: await handle(task, pause) };
  } catch (error) {
    return { index, failure: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}
