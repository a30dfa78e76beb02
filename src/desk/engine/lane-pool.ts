import { spread, type Reply, type Thread } from '../../nesting/spread.ts';
import type { TaskRunner } from '../../nesting/tasks.ts';
import type { LaneMessage, LaneReply } from './lane-worker.ts';
import { watchLifeline } from './lifeline.ts';
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

/** A thread of the search has gone. The others go on with what is no longer wanted: whoever started them ends as well. */
export class LaneLost extends Error {}

/** Spreads tasks over Web Workers, started when they are first needed: the page's counterpart of the command line's pool. */
export function createLanePool(width: number, control: SearchControl): LanePool {
  const lanes: Lane[] = [];
  return {
    breathe: control.breathe,
    run: (tasks) => {
      while (lanes.length < Math.min(width, tasks.length)) lanes.push(startLane());
      return spread(tasks, lanes);
    },
    tell: (told) => {
      for (const lane of lanes) lane.tell(told);
    },
    close: () => {
      for (const lane of lanes.splice(0)) lane.end();
    },
  };
}

interface Lane extends Thread {
  tell(control: Control): void;
  end(): void;
}

function startLane(): Lane {
  const name = crypto.randomUUID();
  const worker = new Worker(new URL('lane-worker.js', location.href), { type: 'module', name });
  const post = (message: LaneMessage) => worker.postMessage(message);
  let gone: LaneLost | undefined;
  let listener: { readonly take: (reply: Reply) => void; readonly fail: (error: unknown) => void } | undefined;
  const lose = (reason: string) => {
    gone = new LaneLost(reason);
    listener?.fail(gone);
  };
  const life = watchLifeline(name, () => lose('a thread of the search ended without a word'));
  worker.onmessage = ({ data }: MessageEvent<LaneReply>) => ('alive' in data ? life.held() : listener?.take(data));
  worker.onerror = (event) => lose(event.message);
  return {
    post: (order) => post({ order }),
    listen: (take, fail) => {
      listener = { take, fail };
      // Whoever listens is told after it has begun.
      if (gone) queueMicrotask(() => fail(gone));
      return () => (listener = undefined);
    },
    tell: (control) => post({ control }),
    end: () => {
      life.end();
      worker.terminate();
    },
  };
}
