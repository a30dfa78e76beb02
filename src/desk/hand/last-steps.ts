import type { HandMemory } from './hand.ts';
import { shortened } from './history.ts';

/** Steps that outlive the page, each way … */
const MOST_STEPS = 100;
/** … and places of blanks in all of them: a step of a sheet with many blanks is large. */
const MOST_PLACES = 40_000;

/** As much of the steps as is worth keeping with the job. Plain data that share what they have in common. */
export function lastSteps(memory: HandMemory): HandMemory {
  const { history } = memory;
  const most = Math.min(MOST_STEPS, Math.floor(MOST_PLACES / Math.max(1, history.present.blanks.length)));
  // What was selected is no step: a page that is opened anew begins with nothing chosen.
  return { ...memory, selected: new Set(), active: undefined, history: shortened(history, most) };
}
