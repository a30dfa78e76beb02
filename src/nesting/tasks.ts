/** Runs tasks that may go to other threads. How many run at once changes the speed, never the answer. */
export interface TaskRunner {
  readonly width: number;
  /** Lets the host's timers and signals be heard. */
  breathe(): Promise<void>;
}

/** Runs everything in this thread. */
export function inlineRunner(): TaskRunner {
  return { width: 1, breathe: () => new Promise((resolve) => setTimeout(resolve, 0)) };
}
