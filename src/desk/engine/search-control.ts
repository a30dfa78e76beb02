/** What a person may tell a running search; `begin` comes before the next one. */
export type Control = 'begin' | 'pause' | 'resume' | 'stop';

/** Remembers what a search was told and makes it wait while it is paused. */
export interface SearchControl {
  readonly stopped: () => boolean;
  tell(control: Control): void;
  /** Hears what was said meanwhile, then waits until the search may go on. */
  breathe(): Promise<void>;
}

/** `onCheck` is called whenever the search asks what it was told: it is at work. */
export function createSearchControl(breathe: () => Promise<void>, onCheck: () => void): SearchControl {
  let stopped = false;
  let release = () => {};
  let paused: Promise<void> | undefined;
  return {
    stopped: () => {
      onCheck();
      return stopped;
    },
    tell: (control) => {
      stopped = control === 'stop' || (stopped && control !== 'begin');
      if (control === 'pause') paused ??= new Promise((resolve) => (release = resolve));
      else {
        release();
        paused = undefined;
      }
    },
    breathe: async () => {
      onCheck();
      await breathe();
      while (paused) await paused;
    },
  };
}
