/**
 * How a thread's end is noticed however it ended: as long as it lives it holds a lock of its own name, and the browser hands
 * the lock to whoever waits for it when the thread is gone. Long work is never mistaken for death, as it would be by a
 * missing beat (Web Locks API, W3C).
 */
export interface Lifeline {
  /** The thread said that it holds its lock. */
  held(): void;
  /** Ends the watch. */
  end(): void;
}

/**
 * Locks are missing on a page that a server hands out over plain HTTP: there a silent end is told of like a thread that is
 * caught in a loop.
 */
const locks = (globalThis.navigator as { locks?: LockManager } | undefined)?.locks;

/** In the thread; `held` tells whoever started it. Work that never pauses must not begin before it is told. */
export function holdLifeline(name: string, held: () => void): Promise<void> {
  return new Promise((resolve) => {
    const hold = () => {
      held();
      resolve();
      return new Promise<never>(() => {});
    };
    if (locks) void locks.request(name, hold);
    else void hold();
  });
}

/** A thread that has not said so long after its start that it lives has ended while it was loaded. */
const LOADED_AFTER_MS = 20_000;

export function watchLifeline(name: string, onGone: () => void): Lifeline {
  const watch = new AbortController();
  const loading = setTimeout(onGone, LOADED_AFTER_MS);
  return {
    held: () => {
      clearTimeout(loading);
      // The lock asked for before the thread has it would come at once.
      void locks?.request(name, { signal: watch.signal }, onGone).catch(() => undefined);
    },
    end: () => {
      clearTimeout(loading);
      watch.abort();
    },
  };
}
