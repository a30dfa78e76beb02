/** Counts elementary steps; a search ends when they are used up, so that its answer never depends on a clock. */
export interface WorkMeter {
  spend(steps: number): void;
  readonly spent: number;
  readonly limit: number;
  readonly exhausted: boolean;
}

export function createWorkMeter(limit: number): WorkMeter {
  let spent = 0;
  return {
    limit,
    spend: (steps) => void (spent += steps),
    get spent() {
      return spent;
    },
    get exhausted() {
      return spent >= limit;
    },
  };
}
