import { placeVersions } from './stations.ts';
import type { WorkMeter } from './work-meter.ts';

export interface VersionsProblem {
  readonly stations: number;
  /** Fewest copies of each version. */
  readonly quantities: readonly number[];
  /** Most copies of each, none under its quantity; Infinity where nobody minds. Absent: nobody minds at all. */
  readonly most?: readonly number[] | undefined;
}

export interface FormRun {
  /** Stations of each version. */
  readonly counts: readonly number[];
  readonly pressings: number;
}

export interface FewestPressings {
  /** Undefined when no plan with fewer pressings than asked for was found. */
  readonly forms: readonly FormRun[] | undefined;
  /** No plan of so many forms has fewer pressings. */
  readonly lowerBound: number;
}

/** No plan, whatever its number of forms, has fewer pressings: every station of every pressing carries one copy. */
export function pressingsByQuantity({ stations, quantities }: VersionsProblem): number {
  return Math.ceil(quantities.reduce((sum, quantity) => sum + quantity, 0) / stations);
}

/**
 * A box of run lengths, longest form first: `low[f] ≤ runs[f] ≤ high[f]`. If even `high` cannot carry the versions,
 * nothing in the box can, since longer runs never carry less; nor where even `low` makes too many copies.
 */
interface RunBox {
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/**
 * Fewest pressings with at most `forms` forms, below `below`: branch and bound over boxes of run lengths, boxes with the
 * least sum of lower ends first. Exact when the work suffices; otherwise the best found and the bound reached.
 */
export function fewestPressings(problem: VersionsProblem, forms: number, below: number, meter: WorkMeter): FewestPressings {
  const floor = pressingsByQuantity(problem);
  if (forms === 1) return oneForm(problem, below, meter);
  const search: Search = { problem, meter, best: below, plan: undefined };
  const open = createBoxQueue();
  const first = clip({ low: new Array<number>(forms).fill(0), high: new Array<number>(forms).fill(Math.min(below - 1, longestRun(problem))) }, below, floor);
  if (first) open.push(first);
  let proved = floor;
  for (let box = open.pop(); box; box = open.pop()) {
    proved = Math.max(proved, sum(box.low));
    if (proved >= search.best) break;
    if (meter.exhausted) return { forms: search.plan, lowerBound: Math.min(proved, search.best) };
    const counts = placeVersions({ ...problem, runs: box.high, limits: { shortest: box.low, sum: search.best - 1 } }, meter);
    if (!counts) continue;
    offer(search, counts, box.high);
    for (const half of halve(box)) {
      const kept = clip(half, search.best, floor);
      if (kept) open.push(kept);
    }
  }
  return { forms: search.plan, lowerBound: search.best };
}

interface Search {
  readonly problem: VersionsProblem;
  readonly meter: WorkMeter;
  best: number;
  plan: readonly FormRun[] | undefined;
}

/** No form need run longer: one station of each of its versions is then enough, and shorter runs make no more copies. */
export function longestRun({ quantities }: VersionsProblem): number {
  return Math.max(...quantities);
}

function oneForm(problem: VersionsProblem, below: number, meter: WorkMeter): FewestPressings {
  const { stations, quantities } = problem;
  if (quantities.length > stations) return { forms: undefined, lowerBound: below };
  const low = shortestRun(problem, meter);
  if (low >= below) return { forms: undefined, lowerBound: below };
  return { forms: [{ counts: quantities.map((quantity) => Math.ceil(quantity / low)), pressings: low }], lowerBound: low };
}

/** Pressings of one form that carries all versions, of which there are no more than stations; Infinity where none makes few enough. */
export function shortestRun(problem: VersionsProblem, meter: WorkMeter): number {
  const { stations, quantities, most } = problem;
  const needed = (run: number) => quantities.reduce((total, quantity) => total + Math.ceil(quantity / run), 0);
  let [low, high] = [1, longestRun(problem)];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    meter.spend(quantities.length);
    if (needed(middle) <= stations) high = middle;
    else low = middle + 1;
  }
  return most ? firstWithin(low, quantities, most, meter) : low;
}

/**
 * The first run from `run` on at which no version is made too often, each with as few stations as carry it. While a
 * version keeps its stations a longer run only makes more, so the next run worth trying is where it does with one less.
 */
function firstWithin(run: number, quantities: readonly number[], most: readonly number[], meter: WorkMeter): number {
  for (let at = run; ; ) {
    meter.spend(quantities.length);
    const over = quantities.findIndex((quantity, v) => Math.ceil(quantity / at) * at > most[v]!);
    if (over < 0) return at;
    const stations = Math.ceil(quantities[over]! / at);
    if (stations === 1) return Infinity;
    at = Math.ceil(quantities[over]! / (stations - 1));
  }
}

/**
 * Tightens a box by the order of the forms (longest first), by the sum that would be no better than the best, and by the
 * sum that all quantities need; undefined when nothing is left.
 */
function clip(box: RunBox, best: number, floor: number): RunBox | undefined {
  const low = [...box.low];
  const high = [...box.high];
  for (let pass = 0; pass < 2; pass++) {
    for (let f = 1; f < low.length; f++) high[f] = Math.min(high[f]!, high[f - 1]!);
    for (let f = low.length - 1; f > 0; f--) low[f - 1] = Math.max(low[f - 1]!, low[f]!);
    const [least, most] = [sum(low), sum(high)];
    for (let f = 0; f < low.length; f++) {
      high[f] = Math.min(high[f]!, best - 1 - (least - low[f]!));
      low[f] = Math.max(low[f]!, floor - (most - high[f]!));
    }
  }
  return low.some((value, f) => value > high[f]!) || sum(low) >= best ? undefined : { low, high };
}

