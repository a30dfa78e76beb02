import type { WorkMeter } from './work-meter.ts';

/**
 * Versions on the equal stations of a few forms: may the forms, each pressed `runs[f]` times, carry every version in its
 * quantity? A version with k_f stations on form f gets Σ k_f · runs[f] copies. Exact, by dynamic programming over the
 * versions: the state is how many stations of all forms but the last are used, the value the fewest stations used of the
 * last form.
 */
export interface StationQuestion {
  readonly stations: number;
  readonly quantities: readonly number[];
  readonly runs: readonly number[];
}

/** Stations of each version on each form, `counts[version][form]`, or undefined when the runs do not suffice. */
export function placeVersions({ stations, quantities, runs }: StationQuestion, meter: WorkMeter): number[][] | undefined {
  const order = quantities.map((_, version) => version).sort((a, b) => quantities[b]! - quantities[a]!);
  const options = order.map((version) => waysToSupply(quantities[version]!, runs, stations));
  meter.spend(options.reduce((sum, ways) => sum + ways.length, 0));
  const prices = pricesOfStations(options, runs, stations);
  if (prices.some(({ rest }) => rest[0]! > 0)) return undefined;

  const free = runs.length - 1;
  const side = stations + 1;
  const states = side ** free;
  const full = side; // "not reached": one more than any station count
  let reached = new Uint16Array(states).fill(full);
  reached[0] = 0;
  const chosen: Uint16Array[] = [];
  for (let step = 0; step < options.length; step++) {
    const next = new Uint16Array(states).fill(full);
    const choice = new Uint16Array(states);
    const ways = options[step]!;
    let tried = 0;
    for (let state = 0; state < states; state++) {
      const used = reached[state]!;
      if (used >= full || hopeless(state, used, step, prices, side, free)) continue;
      tried += ways.length;
      for (let w = 0; w < ways.length; w++) {
        const way = ways[w]!;
        const target = addStations(state, way, side, free);
        const last = used + way[free]!;
        if (target >= 0 && last <= stations && last < next[target]!) {
          next[target] = last;
          choice[target] = w;
        }
      }
    }
    meter.spend(tried + states / 8);
    reached = next;
    chosen.push(choice);
  }
  const end = reached.findIndex((used) => used < full);
  return end < 0 ? undefined : retrace(end, options, chosen, order, side, free);
}

/** All ways to give a version its quantity in which no station could be taken away. */
export function waysToSupply(quantity: number, runs: readonly number[], stations: number): number[][] {
  const ways: number[][] = [];
  const last = runs.length - 1;
  const counts = new Array<number>(runs.length).fill(0);
  const extend = (form: number, rest: number): void => {
    if (form === last) {
      const needed = rest > 0 ? Math.ceil(rest / runs[last]!) : 0;
      if (needed > stations) return;
      counts[last] = needed;
      const surplus = needed * runs[last]! - rest;
      if (counts.every((count, f) => f === last || count === 0 || surplus < runs[f]!)) ways.push([...counts]);
      return;
    }
    for (let count = 0; count <= stations; count++) {
      counts[form] = count;
      extend(form + 1, rest - count * runs[form]!);
      if (count * runs[form]! >= rest) break;
    }
    counts[form] = 0;
  };
  extend(0, quantity);
  return ways;
}

/**
 * Prices of a station on each form, and what the versions from a step on cost at least at these prices, less what all
 * stations are worth. Any layout pays at most the worth of all stations, so a state with what is still to come above 0
 * leads nowhere (Lagrangian bound: any prices ≥ 0 are valid, good ones are found by a few subgradient steps).
 */
interface Prices {
  readonly price: readonly number[];
  /** `rest[step]`: least cost of the versions step … end, less the worth of all stations. Whole numbers. */
  readonly rest: readonly number[];
}

const SUBGRADIENT_STEPS = 12;

function pricesOfStations(options: readonly number[][][], runs: readonly number[], stations: number): Prices[] {
  let price: number[] = [...runs];
  const found: Prices[] = [];
  for (let step = 0; step < SUBGRADIENT_STEPS; step++) {
    const { rest, used } = costOfRest(options, price, stations);
    found.push({ price, rest });
    if (rest[0]! > 0) break;
    const scale = Math.max(...runs) / (stations * (2 + step));
    price = price.map((p, f) => Math.max(0, Math.round(p + scale * (used[f]! - stations))));
    if (price.every((p) => p === 0)) break;
  }
  // The bound that sees most at the start cuts most on the way.
  return found.sort((a, b) => b.rest[0]! - a.rest[0]!).slice(0, 3);
}

function costOfRest(options: readonly number[][][], price: readonly number[], stations: number): { rest: number[]; used: number[] } {
  const rest = new Array<number>(options.length + 1).fill(0);
  rest[options.length] = -stations * price.reduce((sum, p) => sum + p, 0);
  const used = price.map(() => 0);
  for (let step = options.length - 1; step >= 0; step--) {
    let least = Infinity;
    let best: readonly number[] | undefined;
    for (const way of options[step]!) {
      let cost = 0;
      for (let f = 0; f < price.length; f++) cost += way[f]! * price[f]!;
      if (cost < least) [least, best] = [cost, way];
    }
    rest[step] = rest[step + 1]! + least;
    best?.forEach((count, f) => (used[f]! += count));
  }
  return { rest, used };
}

function hopeless(state: number, usedLast: number, step: number, prices: readonly Prices[], side: number, free: number): boolean {
  for (const { price, rest } of prices) {
    let paid = usedLast * price[free]!;
    for (let f = 0, left = state; f < free; f++) {
      paid += (left % side) * price[f]!;
      left = Math.floor(left / side);
    }
    if (paid + rest[step]! > 0) return true;
  }
  return false;
}

/** The state after a version took its stations, or −1 when a form overflows. */
function addStations(state: number, way: readonly number[], side: number, free: number): number {
  let target = 0;
  for (let f = 0, unit = 1, left = state; f < free; f++, unit *= side) {
    const used = (left % side) + way[f]!;
    if (used >= side) return -1;
    target += used * unit;
    left = Math.floor(left / side);
  }
  return target;
}

function retrace(end: number, options: readonly number[][][], chosen: readonly Uint16Array[], order: readonly number[], side: number, free: number): number[][] {
  const counts = new Array<number[]>(options.length);
  let state = end;
  for (let step = options.length - 1; step >= 0; step--) {
    const way = options[step]![chosen[step]![state]!]!;
    counts[order[step]!] = way;
    for (let f = 0, unit = 1; f < free; f++, unit *= side) state -= way[f]! * unit;
  }
  return counts;
}
