import type { HandMemory } from './hand.ts';
import { shortened, type History } from './history.ts';
import type { SheetDocument } from './document.ts';

/** Steps that outlive the page. */
export interface KeptSteps extends HandMemory {
  /** Counts the changes by hand in a job: the layout with the greatest was changed last. Absent in jobs kept before there was one. */
  readonly change?: number;
}

interface WithSteps {
  readonly steps?: KeptSteps | undefined;
}

/** Steps of a layout, each way … */
const MOST_STEPS = 100;
/** … and places of blanks in all of them: a step of a sheet with many blanks is large. */
const MOST_PLACES = 40_000;
/**
 * Places in the steps of all layouts of a job. One takes four to nine bytes where the browser keeps it, since steps share the
 * blanks that stay: less than a megabyte, written in some milliseconds.
 */
const MOST_PLACES_OF_JOB = 80_000;

/** The steps of a layout that was changed now, as they are kept with the others. Plain data that share what they have in common. */
export function lastSteps(memory: HandMemory, others: readonly WithSteps[]): KeptSteps {
  // What was selected is no step: a page that is opened anew begins with nothing chosen.
  return { ...memory, selected: new Set(), active: undefined, change: 1 + Math.max(0, ...others.map(changeOf)) };
}

/** No more steps than are worth keeping: layouts changed longest ago lose theirs first, and of a layout the farthest go first. */
export function withinBounds<Layout extends WithSteps>(layouts: readonly Layout[]): Layout[] {
  let room = MOST_PLACES_OF_JOB;
  const bounded = new Map<Layout, Layout>();
  for (const layout of layouts.toSorted((a, b) => changeOf(b) - changeOf(a))) {
    const { steps } = layout;
    if (!steps) continue;
    const { most, places, isWhole } = fitting(steps.history, Math.min(MOST_PLACES, room));
    room -= places;
    if (!isWhole) bounded.set(layout, { ...layout, steps: most === 0 ? undefined : { ...steps, history: shortened(steps.history, most) } });
  }
  return layouts.map((layout) => bounded.get(layout) ?? layout);
}

/** How many steps each way find room, the nearest first, and how many places of blanks they take. */
function fitting({ past, future }: History<SheetDocument>, room: number): { readonly most: number; readonly places: number; readonly isWhole: boolean } {
  let [back, forward, places, most] = [past, future, 0, 0];
  for (; most < MOST_STEPS && (back || forward); most++) {
    const more = (back?.state.blanks.length ?? 0) + (forward?.state.blanks.length ?? 0);
    if (places + more > room) break;
    places += more;
    [back, forward] = [back?.next, forward?.next];
  }
  return { most, places, isWhole: !back && !forward };
}

function changeOf({ steps }: WithSteps): number {
  return steps?.change ?? 0;
}
