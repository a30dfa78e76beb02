/** Something that can be bought in any quantity, with what it costs. */
export interface Priced {
  /** Undefined where so few cannot be had. */
  readonly costAt: (quantity: number) => number | undefined;
  /** Cartons a sheet: one more sheet is one more step of the cost. */
  readonly ups: number;
}

export interface Winner {
  readonly fromQuantity: number;
  /** Index into what was compared. */
  readonly candidate: number;
}

/** Quantities looked at grow by this factor; what wins only between two of them is found when halving meets it. */
const GROWTH = 1.15;
/** Quantities tried one by one before a bound is taken instead. */
const MOST_TRIED = 2000;
/** Stages that round up to whole sheets, and one to spare. */
const ROUNDED_SHEETS = 5;

/**
 * Which of several costs least, by quantity up to `most`. Cost is a slope with small stairs, since whole sheets are
 * bought: where two are nearly alike they may take turns for a while. A winner is named from the quantity on from which
 * it costs less than the one before it at every quantity until the next takes over. Equal costs: the first of them stays.
 * Empty where nothing can be had at all.
 */
export function cheapestByQuantity(all: readonly Priced[], most: number): Winner[] {
  const cheapest = (quantity: number) => leastAt(all, quantity);
  const winners: Winner[] = [];
  const add = (winner: Winner) => {
    if (winner.candidate !== winners.at(-1)?.candidate) winners.push(winner);
  };
  const firstQuantity = 1;
  let [at, best] = [firstQuantity, cheapest(firstQuantity)];
  if (best !== undefined) add({ fromQuantity: 0, candidate: best });
  while (at < most) {
    const next = Math.min(most, Math.max(at + 1, Math.floor(at * GROWTH)));
    const nextBest = cheapest(next);
    for (const change of changesWithin(cheapest, at, best, next, nextBest)) add(settled(all, winners.at(-1), change, most));
    [at, best] = [next, nextBest];
  }
  return inOrder(winners);
}

function leastAt(all: readonly Priced[], quantity: number): number | undefined {
  let best: number | undefined;
  let least = Infinity;
  for (const [index, { costAt }] of all.entries()) {
    const cost = costAt(quantity);
    if (cost !== undefined && cost < least) [best, least] = [index, cost];
  }
  return best;
}

/** Halves the interval until each change of the winner is known to the carton. */
function changesWithin(cheapest: (quantity: number) => number | undefined, low: number, atLow: number | undefined, high: number, atHigh: number | undefined): Winner[] {
  if (atLow === atHigh || atHigh === undefined) return [];
  if (high - low <= 1) return [{ fromQuantity: high, candidate: atHigh }];
  const middle = Math.floor((low + high) / 2);
  const atMiddle = cheapest(middle);
  return [...changesWithin(cheapest, low, atLow, middle, atMiddle), ...changesWithin(cheapest, middle, atMiddle, high, atHigh)];
}

/**
 * Moves a change on until the new winner stays cheaper than the old one for good: once it leads by more than the stairs
 * of both, the stairs cannot bring the old one back.
 */
function settled(all: readonly Priced[], before: Winner | undefined, change: Winner, most: number): Winner {
  if (!before || before.candidate === change.candidate) return change;
  const [old, fresh] = [all[before.candidate], all[change.candidate]];
  const lead = (quantity: number) => (old.costAt(quantity) ?? Infinity) - (fresh.costAt(quantity) ?? Infinity);
  const slope = each(old, most) - each(fresh, most);
  // Not the slope but the minimum of a mill decides: no stairs to settle.
  if (slope <= 0) return change;
  const stairs = ROUNDED_SHEETS * (each(old, most) * old.ups + each(fresh, most) * fresh.ups);
  let from = change.fromQuantity;
  for (let tried = 0, quantity = from; quantity < most; quantity++, tried++) {
    const ahead = lead(quantity);
    if (ahead <= 0) from = quantity + 1;
    if (ahead > 2 * stairs) break;
    if (tried === MOST_TRIED) return { ...change, fromQuantity: Math.min(most, Math.ceil(quantity + (2 * stairs - ahead) / slope)) };
  }
  return { ...change, fromQuantity: from };
}

/** What one more carton costs in the long run. */
function each({ costAt }: Priced, most: number): number {
  return ((costAt(most) ?? 0) - (costAt(most / 2) ?? 0)) / (most / 2);
}

/** A winner that the next one overtakes before it has settled was none. */
function inOrder(winners: readonly Winner[]): Winner[] {
  const lasting = winners.filter(({ fromQuantity }, index) => winners.slice(index + 1).every((later) => later.fromQuantity > fromQuantity));
  return lasting.filter(({ candidate }, index) => candidate !== lasting[index - 1]?.candidate);
}
