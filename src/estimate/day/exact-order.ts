import { changeTo, lateness, SAME_MINUTES, type OrderProblem, type OrderWorth } from './order.ts';

/** Ways kept at most; each takes some thirty bytes. */
const MOST_WAYS = 3_000_000;

/**
 * The best order by dynamic programming over subsets (Held and Karp, J. SIAM 10, 1962): for every set of forms printed
 * and the last one of them, the ways that no other beats in both lateness and changeover. One way each where nothing
 * need come late. Ways later than `known` are dropped.
 * @returns undefined when there would be too many ways.
 */
export function exactOrder(problem: OrderProblem, known: OrderWorth): number[] | undefined {
  const n = problem.first.length;
  const ways = createWays(2 ** n * n);
  const busy = sumsOfSubsets(problem.busy);
  const offer = (printed: number, from: number | undefined, to: number, parent: number, late: number, changeover: number) => {
    const change = changeover + changeTo(problem, from, to);
    const set = printed | (1 << to);
    const lateNow = late + lateness(problem, to, busy[set]! + change);
    if (lateNow <= known.late + SAME_MINUTES) ways.add(set * n + to, parent, lateNow, change);
  };
  for (let form = 0; form < n; form++) offer(0, undefined, form, -1, 0, 0);
  for (let printed = 1; printed < 2 ** n - 1; printed++) {
    for (let last = 0; last < n; last++) {
      for (let way = ways.first(printed * n + last); way >= 0; way = ways.next(way)) {
        for (let to = 0; to < n; to++) if ((printed & (1 << to)) === 0) offer(printed, last, to, way, ways.late(way), ways.changeover(way));
      }
      if (ways.count > MOST_WAYS) return undefined;
    }
  }
  return bestOf(ways, n);
}

function bestOf(ways: Ways, n: number): number[] {
  const all = 2 ** n - 1;
  let best = -1;
  for (let last = 0; last < n; last++) {
    for (let way = ways.first(all * n + last); way >= 0; way = ways.next(way)) {
      const later = best < 0 ? -1 : ways.late(way) - ways.late(best);
      if (later < -SAME_MINUTES || (later <= SAME_MINUTES && ways.changeover(way) < ways.changeover(best) - SAME_MINUTES)) best = way;
    }
  }
  const order: number[] = [];
  for (let way = best; way >= 0; way = ways.parent(way)) order.push(ways.state(way) % n);
  return order.reverse();
}

function sumsOfSubsets(values: readonly number[]): Float64Array {
  const sums = new Float64Array(2 ** values.length);
  for (let set = 1; set < sums.length; set++) {
    const lowest = 31 - Math.clz32(set & -set);
    sums[set] = sums[set & (set - 1)]! + values[lowest]!;
  }
  return sums;
}

type Ways = ReturnType<typeof createWays>;

/** Lists of ways, one list a state, in flat arrays. A way is beaten only before it is extended, so its place is free again. */
function createWays(states: number) {
  const heads = new Int32Array(states).fill(-1);
  const [late, changeover, parents, nexts, stateOf]: [number[], number[], number[], number[], number[]] = [[], [], [], [], []];
  const spare: number[] = [];
  /** Whether a way as good is there already; beaten ones leave the list. */
  const beaten = (state: number, lateNow: number, change: number): boolean => {
    let before = -1;
    for (let way = heads[state]!; way >= 0; way = nexts[way]!) {
      if (late[way]! <= lateNow + SAME_MINUTES && changeover[way]! <= change + SAME_MINUTES) return true;
      if (late[way]! < lateNow || changeover[way]! < change) {
        before = way;
        continue;
      }
      if (before < 0) heads[state] = nexts[way]!;
      else nexts[before] = nexts[way]!;
      spare.push(way);
    }
    return false;
  };
  return {
    get count() {
      return late.length;
    },
    first: (state: number) => heads[state]!,
    next: (way: number) => nexts[way]!,
    late: (way: number) => late[way]!,
    changeover: (way: number) => changeover[way]!,
    parent: (way: number) => parents[way]!,
    state: (way: number) => stateOf[way]!,
    add(state: number, parent: number, lateNow: number, change: number): void {
      if (beaten(state, lateNow, change)) return;
      const way = spare.pop() ?? late.length;
      late[way] = lateNow;
      changeover[way] = change;
      parents[way] = parent;
      nexts[way] = heads[state]!;
      stateOf[way] = state;
      heads[state] = way;
    },
  };
}
