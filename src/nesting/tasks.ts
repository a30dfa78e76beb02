import { runCountsLane, type CountsResult, type CountsTask } from './mixed/counts-lane.ts';
import { runLane, type LaneResult, type LaneTask } from './lanes.ts';
import { prepare, type Prepared } from './prepare.ts';
import { runStripLane, type StripResult, type StripTask } from './strip-lanes.ts';
import { MOST_NODES, tablesOf } from './tables.ts';

/** Work that may be done by another thread. Tasks and results are plain data. */
export type Task = LaneTask | StripTask | CountsTask;
export type ResultOf<T extends Task> = T extends StripTask ? StripResult : T extends CountsTask ? CountsResult : LaneResult;

/** Runs tasks, here or in other threads. How many run at once changes the speed, never the answer. */
export interface TaskRunner {
  /**
   * Results in the order of the tasks. Once `stop` says so, running tasks end early with what they have and those not yet
   * begun do next to nothing.
   */
  run<T extends Task>(tasks: readonly T[], stop: () => boolean): Promise<readonly ResultOf<T>[]>;
  /** Lets the host's timers and signals be heard. */
  breathe(): Promise<void>;
}

export type TaskHandler = <T extends Task>(task: T, pause: () => Promise<boolean>) => Promise<ResultOf<T>>;

/**
 * Does tasks one by one; keeps what it prepared for a problem for the next task on the same one, and the tables for one on
 * another sheet.
 */
export function createTaskHandler(): TaskHandler {
  const prepareOnce = keptLast(prepare, JSON.stringify);
  const tablesOnce = keptLast(
    ({ prepared, mostNodes }: { prepared: Prepared; mostNodes: number }) => tablesOf(prepared, mostNodes),
    ({ prepared: { shapes, poses }, mostNodes }) => JSON.stringify([shapes, poses.map(({ shape, turn }) => [shape, turn]), mostNodes]),
  );
  const sharedFor = (task: Task) => {
    const prepared = prepareOnce(task.problem);
    return { prepared, tables: tablesOnce({ prepared, mostNodes: nodesFor(task) }) };
  };
  const handle = (task: Task, pause: () => Promise<boolean>): Promise<ResultOf<Task>> => {
    const tools = sharedFor(task);
    switch (task.kind) {
      case 'lane':
        return runLane(task, tools, pause);
      case 'strip':
        return runStripLane(task, tools, pause);
      case 'counts':
        return runCountsLane(task, tools, pause);
    }
  };
  return handle as TaskHandler;
}

/**
 * A short search for counts of many parts, which have many pairs, gets coarse tables: finer ones would take longer to make
 * than to search with. What it finds is settled on the true outlines all the same.
 */
function nodesFor(task: Task): number {
  return task.kind === 'counts' ? Math.min(MOST_NODES, NODES_PER_LOOK_UP * task.work) : MOST_NODES;
}

const NODES_PER_LOOK_UP = 1.5;

/** Makes a thing anew only when it is asked for by another key than the last time. */
function keptLast<A, T>(make: (from: A) => T, keyOf: (from: A) => string): (from: A) => T {
  let last: { key: string; made: T } | undefined;
  return (from) => {
    const key = keyOf(from);
    if (last?.key !== key) last = { key, made: make(from) };
    return last.made;
  };
}

const breathe = () => new Promise<void>((resolve) => setTimeout(resolve, 0));

/** Runs everything in this thread, `width` tasks in turns. */
export function inlineRunner(width = 1): TaskRunner {
  const handle = createTaskHandler();
  return {
    breathe,
    run: async <T extends Task>(tasks: readonly T[], stop: () => boolean) => {
      const results: ResultOf<T>[] = [];
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
