/** Look-ups between two questions whether to stop. */
const WORK_PER_PAUSE = 200_000;
/** A round may last so many times its work to bring what it has begun to an end. */
const OVERTIME = 3;

/** Whether the search is at a good place to end a round, in the midst of something, or done for good. */
export type Standing = 'between' | 'within' | 'done';

/**
 * Draws steps from an endless search until the counted work is spent, at a good place if one comes soon. `pause` tells
 * whether to stop at once. Returns the work done.
 */
export async function drawSteps<S extends { readonly work: number }>(search: Iterable<S>, budget: number, pause: () => Promise<boolean>, take: (step: S) => Standing): Promise<number> {
  let work = 0;
  let pauseAt = WORK_PER_PAUSE;
  for (const step of search) {
    work += step.work;
    const standing = take(step);
    if (standing === 'done' || (work >= budget && standing === 'between') || work >= OVERTIME * budget) break;
    if (work < pauseAt) continue;
    pauseAt = work + WORK_PER_PAUSE;
    if (await pause()) break;
  }
  return work;
}
