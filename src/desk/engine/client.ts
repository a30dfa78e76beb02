import { InputError } from '../../base/issue.ts';
import { watchLifeline } from './lifeline.ts';
import type { Answer, Ask, EventOf, FromEngine, Person, Question, ToEngine } from './protocol.ts';
import type { Control } from './search-control.ts';

/** The engine ended without an answer. */
export class EngineLost extends Error {}

export interface Engine {
  /** Rejects with an InputError for what cannot be used, with EngineLost when the engine broke down over it again. */
  ask<Kind extends Question>(kind: Kind, ask: Ask<Kind>, onEvent?: (event: EventOf<Kind>) => void): Promise<Answer<Kind>>;
  tell(control: Control): void;
  /** Has the thread started, and what a question needs loaded, before it is asked. */
  warm(kind: Question): void;
  /** Ends the thread; the next question starts another. */
  restart(): void;
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

  const drop = () => {
    end?.();
    worker?.terminate();
    [worker, end] = [undefined, undefined];
  };
  const giveUp = (id: number, { reject }: Pending, reason: string) => {
    pending.delete(id);
    reject(new EngineLost(reason));
  };
  const breakDown = (reason: string) => {
    drop();
    onBreakdown();
    for (const [id, asked] of pending) {
      if (asked.again || asked.onEvent) giveUp(id, asked, reason);
      else {
        asked.again = true;
        post(asked.message);
      }
    }
  };
  const take = (data: Exclude<FromEngine, { alive: true } | { lost: string }>) => {
    const asked = pending.get(data.id);
    if (!asked) return;
    if ('event' in data) {
      asked.onEvent?.(data.event as never);
      return;
    }
    pending.delete(data.id);
    if ('answer' in data) asked.resolve(data.answer as never);
    else asked.reject('issues' in data ? new InputError(data.issues) : new Error(data.failure));
  };
  const start = () => {
    const name = crypto.randomUUID();
    const started = new Worker(new URL('engine-worker.js', document.baseURI), { type: 'module', name });
    const life = watchLifeline(name, () => breakDown('it ended without a word'));
    end = life.end;
    started.onmessage = ({ data }: MessageEvent<FromEngine>) => {
      if ('alive' in data) life.held();
      else if ('lost' in data) breakDown(data.lost);
      else take(data);
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
        post(message);
      }),
    tell: (control) => {
      if (worker) post({ control });
    },
    warm: (kind) => post({ warm: kind }),
    restart: () => {
      drop();
      for (const [id, asked] of pending) giveUp(id, asked, 'ended by the page');
    },
  };
}
