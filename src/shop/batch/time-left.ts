/** How long the rest will take, with what can be said of the estimate's error. Seconds. */
export interface TimeLeft {
  readonly seconds: number;
  /** Twice the standard error: in nineteen cases of twenty the rest takes no longer or shorter by more. */
  readonly error: number;
}

/**
 * Estimates from counted work: tasks come in a random order, so those done are a fair sample of those to come. The
 * seconds a unit of work takes are known from the clock.
 */
export interface TimeKeeper {
  /** A task was computed; its counted work. */
  computed(work: number): void;
  /** Undefined before there is enough to say anything. */
  left(tasks: number, elapsedSeconds: number): TimeLeft | undefined;
}

/** Fewer tasks say nothing of how much tasks differ. */
const LEAST = 4;

export function createTimeKeeper(): TimeKeeper {
  let [count, mean, squares] = [0, 0, 0];
  return {
    // Welford's running mean and sum of squared differences (Technometrics 4, 1962).
    computed(work) {
      count++;
      const before = work - mean;
      mean += before / count;
      squares += before * (work - mean);
    },
    left(tasks, elapsedSeconds) {
      if (count < LEAST || mean === 0) return undefined;
      const variation = Math.sqrt(squares / (count - 1)) / mean;
      const each = elapsedSeconds / count;
      // The rest varies by itself, and the mean that it is told from is that of a sample.
      return { seconds: tasks * each, error: 2 * each * variation * Math.sqrt(tasks + tasks ** 2 / count) };
    },
  };
}
