import { waysToSupply } from './ways-to-supply.ts';
import type { WorkMeter } from './work-meter.ts';

export interface FixedRuns {
  readonly stations: number;
  readonly quantities: readonly number[];
  /** Most copies of each; absent: nobody minds. */
  readonly most?: readonly number[] | undefined;
  readonly runs: readonly number[];
}

/** States beyond this take too much room; a plan is then only improved version by version. */
const MOST_STATES = 1_000_000;

/**
 * Stations of each version on each form with the fewest copies in all, the runs being fixed: dynamic programming over
 * the versions, the state being the stations used of every form. Exact where states and work allow, and `exact` says so;
 * otherwise `counts` improved one version at a time.
 */
export function fewestOvers(problem: FixedRuns, counts: readonly (readonly number[])[], meter: WorkMeter): { counts: number[][]; exact: boolean } {
  const { stations, quantities, most: copies, runs } = problem;
  const ways = quantities.map((quantity, v) => waysToSupply(quantity, runs, stations, meter, undefined, copies?.[v]));
  const states = (stations + 1) ** runs.length;
  const most = states * ways.reduce((sum, { length }) => sum + length, 0);
  if (states > MOST_STATES || meter.spent + most > meter.limit) return { counts: oneByOne(problem, ways, counts), exact: false };
  meter.spend(most);
  return { counts: throughStates(problem, ways, states), exact: true };
}

function throughStates({ stations, runs }: FixedRuns, ways: readonly number[][][], states: number): number[][] {
  const side = stations + 1;
  const units = runs.map((_, f) => side ** f);
  let reached = new Float64Array(states).fill(Infinity);
  reached[0] = 0;
  const chosen: Int32Array[] = [];
  for (const options of ways) {
    const next = new Float64Array(states).fill(Infinity);
    const choice = new Int32Array(states);
    const steps = options.map((way) => way.reduce((sum, count, f) => sum + count * units[f]!, 0));
    const copies = options.map((way) => copiesOf(way, runs));
    for (let state = 0; state < states; state++) {
      const made = reached[state]!;
      if (made === Infinity) continue;
      for (let w = 0; w < options.length; w++) {
        if (made + copies[w]! >= (next[state + steps[w]!] ?? -1) || !fits(state, options[w]!, side)) continue;
        next[state + steps[w]!] = made + copies[w]!;
        choice[state + steps[w]!] = w;
      }
    }
    reached = next;
    chosen.push(choice);
  }
  let state = reached.indexOf(reached.reduce((least, made) => Math.min(least, made), Infinity));
  return ways.map((_, i) => ways.length - 1 - i).map((step) => {
    const way = ways[step]![chosen[step]![state]!]!;
    state -= way.reduce((sum, count, f) => sum + count * units[f]!, 0);
    return way;
  }).toReversed();
}

function fits(state: number, way: readonly number[], side: number): boolean {
  for (let f = 0, left = state; f < way.length; f++, left = Math.floor(left / side)) if ((left % side) + way[f]! >= side) return false;
  return true;
}

/** Each version in turn takes the way with the fewest copies that the stations left by the others allow. */
function oneByOne({ stations, runs }: FixedRuns, ways: readonly number[][][], counts: readonly (readonly number[])[]): number[][] {
  const current = counts.map((count) => [...count]);
  const free = runs.map((_, f) => stations - current.reduce((sum, count) => sum + count[f]!, 0));
  ways.forEach((options, v) => {
    let best = current[v]!;
    for (const way of options) if (way.every((count, f) => count <= free[f]! + current[v]![f]!) && copiesOf(way, runs) < copiesOf(best, runs)) best = way;
    free.forEach((_, f) => (free[f] = free[f]! + current[v]![f]! - best[f]!));
    current[v] = best;
  });
  return current;
}

export function copiesOf(way: readonly number[], runs: readonly number[]): number {
  return way.reduce((sum, count, f) => sum + count * runs[f]!, 0);
}
