/** What is proved of every layout of a sheet: no more ups of a design alone, no more area than there is, and what covers of the sheet add. */
export interface FormRoom {
  /** Part of the sheet's free area that a blank of each design takes at least. */
  readonly shares: readonly number[];
  /** Most ups of each design by itself. */
  readonly alone: readonly number[];
  /** Further lists like `shares`: in no layout do those of its blanks sum to more than 1. */
  readonly covers?: readonly (readonly number[])[];
}

/** Sums of shares are doubles; a layout is refused only when it is over by more than they can err. */
const SLACK = 1e-9;
/** Ways looked at before the bound of the fractional knapsack is taken. */
const MOST_NODES = 300_000;

/** False: no layout holds these counts. True: not known. */
export function mayFit(room: FormRoom, counts: readonly number[]): boolean {
  return counts.every((count, d) => count <= room.alone[d]!) && listsOf(room).every((shares) => counts.reduce((sum, count, d) => sum + count * shares[d]!, 0) <= 1 + SLACK);
}

/** Most of one design that may fit by itself. */
export function mostAlone(room: FormRoom, design: number): number {
  return Math.min(room.alone[design]!, ...listsOf(room).map((shares) => Math.floor((1 + SLACK) / shares[design]!)));
}

function listsOf({ shares, covers = [] }: FormRoom): (readonly number[])[] {
  return [shares, ...covers];
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
 * The counts of most worth among those that may fit: a bounded knapsack, dearest by area first, branch and bound; with
 * covers one of several rooms, its reach the least of theirs. Where the ways are too many, `worth` is that of the fractional knapsack, which is no less.
 */
export function mostWorth(room: FormRoom, prices: readonly number[]): { worth: number; counts: number[] } {
  const { shares } = room;
  const alone = room.alone.map((_, d) => mostAlone(room, d));
  const lists = listsOf(room);
  const order = prices.map((_, d) => d).filter((d) => prices[d]! > 0).sort((a, b) => prices[b]! / shares[b]! - prices[a]! / shares[a]!);
  const counts = prices.map(() => 0);
  let best = { worth: 0, counts: [...counts] };
  let nodes = 0;
  // By list and k: the designs from place k of the order on, dearest by the list's own shares first.
  const dearest = lists.map((own) => order.map((_, k) => order.slice(k).sort((a, b) => prices[b]! * own[a]! - prices[a]! * own[b]!)));
  const reach = (k: number, lefts: readonly number[]): number => Math.min(...lists.map((own, l) => {
    let [worth, left] = [0, lefts[l]!];
    for (const d of dearest[l]![k] ?? []) {
      if (left <= 0) break;
      const count = Math.min(alone[d]!, left / own[d]!);
      worth += count * prices[d]!;
      left -= count * own[d]!;
    }
    return worth;
  }));
  const choose = (k: number, lefts: readonly number[], worth: number): void => {
    if (worth > best.worth) best = { worth, counts: [...counts] };
    if (k === order.length || nodes++ > MOST_NODES || worth + reach(k, lefts) <= best.worth * (1 + SLACK / 10)) return;
    const d = order[k]!;
    for (let count = Math.min(alone[d]!, ...lists.map((own, l) => Math.floor((lefts[l]! + SLACK) / own[d]!))); count >= 0; count--) {
      counts[d] = count;
      choose(k + 1, lefts.map((left, l) => left - count * lists[l]![d]!), worth + count * prices[d]!);
    }
    counts[d] = 0;
  };
  choose(0, lists.map(() => 1), 0);
  return nodes > MOST_NODES ? { ...best, worth: reach(0, lists.map(() => 1 + SLACK)) } : best;
}
