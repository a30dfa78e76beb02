import { signal, type ReadonlySignal } from '@preact/signals';
import { InputError } from '../../base/issue.ts';
import { watchLifeline } from './lifeline.ts';
import type { Answer, Ask, EventOf, FromEngine, Person, Question, ToEngine } from './protocol.ts';
import type { Control } from './search-control.ts';
import { createWatch } from './watch.ts';
import { newId } from '../new-id.ts';

/** The engine ended without an answer. */
export class EngineLost extends Error {}

/** The person had the thread stopped that was at work on the question. */
export class EngineStopped extends EngineLost {}

export interface Engine {
  /** Rejects with an InputError for what cannot be used, with EngineLost when the engine broke down over it again. */
  ask<Kind extends Question>(kind: Kind, ask: Ask<Kind>, onEvent?: (event: EventOf<Kind>) => void): Promise<Answer<Kind>>;
  tell(control: Control): void;
  /** Has the thread started, and what a question needs loaded, before it is asked. */
  warm(kind: Question): void;
  /** Ends the thread; the next question starts another. */
  restart(): void;
  /** Whether it has a question and has shown no sign of life for long. */
  readonly silent: ReadonlySignal<boolean>;
  /** The person goes on waiting for a silent thread. */
  wait(): void;
  /** Ends a silent thread. What it was at work on is given up with EngineStopped; what waited behind is asked of another. */
  startAnew(): void;
}

interface Pending {
  readonly message: Extract<ToEngine, { id: number }>;
  readonly resolve: (answer: never) => void;
  readonly reject: (error: Error) => void;
  readonly onEvent: ((event: never) => void) | undefined;
  /** It was on its way when a thread broke down. */
  again: boolean;
}

/**
 * One thread that answers questions. When it breaks down, or ends without a word, `onBreakdown` is told, and what was on its
 * way is asked once more in a new thread; only a question that sends events is left to whoever asked it.
 */
export function createEngine(person: () => Person, onBreakdown: () => void): Engine {
  let end: (() => void) | undefined;
  let worker: Worker | undefined;
  let next = 1;
  const pending = new Map<number, Pending>();
  const silent = signal(false);
  const watch = createWatch((now) => (silent.value = now));
  const answered = (id: number) => {
    pending.delete(id);
    if (pending.size === 0) watch.rest();
  };

  const drop = () => {
    end?.();
    worker?.terminate();
    [worker, end] = [undefined, undefined];
  };
  const giveUp = (id: number, { reject }: Pending, reason: EngineLost) => {
    answered(id);
    reject(reason);
  };
  const breakDown = (reason: string) => {
    drop();
    onBreakdown();
    for (const [id, asked] of pending) {
      if (asked.again || asked.onEvent) giveUp(id, asked, new EngineLost(reason));
      else {
        asked.again = true;
        post(asked.message);
      }
    }
  };
  const take = (data: Extract<FromEngine, { id: number }>) => {
    const asked = pending.get(data.id);
    if (!asked) return;
    if ('event' in data) {
      asked.onEvent?.(data.event as never);
      return;
    }
    answered(data.id);
    if ('answer' in data) asked.resolve(data.answer as never);
    else asked.reject('issues' in data ? new InputError(data.issues) : new Error(data.failure));
  };
  const start = () => {
    const name = newId();
    const started = new Worker(new URL('engine-worker.js', document.baseURI), { type: 'module', name });
    const life = watchLifeline(name, () => breakDown('it ended without a word'));
    end = life.end;
    started.onmessage = ({ data }: MessageEvent<FromEngine>) => {
      watch.sign();
      if ('alive' in data) life.held();
      else if ('lost' in data) breakDown(data.lost);
      else if ('id' in data) take(data);
    };
    started.onerror = (event) => breakDown(event.message);
    return started;
  };
  const post = (message: ToEngine) => (worker ??= start()).postMessage(message);
  return {
    ask: (kind, ask, onEvent) =>
      new Promise((resolve, reject) => {
        const message = { id: next++, kind, ask, ...person() };
        pending.set(message.id, { message, resolve, reject, onEvent: onEvent as Pending['onEvent'], again: false });
        watch.begin();
        post(message);
      }),
    tell: (control) => {
      if (worker) post({ control });
      if (control === 'pause') watch.rest();
      else if (pending.size > 0) watch.begin();
    },
    warm: (kind) => post({ warm: kind }),
    restart: () => {
      drop();
      for (const [id, asked] of pending) giveUp(id, asked, new EngineLost('ended by the page'));
    },
    silent,
    wait: watch.wait,
    startAnew: () => {
      drop();
      const [atWork, ...behind] = pending;
      if (atWork) giveUp(...atWork, new EngineStopped('stopped by the person'));
      for (const [, { message }] of behind) post(message);
    },
  };
}
