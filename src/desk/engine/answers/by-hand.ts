import { solveRest, tidy } from '../../../pipeline/by-hand.ts';
import type { Host } from '../host.ts';
import type { ByHandAnswer, ByHandAsk } from '../protocol.ts';

/** Goes on from a layout under the hand: fills the rest of the sheet, or pushes it together. Locked blanks stay; when it is stopped, the best so far is the answer. */
export function workOn({ wish, effort, ...layout }: ByHandAsk, { emit, control, pool }: Host<'byHand'>): Promise<ByHandAnswer> {
  if (wish === 'tidy') return tidy(layout);
  return solveRest(layout, { effort, seed: 1 }, {
    runner: pool,
    stop: () => (control.stopped() ? 'interrupted' : undefined),
    onImprovement: (event) => emit(event.kind === 'limit' ? { limit: event.limit.ups } : { ups: event.ups }),
  });
}
