/** Why a run should end early, asked by the search between slices of work. */
export interface StopSignal {
  readonly reason: () => 'seconds' | 'interrupted' | undefined;
  /** Milliseconds since the signal was made. */
  readonly elapsed: () => number;
  readonly dispose: () => void;
}

/** Ends a run after so many seconds, or at the first Ctrl-C or polite kill. A second Ctrl-C ends the process as usual. */
export function createStopSignal(seconds: number | undefined): StopSignal {
  const start = performance.now();
  let interrupted = false;
  const interrupt = () => {
    interrupted = true;
    dispose();
  };
  const dispose = () => {
    process.off('SIGINT', interrupt);
    process.off('SIGTERM', interrupt);
  };
  process.on('SIGINT', interrupt);
  process.on('SIGTERM', interrupt);
  const elapsed = () => performance.now() - start;
  return {
    elapsed,
    dispose,
    reason: () => (interrupted ? 'interrupted' : seconds !== undefined && elapsed() >= seconds * 1000 ? 'seconds' : undefined),
  };
}
