/**
 * Notices a thread that has a question and shows no sign of life: caught in a loop, hung, or merely long at work. Nothing
 * tells these apart from outside, so the person is told and decides; nothing is ended here. Signs come of work done (events,
 * answers, the search's own control checks, steps of reading and judging), never of a timer, which a thread that waits for nothing would keep up as well.
 */
export interface Watch {
  /** The thread has been asked something. */
  begin(): void;
  /** It has nothing to do, or waits because the person paused it. */
  rest(): void;
  sign(): void;
  /** The person goes on waiting: it is told again after as long once more. */
  wait(): void;
}

/** The longest single steps of reading and judging take some seconds, and several times as many on a busy machine. */
export const PATIENCE_MS = 30_000;
const TICK_MS = 1_000;
/** A machine that slept, or a page whose timers were held back, has not waited for so long. */
const LONGEST_TICK_MS = 2 * TICK_MS;

export function createWatch(onSilent: (silent: boolean) => void, now: () => number = () => performance.now()): Watch {
  let timer: ReturnType<typeof setInterval> | undefined;
  let silentMs = 0;
  let patience = PATIENCE_MS;
  let told = false;
  let last = 0;
  const tell = (silent: boolean) => {
    if (told === silent) return;
    told = silent;
    onSilent(silent);
  };
  const tick = () => {
    const at = now();
    silentMs += Math.min(at - last, LONGEST_TICK_MS);
    last = at;
    if (silentMs >= patience) tell(true);
  };
  const sign = () => {
    silentMs = 0;
    tell(false);
  };
  return {
    begin: () => {
      if (timer !== undefined) return;
      patience = PATIENCE_MS;
      last = now();
      sign();
      timer = setInterval(tick, TICK_MS);
    },
    rest: () => {
      clearInterval(timer);
      timer = undefined;
      sign();
    },
    sign,
    wait: () => {
      patience *= 2;
      sign();
    },
  };
}
