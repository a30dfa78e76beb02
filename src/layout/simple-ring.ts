import { InputError, type Issue } from '../base/issue.ts';
import { toMillimetres } from '../base/units.ts';
import type { Ring } from '../geometry/point.ts';
import { ringFaults, type RingFault } from '../geometry/validity.ts';

/** Enough to find the trouble by. */
const MOST_NAMED = 3;

/** Repeated points bound nothing, and either turning sense says the same outline: files are read all the same. */
const HARMLESS: ReadonlySet<RingFault['kind']> = new Set(['duplicate-point', 'wrong-orientation']);

/** Where the ring touches or crosses itself or turns back; empty for one simple closed line. Exact. */
export function simpleFaults(ring: Ring): RingFault[] {
  return ringFaults(ring, { mostMeetings: MOST_NAMED }).filter(({ kind }) => !HARMLESS.has(kind));
}

/** Throws an InputError with places unless the ring is one simple closed line. `where` names it. */
export function checkSimple(ring: Ring, where: string): void {
  const faults = simpleFaults(ring).slice(0, MOST_NAMED);
  if (faults.length === 0) return;
  throw new InputError(
    faults.map(({ place }): Issue => ({ code: 'ring-not-simple', severity: 'error', where, place: [toMillimetres(place.x), toMillimetres(place.y)] })),
  );
}
