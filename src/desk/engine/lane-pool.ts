import { spread, type Reply, type Thread } from '../../nesting/spread.ts';
import type { TaskRunner } from '../../nesting/tasks.ts';
import type { LaneMessage, LaneReply } from './lane-worker.ts';
import { watchLifeline } from './lifeline.ts';
import type { Control, SearchControl } from './search-control.ts';
import { newId } from '../new-id.ts';

export interface LanePool extends TaskRunner {
  /** Hands on to the threads what the search was told. */
  tell(control: Control): void;
  /** For how long the most silent thread at work has given no sign, milliseconds. */
  silence(): number;
  close(): void;
}

/** Lanes are few and fixed; a page leaves one core to the person. */
const MOST_THREADS = 8;

export function defaultThreads(): number {
  return Math.max(1, Math.min(MOST_THREADS, navigator.hardwareConcurrency - 1));
}

/** A thread of the search has gone. The others go on with what is no longer wanted: whoever started them ends as well. */
export class LaneLost extends Error {}

/**
 * Spreads tasks over Web Workers, started when they are first needed: the page's counterpart of the command line's pool.
 * `onSign` hears every sign of life of a thread.
 */
export function createLanePool(width: number, control: SearchControl, onSign: () => void): LanePool {
  const lanes: Lane[] = [];
  // Two questions may be at work at once; a lane hears one run at a time.
  let before: Promise<unknown> = Promise.resolve();
  return {
    breathe: control.breathe,
    run: (tasks) => {
      const run = before.then(() => {
        while (lanes.length < Math.min(width, tasks.length)) lanes.push(startLane(onSign));
        return spread(tasks, lanes);
      });
      before = run.catch(() => undefined);
      return run;
    },
    tell: (told) => {
      for (const lane of lanes) lane.tell(told);
    },
    silence: () => Math.max(0, ...lanes.map((lane) => lane.silence())),
    close: () => {
      for (const lane of lanes.splice(0)) lane.end();
    },
  };
}

interface Lane extends Thread {
  tell(control: Control): void;
  silence(): number;
  end(): void;
}

function startLane(onSign: () => void): Lane {
  const name = newId();
  const worker = new Worker(new URL('lane-worker.js', location.href), { type: 'module', name });
  const post = (message: LaneMessage) => worker.postMessage(message);
  let gone: LaneLost | undefined;
  let listener: { readonly take: (reply: Reply) => void; readonly fail: (error: unknown) => void } | undefined;
  const lose = (reason: string) => {
    gone = new LaneLost(reason);
    listener?.fail(gone);
  };
  const life = watchLifeline(name, () => lose('a thread of the search ended without a word'));
  let isAtWork = false;
  let heardAt = 0;
  worker.onmessage = ({ data }: MessageEvent<LaneReply>) => {
    heardAt = performance.now();
    if ('alive' in data) life.held();
    else if ('index' in data) {
      isAtWork = false;
      listener?.take(data);
    }
    onSign();
  };
  worker.onerror = (event) => lose(event.message);
  return {
    post: (order) => {
      isAtWork = true;
      heardAt = performance.now();
      post({ order });
    },
    listen: (take, fail) => {
      listener = { take, fail };
      // Whoever listens is told after it has begun.
      if (gone) queueMicrotask(() => fail(gone));
      return () => (listener = undefined);
    },
    tell: (control) => post({ control }),
    silence: () => (isAtWork ? performance.now() - heardAt : 0),
    end: () => {
      life.end();
      worker.terminate();
    },
  };
}
