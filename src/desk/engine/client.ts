import { InputError } from '../../base/issue.ts';
import type { Answer, Ask, EventOf, FromEngine, Question, ToEngine } from './protocol.ts';
import type { Control } from './search-control.ts';

/** The engine ended without an answer. */
export class EngineLost extends Error {}

export interface Engine {
  /** Rejects with an InputError for what cannot be used, with EngineLost when the engine broke down meanwhile. */
  ask<Kind extends Question>(kind: Kind, ask: Ask<Kind>, onEvent?: (event: EventOf<Kind>) => void): Promise<Answer<Kind>>;
  tell(control: Control): void;
  /** Ends the thread; the next question starts another. */
  restart(): void;
}

interface Pending {
  readonly resolve: (answer: never) => void;
  readonly reject: (error: Error) => void;
  readonly onEvent: ((event: never) => void) | undefined;
}

/** One thread that answers questions. After a breakdown the next question finds a new one. */
export function createEngine(locale: () => string): Engine {
  let worker: Worker | undefined;
  let next = 1;
  const pending = new Map<number, Pending>();

  const lose = (reason: string) => {
    worker?.terminate();
    worker = undefined;
    const lost = [...pending.values()];
    pending.clear();
    for (const { reject } of lost) reject(new EngineLost(reason));
  };
  const take = ({ data }: MessageEvent<FromEngine>) => {
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
    const started = new Worker(new URL('engine-worker.js', document.baseURI), { type: 'module' });
    started.onmessage = take;
    started.onerror = (event) => lose(event.message);
    return started;
  };
  const post = (message: ToEngine) => (worker ??= start()).postMessage(message);
  return {
    ask: (kind, ask, onEvent) =>
      new Promise((resolve, reject) => {
        const id = next++;
        pending.set(id, { resolve, reject, onEvent: onEvent as Pending['onEvent'] });
        post({ id, kind, ask, locale: locale() });
      }),
    tell: (control) => {
      if (worker) post({ control });
    },
    restart: () => lose('ended by the page'),
  };
}
