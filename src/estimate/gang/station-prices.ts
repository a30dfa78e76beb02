import type { Ways } from './ways-to-supply.ts';

/**
 * Prices of a station on each form, and what the versions from a step on cost at least at these prices, less what all
 * stations are worth. Any layout pays at most the worth of all stations, so a state with what is still to come above 0
 * leads nowhere (Lagrangian bound: any prices ≥ 0 are valid, good ones are found by a few subgradient steps).
 */
export interface Prices {
  readonly price: readonly number[];
  /** `rest[step]`: least cost of the versions step … end, less the worth of all stations. Whole numbers. */
  readonly rest: readonly number[];
}

export const SUBGRADIENT_STEPS = 12;
/** Bounds kept: those that see most at the start cut most on the way. */
const MOST_PRICES = 3;

/** Stops at the first prices that prove that nothing fits. */
export function pricesOfStations(options: readonly Ways[], runs: readonly number[], stations: number): Prices[] {
  let price: number[] = [...runs];
  const found: Prices[] = [];
  const longest = Math.max(...runs);
  for (let step = 0; step < SUBGRADIENT_STEPS; step++) {
    const { rest, used } = costOfRest(options, price, stations);
    found.push({ price, rest });
    if (rest[0]! > 0) return found;
    const scale = longest / (stations * (2 + step));
    price = price.map((p, f) => Math.max(0, Math.round(p + scale * (used[f]! - stations))));
    if (price.every((p) => p === 0)) break;
  }
  return found.sort((a, b) => b.rest[0]! - a.rest[0]!).slice(0, MOST_PRICES);
}

function costOfRest(options: readonly Ways[], price: readonly number[], stations: number): { rest: number[]; used: number[] } {
  const forms = price.length;
  const rest = new Array<number>(options.length + 1).fill(0);
  let worth = 0;
  for (let f = 0; f < forms; f++) worth += price[f]!;
  rest[options.length] = -stations * worth;
  const used = new Array<number>(forms).fill(0);
  let [least, best] = [Infinity, 0];
  for (let step = options.length - 1; step >= 0; step--) {
    const ways = options[step]!;
    // Versions of the same quantity share their ways.
    if (ways !== options[step + 1]) {
      [least, best] = [Infinity, 0];
      for (let w = 0; w < ways.length; w++) {
        const way = ways[w]!;
        let cost = 0;
        for (let f = 0; f < forms; f++) cost += way[f]! * price[f]!;
        if (cost < least) [least, best] = [cost, w];
      }
    }
    rest[step] = rest[step + 1]! + least;
    for (let f = 0; f < forms; f++) used[f]! += ways[best]![f]!;
  }
  return { rest, used };
}
