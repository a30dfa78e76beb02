import { shortestRun, type FormRun, type VersionsProblem } from './run-lengths.ts';
import { createWorkMeter } from './work-meter.ts';

/**
 * Plans in which every version lies on one form only, versions of like quantity together: the best cut of the list,
 * sorted by quantity, into so many pieces (dynamic programming). Quick for any number of forms, a start for the search
 * and an answer where the search cannot go. `plans[k]` has at most k forms; those too few to hold all, or to keep the most
 * copies, are missing.
 */
export function groupedForms({ stations, quantities, most }: VersionsProblem, forms: number): (readonly FormRun[] | undefined)[] {
  const order = quantities.map((_, v) => v).sort((a, b) => quantities[b]! - quantities[a]!);
  const sorted = order.map((v) => quantities[v]!);
  const mostSorted = most && order.map((v) => most[v]!);
  const meter = createWorkMeter(Infinity);
  const run = sorted.map((_, from) => Array.from({ length: Math.min(stations, sorted.length - from) }, (__, more) => shortestRun({ stations, quantities: sorted.slice(from, from + more + 1), most: mostSorted?.slice(from, from + more + 1) }, meter)));
  // least[n]: fewest pressings of the first n versions on so many forms; cut[n]: where the last form begins.
  let least = sorted.map(() => Infinity).concat(Infinity);
  least[0] = 0;
  const cuts: number[][] = [];
  const plans: (readonly FormRun[] | undefined)[] = [undefined];
  for (let k = 1; k <= forms; k++) {
    const next = [...least];
    const cut = next.map(() => -1);
    for (let end = 1; end <= sorted.length; end++) {
      for (let from = Math.max(0, end - stations); from < end; from++) {
        const total = least[from]! + run[from]![end - from - 1]!;
        if (total < next[end]!) [next[end], cut[end]] = [total, from];
      }
    }
    cuts.push(cut);
    least = next;
    plans.push(least[sorted.length] === Infinity ? undefined : planOf(cuts, order, quantities, run));
  }
  return plans;
}

function planOf(cuts: readonly number[][], order: readonly number[], quantities: readonly number[], run: readonly number[][]): FormRun[] {
  const plan: FormRun[] = [];
  for (let k = cuts.length - 1, end = order.length; end > 0; k--) {
    const from = cuts[k]![end]!;
    if (from < 0) continue; // no better with one form more
    const pressings = run[from]![end - from - 1]!;
    const counts = quantities.map(() => 0);
    for (const v of order.slice(from, end)) counts[v] = Math.ceil(quantities[v]! / pressings);
    plan.push({ counts, pressings });
    end = from;
  }
  return plan;
}
