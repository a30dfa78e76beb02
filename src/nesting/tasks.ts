import type { Problem } from '../layout/problem.ts';
import { runLane, type LaneResult, type LaneTask } from './lanes.ts';
import { prepare, type Prepared } from './prepare.ts';
import { tablesOf, type Tables } from './tables.ts';

/** Work that may be done by another thread. Tasks and results are plain data. */
export type Task = LaneTask;
export type TaskResult = LaneResult;

/** Runs tasks, here or in other threads. How many run at once changes the speed, never the answer. */
export interface TaskRunner {
  /**
   * Results in the order of the tasks. Once `stop` says so, running tasks end early with what they have and those not yet
   * begun do next to nothing.
   */
  run(tasks: readonly Task[], stop: () => boolean): Promise<readonly TaskResult[]>;
  /** Lets the host's timers and signals be heard. */
  breathe(): Promise<void>;
}

export type TaskHandler = (task: Task, pause: () => Promise<boolean>) => Promise<TaskResult>;

/** Does tasks one by one; keeps what it prepared for a problem for the next task on the same one. */
export function createTaskHandler(): TaskHandler {
  let key = '';
  let shared: { prepared: Prepared; tables: Tables } | undefined;
  const sharedFor = (problem: Problem) => {
    const wanted = JSON.stringify(problem);
    if (!shared || key !== wanted) {
      const prepared = prepare(problem);
      shared = { prepared, tables: tablesOf(prepared) };
      key = wanted;
    }
    return shared;
  };
  return (task, pause) => runLane(task, sharedFor(task.problem), pause);
}

const breathe = () => new Promise<void>((resolve) => setTimeout(resolve, 0));

/** Runs everything in this thread, `width` tasks in turns. */
export function inlineRunner(width = 1): TaskRunner {
  const handle = createTaskHandler();
  return {
    breathe,
    run: async (tasks, stop) => {
      const results: TaskResult[] = [];
      let next = 0;
      const pause = async () => {
        await breathe();
        return stop();
      };
      const work = async () => {
        while (next < tasks.length) {
          const index = next++;
          results[index] = await handle(tasks[index], pause);
        }
      };
      await Promise.all(Array.from({ length: width }, work));
      return results;
    },
  };
}
