import { createRandom } from '../../base/random.ts';
import { changeTo, compareWorth, worthOf, type OrderProblem, type OrderWorth } from './order.ts';

/** Orders weighed, each at the cost of its length; some seconds at most. */
const MOST_STEPS = 6e7;
/** Fresh beginnings without gain after which the search ends. */
const PATIENCE = 40;
/** Forms moved together. */
const LONGEST_MOVE = 4;

interface Ranked {
  readonly order: readonly number[];
  readonly worth: OrderWorth;
}

/**
 * A good order by insertion, then by moving up to four neighbours elsewhere, either way round (or-opt: Or, Traveling
 * Salesman-Type Combinatorial Problems, thesis, Northwestern 1976), begun anew from the best with three pieces swapped
 * about. Never worse than the order given. The same problem gives the same order.
 */
export function nearOrder(problem: OrderProblem): Ranked {
  const n = problem.first.length;
  const random = createRandom(n);
  let steps = 0;
  const ranked = (order: readonly number[]): Ranked => {
    steps += n;
    return { order, worth: worthOf(problem, order) };
  };
  const better = (a: Ranked, b: Ranked) => (compareWorth(a.worth, b.worth) < 0 ? a : b);
  const improved = (start: Ranked): Ranked => {
    for (let best = start; ; ) {
      let found = best;
      for (const order of neighbours(best.order)) {
        found = better(ranked(order), found);
        if (steps >= MOST_STEPS) return found;
      }
      if (found === best) return best;
      best = found;
    }
  };
  const given = ranked(problem.first.map((_, form) => form));
  const byDue = ranked(given.order.toSorted((a, b) => (problem.due[a] ?? Infinity) - (problem.due[b] ?? Infinity) || a - b));
  let best = [given, byDue, ranked(inserted(problem))].map(improved).reduce(better);
  for (let idle = 0; n > 3 && idle < PATIENCE && steps < MOST_STEPS; idle++) {
    const found = improved(ranked(shuffled(best.order, () => random.below(n + 1))));
    if (compareWorth(found.worth, best.worth) < 0) [best, idle] = [found, 0];
  }
  return best;
}

/** Every form in turn goes where it costs least. */
function inserted(problem: OrderProblem): number[] {
  const order: number[] = [];
  for (let form = 0; form < problem.first.length; form++) {
    let [at, least] = [0, Infinity];
    for (let i = 0; i <= order.length; i++) {
      const after = order[i];
      const more = changeTo(problem, order[i - 1], form) + (after === undefined ? 0 : changeTo(problem, form, after) - changeTo(problem, order[i - 1], after));
      if (more < least) [at, least] = [i, more];
    }
    order.splice(at, 0, form);
  }
  return order;
}

function* neighbours(order: readonly number[]): Generator<number[]> {
  const n = order.length;
  for (let length = 1; length <= Math.min(LONGEST_MOVE, n - 1); length++) {
    for (let from = 0; from + length <= n; from++) {
      const moved = order.slice(from, from + length);
      const rest = order.toSpliced(from, length);
      for (let to = 0; to <= rest.length; to++) {
        if (to !== from) yield rest.toSpliced(to, 0, ...moved);
        if (length > 1) yield rest.toSpliced(to, 0, ...moved.toReversed());
      }
    }
  }
}

/** Two neighbouring pieces change places. */
function shuffled(order: readonly number[], cut: () => number): number[] {
  const [a, b, c] = [cut(), cut(), cut()].sort((x, y) => x - y) as [number, number, number];
  return [...order.slice(0, a), ...order.slice(b, c), ...order.slice(a, b), ...order.slice(c)];
}
