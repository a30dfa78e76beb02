/** What is proved of every layout of a sheet: no more ups of a design alone, and no more area than there is. */
export interface FormRoom {
  /** Part of the sheet's free area that a blank of each design takes at least. */
  readonly shares: readonly number[];
  /** Most ups of each design by itself. */
  readonly alone: readonly number[];
}

/** Sums of shares are doubles; a layout is refused only when it is over by more than they can err. */
const SLACK = 1e-9;
/** Ways looked at before the bound of the fractional knapsack is taken. */
const MOST_NODES = 300_000;

/** False: no layout holds these counts. True: not known. */
export function mayFit({ shares, alone }: FormRoom, counts: readonly number[]): boolean {
  return counts.every((count, d) => count <= alone[d]!) && counts.reduce((sum, count, d) => sum + count * shares[d]!, 0) <= 1 + SLACK;
}

/** No single form makes these quantities with fewer pressings. Infinity when no single form can. */
export function oneFormBound(room: FormRoom, quantities: readonly number[]): number {
  const holds = (run: number) => mayFit(room, quantities.map((quantity) => Math.ceil(quantity / run)));
  let high = Math.max(...quantities);
  if (!holds(high)) return Infinity;
  let low = 0;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/**
 * No number of forms makes these quantities with fewer pressings: the prices, whatever they are, say what a copy is worth;
 * no pressing makes more worth than `mostWorth` (the dual of Gilmore and Gomory's program, Operations Research 9, 1961).
 */
export function boundByPrices(room: FormRoom, quantities: readonly number[], prices: readonly number[]): number {
  const worth = mostWorth(room, prices).worth * (1 + SLACK);
  return worth > 0 ? quantities.reduce((sum, quantity, d) => sum + quantity * prices[d]!, 0) / worth : 0;
}

/**
 * The counts of most worth among those that may fit: a bounded knapsack, dearest by area first, branch and bound. Where
 * the ways are too many, `worth` is that of the fractional knapsack, which is no less.
 */
export function mostWorth({ shares, alone }: FormRoom, prices: readonly number[]): { worth: number; counts: number[] } {
  const order = prices.map((_, d) => d).filter((d) => prices[d]! > 0).sort((a, b) => prices[b]! / shares[b]! - prices[a]! / shares[a]!);
  const counts = prices.map(() => 0);
  let best = { worth: 0, counts: [...counts] };
  let nodes = 0;
  const reach = (k: number, room: number): number => {
    let [worth, left] = [0, room];
    for (let i = k; i < order.length && left > 0; i++) {
      const d = order[i]!;
      const count = Math.min(alone[d]!, left / shares[d]!);
      worth += count * prices[d]!;
      left -= count * shares[d]!;
    }
    return worth;
  };
  const choose = (k: number, room: number, worth: number): void => {
    if (worth > best.worth) best = { worth, counts: [...counts] };
    if (k === order.length || nodes++ > MOST_NODES || worth + reach(k, room) <= best.worth * (1 + SLACK / 10)) return;
    const d = order[k]!;
    for (let count = Math.min(alone[d]!, Math.floor((room + SLACK) / shares[d]!)); count >= 0; count--) {
      counts[d] = count;
      choose(k + 1, room - count * shares[d]!, worth + count * prices[d]!);
    }
    counts[d] = 0;
  };
  choose(0, 1, 0);
  return nodes > MOST_NODES ? { ...best, worth: reach(0, 1 + SLACK) } : best;
}