function halve(box: RunBox): RunBox[] {
  let widest = 0;
  for (let f = 1; f < box.low.length; f++) if (box.high[f]! - box.low[f]! > box.high[widest]! - box.low[widest]!) widest = f;
  const [low, high] = [box.low[widest]!, box.high[widest]!];
  if (low === high) return [];
  const middle = Math.floor((low + high) / 2);
  return [
    { low: box.low, high: box.high.with(widest, middle) },
    { low: box.low.with(widest, middle + 1), high: box.high },
  ];
}

/**
 * Takes a plan whose runs suffice, shortens its runs as far as its stations allow, and keeps it if it is the best. Where it
 * makes too much of a version, other stations are tried at these runs.
 */
function offer(search: Search, offered: readonly (readonly number[])[], runs: readonly number[]): void {
  const { problem, meter } = search;
  const shortened = shortenRuns(offered, runs, problem.quantities);
  const total = sum(shortened);
  if (total >= search.best) return;
  const counts = keepsMost(problem, offered, shortened) ? offered : placeVersions({ ...problem, runs: shortened }, meter);
  if (!counts) return;
  search.best = total;
  search.plan = shortened.map((pressings, f) => ({ counts: counts.map((count) => count[f]!), pressings })).filter((form) => form.pressings > 0);
}

function keepsMost({ most }: VersionsProblem, counts: readonly (readonly number[])[], runs: readonly number[]): boolean {
  return !most || counts.every((ups, v) => ups.reduce((made, count, f) => made + count * runs[f]!, 0) <= most[v]!);
}

/**
 * Shortens runs with the stations fixed: each form in turn is given the best length while the forms after it follow.
 * The sum as a function of one length is nearly convex, so halving towards the smaller side finds a good, not always the
 * best, answer; proofs do not rest on it.
 */
export function shortenRuns(counts: readonly (readonly number[])[], runs: readonly number[], quantities: readonly number[]): number[] {
  if (runs.length > MOST_NESTED) return shortenOneByOne(counts, runs, quantities);
  const least = (fixed: readonly number[]): number[] | undefined => {
    const form = fixed.length;
    const rest = quantities.map((quantity, v) => quantity - fixed.reduce((made, run, f) => made + run * counts[v]![f]!, 0));
    if (form === runs.length) return rest.every((r) => r <= 0) ? [] : undefined;
    const shortest = Math.max(0, ...rest.map((r, v) => (counts[v]!.slice(form + 1).some((count) => count > 0) || r <= 0 ? 0 : counts[v]![form] === 0 ? Infinity : Math.ceil(r / counts[v]![form]!))));
    if (!Number.isFinite(shortest) || shortest > runs[form]!) return undefined;
    if (form === runs.length - 1) return [shortest];
    const follow = (run: number) => {
      const after = least([...fixed, run]);
      return after && [run, ...after];
    };
    let [low, high] = [shortest, runs[form]!];
    let best = follow(high);
    while (low < high) {
      const middle = Math.floor((low + high) / 2);
      const [left, right] = [follow(middle), follow(middle + 1)];
      if (left && (!right || sum(left) <= sum(right))) high = middle;
      else low = middle + 1;
      for (const plan of [left, right]) if (plan && (!best || sum(plan) < sum(best))) best = plan;
    }
    return best;
  };
  return least([]) ?? [...runs];
}

/** Halving within halving for more forms than this takes too long. */
const MOST_NESTED = 3;

/** Each form as short as the others allow, beginning with every form in turn; the best of these. */
function shortenOneByOne(counts: readonly (readonly number[])[], runs: readonly number[], quantities: readonly number[]): number[] {
  const made = quantities.map((_, v) => runs.reduce((copies, run, f) => copies + run * counts[v]![f]!, 0));
  const shortened = runs.map((_, first) => {
    const spare = made.map((copies, v) => copies - quantities[v]!);
    const shorter = [...runs];
    for (let k = 0; k < runs.length; k++) {
      const f = (first + k) % runs.length;
      const off = counts.reduce((least, ups, v) => (ups[f]! > 0 ? Math.min(least, Math.floor(spare[v]! / ups[f]!)) : least), runs[f]!);
      if (off <= 0) continue;
      shorter[f]! -= off;
      counts.forEach((ups, v) => (spare[v]! -= off * ups[f]!));
    }
    return shorter;
  });
  return made.some((copies, v) => copies < quantities[v]!) ? [...runs] : shortened.reduce((best, other) => (sum(other) < sum(best) ? other : best));
}

/** Boxes ordered by the least sum they may hold; among equals the smaller box first, so that plans are met early. */
function createBoxQueue(): { push(box: RunBox): void; pop(): RunBox | undefined } {
  const heap: { box: RunBox; key: number; size: number }[] = [];
  const before = (a: number, b: number) => heap[a]!.key < heap[b]!.key || (heap[a]!.key === heap[b]!.key && heap[a]!.size < heap[b]!.size);
  const swap = (a: number, b: number) => ([heap[a], heap[b]] = [heap[b]!, heap[a]!]);
  return {
    push(box) {
      let at = heap.push({ box, key: sum(box.low), size: sum(box.high) - sum(box.low) }) - 1;
      while (at > 0 && before(at, (at - 1) >> 1)) {
        swap(at, (at - 1) >> 1);
        at = (at - 1) >> 1;
      }
    },
    pop() {
      if (heap.length === 0) return undefined;
      swap(0, heap.length - 1);
      const { box } = heap.pop()!;
      for (let at = 0; ; ) {
        const left = 2 * at + 1;
        if (left >= heap.length) break;
        const child = left + 1 < heap.length && before(left + 1, left) ? left + 1 : left;
        if (!before(child, at)) break;
        swap(child, at);
        at = child;
      }
      return box;
    },
  };
}

function sum(values: readonly number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

