import { pricesOfStations, SUBGRADIENT_STEPS } from './station-prices.ts';
import { waysToSupply, type RunLimits, type Ways } from './ways-to-supply.ts';
import type { WorkMeter } from './work-meter.ts';

/**
 * Versions on the equal stations of a few forms: may the forms, pressed within `runs`, carry every version in its
 * quantity? A version with k_f stations on form f gets Σ k_f · run_f copies. Exact for runs that are fixed, by dynamic
 * programming over the versions: the state is how many stations of all forms but the last are used, the value the fewest
 * stations used of the last form. For runs that may vary, each version takes the run lengths that suit it best, so a no
 * is a proof and a yes is not.
 */
export interface StationQuestion {
  readonly stations: number;
  readonly quantities: readonly number[];
  /** Most copies of each; absent: nobody minds. */
  readonly most?: readonly number[] | undefined;
  /** Run of each form; with `limits` the longest one allowed. */
  readonly runs: readonly number[];
  readonly limits?: RunLimits;
}

/** Stations of each version on each form, `counts[version][form]`, or undefined when the runs do not suffice. */
export function placeVersions({ stations, quantities, most, runs, limits }: StationQuestion, meter: WorkMeter): number[][] | undefined {
  const mostOf = (version: number) => most?.[version] ?? Infinity;
  const order = quantities.map((_, version) => version).sort((a, b) => quantities[b]! - quantities[a]! || (mostOf(a) === mostOf(b) ? 0 : mostOf(a) - mostOf(b)));
  const options: Ways[] = [];
  for (const version of order) {
    const before = order[options.length - 1];
    const same = before !== undefined && quantities[before] === quantities[version] && mostOf(before) === mostOf(version);
    options.push(same ? options.at(-1)! : waysToSupply(quantities[version]!, runs, stations, meter, limits, mostOf(version)));
    if (options.at(-1)!.length === 0) return undefined;
  }
  meter.spend(options.reduce((sum, ways) => sum + ways.length, 0) * runs.length * SUBGRADIENT_STEPS);
  const prices = pricesOfStations(options, runs, stations);
  if (prices.some(({ rest }) => rest[0]! > 0)) return undefined;
  return throughStates(options, order, prices, stations, runs.length, meter);
}

/** Invariant: a state's mixed-radix digits, base `stations + 1`, are the stations used of each form but the last. */
function throughStates(options: readonly Ways[], order: readonly number[], prices: ReturnType<typeof pricesOfStations>, stations: number, forms: number, meter: WorkMeter): number[][] | undefined {
  const free = forms - 1;
  const side = stations + 1;
  const states = side ** free;
  const full = side; // "not reached": one more than any station count
  const digits = digitsOfStates(states, side, free);
  const paid = prices.map(({ price }) => paidAtStates(digits, price, states));
  let reached = new Uint16Array(states).fill(full);
  reached[0] = 0;
  const chosen: Uint16Array[] = [];
  for (let step = 0; step < options.length; step++) {
    const next = new Uint16Array(states).fill(full);
    const choice = new Uint16Array(states);
    const ways = options[step]!;
    const ahead = Int32Array.from(ways, (way) => stepOf(way, side, free));
    const lasts = Uint16Array.from(ways, (way) => way[free]!);
    const others = Uint16Array.from(ways.flatMap((way) => way.slice(0, free)));
    let tried = 0;
    for (let state = 0; state < states; state++) {
      const used = reached[state]!;
      if (used >= full) continue;
      let hopeless = false;
      for (let p = 0; p < prices.length && !hopeless; p++) hopeless = paid[p]![state]! + used * prices[p]!.price[free]! + prices[p]!.rest[step]! > 0;
      if (hopeless) continue;
      tried += ways.length;
      for (let w = 0; w < ways.length; w++) {
        const last = used + lasts[w]!;
        const target = state + ahead[w]!;
        if (last > stations || target >= states || last >= next[target]!) continue;
        let fits = true;
        for (let f = 0, at = w * free; f < free && fits; f++, at++) fits = digits[f]![state]! + others[at]! <= stations;
        if (!fits) continue;
        next[target] = last;
        choice[target] = w;
      }
    }
    meter.spend(tried + states);
    reached = next;
    chosen.push(choice);
  }
  const end = reached.findIndex((used) => used < full);
  return end < 0 ? undefined : retrace(end, options, chosen, order, side, free);
}

function digitsOfStates(states: number, side: number, free: number): Uint16Array[] {
  return Array.from({ length: free }, (_, f) => {
    const unit = side ** f;
    const digits = new Uint16Array(states);
    for (let state = 0; state < states; state++) digits[state] = Math.floor(state / unit) % side;
    return digits;
  });
}

function paidAtStates(digits: readonly Uint16Array[], price: readonly number[], states: number): Float64Array {
  const paid = new Float64Array(states);
  digits.forEach((digit, f) => {
    for (let state = 0; state < states; state++) paid[state]! += digit[state]! * price[f]!;
  });
  return paid;
}

function stepOf(way: readonly number[], side: number, free: number): number {
  let step = 0;
  for (let f = free - 1; f >= 0; f--) step = step * side + way[f]!;
  return step;
}

function retrace(end: number, options: readonly Ways[], chosen: readonly Uint16Array[], order: readonly number[], side: number, free: number): number[][] {
  const counts = new Array<number[]>(options.length);
  let state = end;
  for (let step = options.length - 1; step >= 0; step--) {
    const way = options[step]![chosen[step]![state]!]!;
    counts[order[step]!] = way;
    state -= stepOf(way, side, free);
  }
  return counts;
}
