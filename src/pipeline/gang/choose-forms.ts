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

/** Layouts looked at when one of the forms is exchanged: those that the master program would press most, then the rest. */
const MOST_LAYOUTS = 150;
const MOST_ROUNDS = 12;

/**
 * The fewest pressings on at most so many forms from the layouts known: begins with what the program without a limit
 * presses most by itself or with others (or with `start`), then exchanges one form at a time while that helps. Not proved best. Undefined when no
 * choice found makes everything within the limits.
 */
export function chooseForms(pool: LayoutPool, master: Master, wanted: Wanted, forms: number, start: readonly number[] = []): ChosenForms | undefined {
  const free = master.solve();
  const order = pool.layouts.map((_, layout) => layout).sort((a, b) => free.runs[b]! - free.runs[a]! || worthOf(b) - worthOf(a));
  function worthOf(layout: number): number {
    return pool.layouts[layout]!.counts.reduce((sum, count, d) => sum + count * free.prices[d]!, 0);
  }
  const candidates = order.slice(0, MOST_LAYOUTS);
  const known = new Map<string, ChosenForms | undefined>();
  const weigh = (layouts: readonly number[]) => {
    const key = layouts.toSorted((a, b) => a - b).join();
    if (!known.has(key)) known.set(key, weighForms(pool, master, wanted, layouts));
    return known.get(key);
  };
  let current: readonly number[] = gathered(candidates, master, forms);
  let best = better(weigh(current), start.length > 0 ? weigh(start) : undefined);
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
