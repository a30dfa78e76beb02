import { inputError } from '../../base/issue.ts';
import { copiesOf, fewestOvers } from './fewest-overs.ts';
import { groupedForms } from './grouped-forms.ts';
import { fewestPressings, longestRun, pressingsByQuantity, type FormRun, type VersionsProblem } from './run-lengths.ts';
import { placeVersions } from './stations.ts';
import { createWorkMeter, type WorkMeter } from './work-meter.ts';

/** Versions of one outline on the equal stations of a few forms. */
export interface VersionsTask {
  readonly stations: number;
  /** Copies ordered of each version. */
  readonly quantities: readonly number[];
  /** Copies beyond the quantity that each must and may be made; absent: from 0 on, as many as come. */
  readonly oversLimits?: readonly { readonly least: number; readonly greatest: number }[] | undefined;
  /** Most forms allowed; `stations × forms` holds all versions. */
  readonly forms: number;
  /** Money of a form and of a pressing; without them the fewest pressings are wanted. */
  readonly costs?: { readonly form: number; readonly pressing: number } | undefined;
}

export interface VersionsPlan {
  /** Longest run first. */
  readonly forms: readonly FormRun[];
  readonly pressings: number;
  readonly cost: number | undefined;
  /** In pressings, or in money where costs were given; for all plans of the forms allowed. */
  readonly lowerBound: number;
  readonly optimal: boolean;
  /** Copies of each version beyond its quantity. */
  readonly overs: readonly number[];
}

/** Steps of the search over run lengths, some twenty seconds at most; and of thinning out overs. */
const WORK_FOR_RUNS = 3e9;
const WORK_FOR_OVERS = 1e8;
/** Stations used of all forms but one are the states of a search; more forms than this allows are not searched. */
const MOST_STATES = 1e5;

/**
 * The best plan: least cost or fewest pressings; among equals fewer forms, then fewer overs. Each number of forms is
 * searched for something better than the fewer forms gave, so a tie never adds a form. Throws an InputError where no plan
 * keeps the limits of overs, or none was found.
 */
export function planVersions(task: VersionsTask): VersionsPlan {
  const { stations, quantities, costs } = task;
  const problem = problemOf(task);
  const worth = (forms: number, pressings: number) => (costs ? cents(forms * costs.form + pressings * costs.pressing) : pressings);
  const floor = pressingsByQuantity(problem);
  const fewest = Math.ceil(quantities.length / stations);
  const meter = createWorkMeter(WORK_FOR_RUNS);
  const groups = groupedForms(problem, task.forms);
  // No plan need be longer: every form at its longest.
  let below = task.forms * longestRun(problem) + 1;
  let isSearched = true;
  let best: readonly FormRun[] | undefined;
  let value = Infinity;
  let bound = Infinity;
  for (let forms = fewest; forms <= task.forms; forms++) {
    if (below <= floor || (costs && worth(forms, floor) >= value)) break;
    const grouped = groups[forms];
    const start = grouped ? totalOf(grouped) : Infinity;
    if (start < below && worth(forms, start) < value) [best, value] = [grouped, worth(forms, start)];
    below = Math.min(below, start);
    if ((stations + 1) ** (forms - 1) > MOST_STATES) {
      isSearched = false;
      bound = Math.min(bound, worth(costs ? forms : fewest, floor));
      break;
    }
    const found = fewestPressings(problem, forms, below, meter);
    bound = costs ? Math.min(bound, worth(forms, found.lowerBound)) : found.lowerBound;
    if (!found.forms) continue;
    below = totalOf(found.forms);
    const reached = worth(found.forms.length, below);
    if (reached < value) [best, value] = [found.forms, reached];
  }
  if (!best) throw inputError(isSearched && !meter.exhausted ? 'gang-overs-impossible' : 'gang-overs-not-found', { facts: { forms: task.forms } });
  const forms = thinOut(problem, best);
  const pressings = totalOf(forms);
  const lowerBound = Math.min(bound, value);
  return {
    forms,
    pressings,
    cost: costs && worth(forms.length, pressings),
    lowerBound,
    optimal: lowerBound === value,
    overs: quantities.map((quantity, v) => forms.reduce((made, { counts, pressings: run }) => made + counts[v]! * run, 0) - quantity),
  };
}

/** What is made must lie from the quantity with its least overs to the quantity with its greatest. */
function problemOf({ stations, quantities, oversLimits }: VersionsTask): VersionsProblem {
  const bounded = oversLimits?.some(({ greatest }) => greatest < Infinity);
  return {
    stations,
    quantities: quantities.map((quantity, v) => quantity + (oversLimits?.[v]?.least ?? 0)),
    ...(bounded && { most: quantities.map((quantity, v) => quantity + (oversLimits?.[v]?.greatest ?? Infinity)) }),
  };
}

function totalOf(forms: readonly FormRun[]): number {
  return forms.reduce((sum, form) => sum + form.pressings, 0);
}

/** Takes the float's dust off money. */
function cents(amount: number): number {
  return Math.round(amount * 1e6) / 1e6;
}

/**
 * Fewer overs at the same number of pressings: needless stations stay empty, and other run lengths of the same sum are
 * tried, nearest first, while the work lasts.
 */
function thinOut(problem: VersionsProblem, forms: readonly FormRun[]): FormRun[] {
  const { quantities } = problem;
  const meter = createWorkMeter(WORK_FOR_OVERS);
  const runs = forms.map(({ pressings }) => pressings);
  let best = leanest(problem, runs, quantities.map((_, v) => forms.map(({ counts }) => counts[v]!)), meter);
  const needed = quantities.reduce((sum, quantity) => sum + quantity, 0);
  for (const other of otherRuns(runs)) {
    if (best.copies <= needed || meter.spent > meter.limit / 2) break;
    const counts = placeVersions({ ...problem, runs: other }, meter);
    if (!counts) continue;
    const plan = leanest(problem, other, counts, meter);
    if (plan.copies < best.copies) best = plan;
  }
  return best.runs.map((pressings, f) => ({ counts: best.counts.map((count) => count[f]!), pressings })).toSorted((a, b) => b.pressings - a.pressings);
}

function leanest(problem: VersionsProblem, runs: readonly number[], counts: readonly (readonly number[])[], meter: WorkMeter): { runs: readonly number[]; counts: number[][]; copies: number } {
  const lean = fewestOvers({ ...problem, runs }, counts, meter).counts;
  return { runs, counts: lean, copies: lean.reduce((sum, count) => sum + copiesOf(count, runs), 0) };
}

/** Run lengths of the same sum: one pressing more moved from one form to another, then two, and so on. */
function* otherRuns(runs: readonly number[]): Generator<number[]> {
  const longest = Math.max(...runs);
  for (let by = 1; by < longest; by++) {
    for (let from = 0; from < runs.length; from++) {
      for (let to = 0; to < runs.length; to++) {
        if (to !== from && runs[from]! > by) yield runs.map((run, f) => run + (f === to ? by : 0) - (f === from ? by : 0));
      }
    }
  }
}

/** Stations whose version changes from one form to the next, each version keeping the stations it has on both. */
export function stationsThatChange(from: FormRun, to: FormRun): number {
  const kept = from.counts.reduce((sum, count, v) => sum + Math.min(count, to.counts[v]!), 0);
  return Math.max(...[from, to].map(({ counts }) => counts.reduce((sum, count) => sum + count, 0))) - kept;
}
