import { childSeed } from '../../base/random.ts';
import { mayFit, type FormRoom } from '../../estimate/gang/form-bound.ts';
import { wholeRuns, type Wanted } from '../../estimate/gang/form-runs.ts';
import type { Problem } from '../../layout/problem.ts';
import type { DriverSettings } from '../../nesting/driver.ts';
import { layoutIsValid } from '../../nesting/valid.ts';
import { better, chooseForms, type ChosenForms } from './choose-forms.ts';
import type { LayoutPool } from './layout-pool.ts';
import { createMaster, type Master } from './master.ts';
import type { LayoutMaker } from './seek-layouts.ts';

export interface FormsSearch {
  readonly problem: Problem;
  readonly pool: LayoutPool;
  readonly master: Master;
  readonly maker: LayoutMaker;
  readonly room: FormRoom;
  readonly wanted: Wanted;
  /** No fewer pressings are possible with so many forms. */
  readonly enough: number;
  readonly settings: Pick<DriverSettings, 'seed' | 'runner' | 'stop'>;
}

/** What is spent: rounds of the free search, tasks in a round (0: no free search), look-ups of a task. */
export interface FormsBudget {
  readonly rounds: number;
  readonly tasks: number;
  readonly work: number;
}

/** Counts that would save pressings if they fitted, and the layout of the pool they are nearest to. */
interface Wish {
  readonly base: number;
  readonly counts: readonly number[];
  readonly pressings: number;
  readonly share: number;
}

/** How often the free search may fail at the same counts. */
const MOST_FAILURES = 2;
/** Of the cuts between blocks, when the prices of the forms in hand are asked for better ones. */
const DEPTHS = [2, 3];
/** Steps by which a form's run is shortened to see what it would have to hold. */
const SHORTER = [0.998, 0.99, 0.97, 0.94, 0.9];

/**
 * Asks for the counts that would save pressings, one blank more or other blanks on one form, and looks whether they fit:
 * as bands first, then by the free search from the layout that is there. Goes on from what was found.
 */
export async function improveForms(search: FormsSearch, forms: number, budget: FormsBudget, start: ChosenForms): Promise<ChosenForms> {
  const { problem, pool, master, maker, room, wanted, settings } = search;
  const failures = new Map<string, number>();
  const banded = new Set<string>();
  let best = start;
  const all = start.layouts.length === forms;
  const again = () => (best = better(best, chooseForms(pool, master, wanted, forms, best.layouts, all))!);
  for (let round = 0; round < budget.rounds && best.pressings > search.enough && !settings.stop(); ) {
    if (DEPTHS.filter((depth) => maker.byWorth(best.prices, depth)).length > 0) {
      const before = best;
      if (again() !== before) continue;
    }
    const wishes = wishesFor(search, best).filter(({ counts }) => (failures.get(counts.join()) ?? 0) < MOST_FAILURES);
    if (wishes.length === 0) break;
    const fresh = wishes.filter(({ counts }) => !banded.has(counts.join()));
    for (const { counts } of fresh) banded.add(counts.join());
    if (fresh.filter(({ counts }) => mayFit(room, counts) && maker.byBands(counts)).length > 0) {
      again();
      continue;
    }
    if (budget.tasks === 0) break;
    const chosen = wishes.slice(0, budget.tasks);
    const tasks = chosen.map(({ base, counts }, i) => ({ kind: 'counts' as const, problem, seed: childSeed(childSeed(settings.seed, round), i), work: budget.work, base: pool.layouts[base]!.placements, counts }));
    const results = await settings.runner.run(tasks, () => settings.stop() !== undefined);
    results.forEach(({ found }, i) => {
      const key = chosen[i]!.counts.join();
      if (!found || !layoutIsValid(problem, found.placements) || !pool.add(found.placements, found.source)) failures.set(key, (failures.get(key) ?? 0) + 1);
    });
    round++;
    again();
  }
  return best;
}

/** What would save pressings, that which leaves most room first. */
function wishesFor({ pool, room, wanted }: FormsSearch, best: ChosenForms): Wish[] {
  const wishes = new Map<string, Wish>();
  const weigh = (form: number, counts: readonly number[]) => {
    const key = counts.join();
    if (wishes.has(key) || counts.some((count) => count < 0) || !mayFit(room, counts) || pool.holding(counts) !== undefined) return;
    // A layout that is worth no more than a pressing saves none.
    if (counts.reduce((sum, count, d) => sum + count * best.prices[d]!, 0) <= 1) return;
    const pressings = pressingsWith(best.layouts.map((layout, other) => (other === form ? counts : pool.layouts[layout]!.counts)), wanted);
    if (pressings < best.pressings) wishes.set(key, { base: best.layouts[form]!, counts, pressings, share: counts.reduce((sum, count, d) => sum + count * room.shares[d]!, 0) });
  };
  best.layouts.forEach((layout, form) => {
    for (const counts of [pool.layouts[layout]!.counts, best.counts[form]!]) for (const changed of neighbours(counts)) weigh(form, changed);
    for (const ratio of SHORTER) weigh(form, countsFor(best, wanted, form, ratio));
  });
  return [...wishes.values()].toSorted((a, b) => a.share - b.share || a.pressings - b.pressings);
}

function pressingsWith(offered: readonly (readonly number[])[], wanted: Wanted): number {
  const master = createMaster(wanted.least);
  for (const counts of offered) master.add(counts);
  const whole = wholeRuns(offered, master.solve().runs, wanted);
  master.dispose();
  return whole ? whole.runs.reduce((sum, run) => sum + run, 0) : Infinity;
}

/** One blank more; one more and one of another design less; two more for one less. */
function* neighbours(counts: readonly number[]): Generator<number[]> {
  for (let more = 0; more < counts.length; more++) {
    const grown = counts.with(more, counts[more]! + 1);
    yield grown;
    for (let less = 0; less < counts.length; less++) {
      if (less === more) continue;
      yield grown.with(less, grown[less]! - 1);
      yield grown.with(more, grown[more]! + 1).with(less, grown[less]! - 1);
    }
  }
}

/** What the form must hold when it is pressed less often and the others as they are. */
function countsFor({ counts, runs }: ChosenForms, { least }: Wanted, form: number, ratio: number): number[] {
  const run = Math.max(1, Math.floor(runs[form]! * ratio));
  return least.map((quantity, d) => Math.max(0, Math.ceil((quantity - counts.reduce((made, ups, other) => made + (other === form ? 0 : ups[d]! * runs[other]!), 0)) / run)));
}
