import { wholeRuns, type Wanted, type WholeRuns } from '../../estimate/gang/form-runs.ts';
import type { LayoutPool } from './layout-pool.ts';
import type { Master } from './master.ts';

/** Forms out of the layouts known, with whole pressings. */
export interface ChosenForms extends WholeRuns {
  /** Numbers in the pool. */
  readonly layouts: readonly number[];
  readonly pressings: number;
  /** What a copy of each design is worth in pressings, the layouts being these. */
  readonly prices: readonly number[];
}

/** Layouts looked at when one of the forms is exchanged. */
const MOST_LAYOUTS = 150;
const MOST_ROUNDS = 12;

/**
 * Few pressings on at most so many forms from the layouts known: begins with `start`, or with layouts gathered one by one,
 * and exchanges one form at a time while that helps. Not proved best. Undefined when no choice met makes everything within
 * the limits. `all`: every form is to be pressed, so that the search does not fall back to a plan of fewer.
 */
export function chooseForms(pool: LayoutPool, master: Master, wanted: Wanted, forms: number, start?: readonly number[], all = false): ChosenForms | undefined {
  const candidates = mostPressed(pool, master);
  const known = new Map<string, ChosenForms | undefined>();
  const weigh = (layouts: readonly number[]) => {
    const key = layouts.toSorted((a, b) => a - b).join();
    if (!known.has(key)) known.set(key, weighForms(pool, master, wanted, layouts));
    const plan = known.get(key);
    return all && plan && plan.layouts.length < forms ? undefined : plan;
  };
  let current: readonly number[] = start ?? gathered(candidates, master, forms);
  let best = weigh(current);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let found = best;
    for (let form = 0; form < forms; form++) {
      for (const layout of candidates) if (!current.includes(layout)) found = better(found, weigh(form < current.length ? current.with(form, layout) : [...current, layout]));
    }
    if (found === best) break;
    best = found;
    current = best!.layouts;
  }
  return best;
}

/** Layouts that the program without a limit of forms presses most, then those worth most at its prices. */
function mostPressed(pool: LayoutPool, master: Master): number[] {
  const { runs, prices } = master.solve();
  const worths = pool.layouts.map(({ counts }) => counts.reduce((sum, count, d) => sum + count * prices[d]!, 0));
  return worths.map((_, layout) => layout).sort((a, b) => runs[b]! - runs[a]! || worths[b]! - worths[a]!).slice(0, MOST_LAYOUTS);
}

/**
 * The list, sorted by quantity, cut into so many pieces, each on the known layout that makes it in the fewest pressings:
 * a start in which no form has to carry everything. Undefined when some piece is on no layout.
 */
export function partitionedForms({ layouts }: LayoutPool, quantities: readonly number[], forms: number): number[] | undefined {
  const order = quantities.map((_, d) => d).sort((a, b) => quantities[b]! - quantities[a]!);
  // plans[n]: the best for the first n designs on the forms so far.
  let plans: ({ total: number; taken: number[] } | undefined)[] = [{ total: 0, taken: [] }];
  for (let form = 0; form < forms; form++) {
    const next: typeof plans = [];
    for (let end = form + 1; end <= order.length; end++) {
      for (let from = form; from < end; from++) {
        const before = plans[from];
        if (!before) continue;
        const piece = order.slice(from, end);
        const runs = layouts.map(({ counts }) => Math.max(...piece.map((d) => quantities[d]! / counts[d]!)));
        const layout = runs.indexOf(Math.min(...runs));
        const total = before.total + runs[layout]!;
        if (total < (next[end]?.total ?? Infinity)) next[end] = { total, taken: [...before.taken, layout] };
      }
    }
    plans = next;
  }
  return plans[order.length]?.taken;
}

/** One layout after the other, each the one with which the program presses least. */
function gathered(candidates: readonly number[], master: Master, forms: number): number[] {
  const taken: number[] = [];
  while (taken.length < forms) {
    let [best, least] = [-1, Infinity];
    for (const layout of candidates) {
      const total = taken.includes(layout) ? Infinity : master.solve([...taken, layout]).total;
      if (total < least) [best, least] = [layout, total];
    }
    if (best < 0) break;
    taken.push(best);
  }
  return taken;
}

/** The fewest pressings with exactly these layouts, those not pressed left out. */
export function weighForms(pool: LayoutPool, master: Master, wanted: Wanted, layouts: readonly number[]): ChosenForms | undefined {
  const { runs, prices } = master.solve(layouts);
  const whole = wholeRuns(layouts.map((layout) => pool.layouts[layout]!.counts), runs, wanted);
  if (!whole) return undefined;
  const used = layouts.map((_, form) => form).filter((form) => whole.runs[form]! > 0 && whole.counts[form]!.some((count) => count > 0));
  const kept = <T>(list: readonly T[]) => used.map((form) => list[form]!);
  const pressed = kept(whole.runs);
  return { layouts: kept(layouts), counts: kept(whole.counts), runs: pressed, pressings: pressed.reduce((sum, run) => sum + run, 0), prices };
}

/** Fewer pressings; then fewer forms; then fewer copies. */
export function better<Plan extends ChosenForms | undefined>(a: Plan, b: Plan): Plan {
  if (!a || !b) return a ?? b;
  return (b.pressings - a.pressings || b.layouts.length - a.layouts.length || copies(b) - copies(a)) < 0 ? b : a;
}

function copies({ counts, runs }: WholeRuns): number {
  return counts.reduce((sum, ups, form) => sum + runs[form]! * ups.reduce((all, count) => all + count, 0), 0);
}
