import { boundByPrices, mayFit, mostWorth, oneFormBound, type FormRoom } from '../../estimate/gang/form-bound.ts';
import type { Wanted } from '../../estimate/gang/form-runs.ts';
import type { Part, Problem } from '../../layout/problem.ts';
import type { DriverSettings } from '../../nesting/driver.ts';
import type { Effort } from '../../nesting/effort.ts';
import { areaShares } from '../../nesting/limits/area-limit.ts';
import { grant } from '../../nesting/limits/granted.ts';
import { prepareLinearPrograms } from '../../nesting/linear-program.ts';
import { solve, type Solution } from '../../nesting/solve.ts';
import { limitHolds } from '../verify-limit.ts';
import { better, chooseForms, type ChosenForms } from './choose-forms.ts';
import { improveForms, type FormsBudget } from './improve-forms.ts';
import { createPool, type LayoutPool, type MixedLayout } from './layout-pool.ts';
import { createMaster } from './master.ts';
import { createMaker, seekLayouts } from './seek-layouts.ts';

export type OutlineSettings = Pick<DriverSettings, 'effort' | 'seed' | 'runner' | 'stop'>;

/** Forms of one number of forms allowed. */
export interface OutlinePlan {
  readonly forms: readonly { readonly layout: MixedLayout; readonly counts: readonly number[]; readonly pressings: number }[];
  readonly pressings: number;
}

export interface OutlinePlans {
  /** `plans[k]`: at most k forms; undefined where none was found. `plans[0]` is undefined. */
  readonly plans: readonly (OutlinePlan | undefined)[];
  /** `bounds[k]`: with at most k forms nothing takes fewer pressings. Infinity where it is proved impossible. */
  readonly bounds: readonly number[];
  /** No plan, whatever shares a form, takes fewer pressings for these designs: by area alone. */
  readonly byArea: number;
  /** Each design by itself, on its best layout. */
  readonly alone: readonly { readonly ups: number; readonly pressings: number }[];
}

const BUDGETS: Readonly<Record<Effort, FormsBudget>> = {
  quick: { rounds: 3, tasks: 4, work: 1e6 },
  normal: { rounds: 24, tasks: 4, work: 6e6 },
  thorough: { rounds: 250, tasks: 4, work: 1e7 },
};
/** Each design by itself need not be searched longer than the mixture. */
const EFFORT_ALONE: Readonly<Record<Effort, Effort>> = { quick: 'quick', normal: 'quick', thorough: 'normal' };

/**
 * Counts and layouts together for designs that may share a form: layouts found one by one at the prices of a master
 * program (Gilmore and Gomory's column generation, the pricing step being the search for layouts), forms chosen among them
 * with whole pressings, then counts sought that would save more. Same problem, effort and seed, same plans.
 */
export async function planOutlines(problem: Problem, wanted: Wanted, mostForms: number, settings: OutlineSettings): Promise<OutlinePlans> {
  await prepareLinearPrograms();
  const designs = problem.parts.length;
  const solutions = await layAlone(problem, settings);
  const room: FormRoom = { shares: areaShares(problem, grant(problem)), alone: solutions.map(({ limit }) => limit?.ups ?? Infinity) };
  const master = createMaster(wanted.least);
  try {
    const pool = createPool(designs, master);
    solutions.forEach(({ best }, d) => best && pool.add(best.placements.map((placement) => ({ ...placement, part: d })), best.source));
    const maker = createMaker(problem, pool);
    const stopped = () => settings.stop() !== undefined;
    seekLayouts(maker, pool, master, room, wanted, stopped);
    const found: (ChosenForms | undefined)[] = [undefined];
    for (let forms = 1; forms <= mostForms; forms++) {
      const before = found[forms - 1];
      const chosen = better(chooseForms(pool, master, wanted, forms, before?.layouts), before);
      // The last and largest number of forms is what is asked for; the others only break ties and weigh costs.
      const budget = BUDGETS[settings.effort];
      const part = forms === mostForms ? budget : { ...budget, rounds: Math.ceil(budget.rounds / 3) };
      found.push(chosen && (await improveForms({ problem, pool, master, maker, room, wanted, settings }, forms, part, chosen)));
    }
    return { plans: found.map((chosen) => chosen && planOf(chosen, pool)), bounds: boundsFor(room, wanted.least, mostForms), byArea: wanted.least.reduce((sum, quantity, d) => sum + quantity * room.shares[d]!, 0), alone: solutions.map(({ best }, d) => aloneOf(best?.placements.length ?? 0, wanted.least[d]!)) };
  } finally {
    master.dispose();
  }
}

function aloneOf(ups: number, quantity: number) {
  return { ups, pressings: Math.ceil(quantity / ups) };
}

async function layAlone(problem: Problem, settings: OutlineSettings): Promise<Solution[]> {
  const solutions: Solution[] = [];
  for (const part of problem.parts) {
    const alone: Problem = { ...problem, parts: [part] as readonly Part[], demand: { kind: 'most' } };
    solutions.push(await solve(alone, { ...settings, effort: EFFORT_ALONE[settings.effort], verifyLimit: (limit) => limitHolds(alone, limit) }));
  }
  return solutions;
}

function planOf(chosen: ChosenForms, pool: LayoutPool): OutlinePlan {
  const forms = chosen.layouts.map((layout, form) => ({ layout: pool.layouts[layout]!, counts: chosen.counts[form]!, pressings: chosen.runs[form]! }));
  return { forms: forms.toSorted((a, b) => b.pressings - a.pressings), pressings: chosen.pressings };
}

/** Sums of doubles near a whole number are that number. */
const ALMOST = 1e-6;

/** One form: the fewest pressings at which its counts may fit. More: the program over all counts that may fit. */
function boundsFor(room: FormRoom, quantities: readonly number[], mostForms: number): number[] {
  const any = Math.max(1, Math.ceil(anyForms(room, quantities) - ALMOST));
  return Array.from({ length: mostForms + 1 }, (_, forms) => (forms === 0 ? Infinity : forms === 1 ? Math.max(any, oneFormBound(room, quantities)) : any));
}

const BOUND_ROUNDS = 200;

function anyForms(room: FormRoom, quantities: readonly number[]): number {
  const master = createMaster(quantities);
  room.alone.forEach((ups, d) => master.add(room.alone.map((_, other) => (other === d ? Math.min(ups, Math.floor(1 / room.shares[d]!)) : 0))));
  // Every design by itself, and all by their areas: two sets of prices that need no program.
  let best = Math.max(boundByPrices(room, quantities, room.shares), ...quantities.map((quantity, d) => quantity / room.alone[d]!));
  for (let round = 0; round < BOUND_ROUNDS; round++) {
    const { prices } = master.solve();
    best = Math.max(best, boundByPrices(room, quantities, prices));
    const { worth, counts } = mostWorth(room, prices);
    if (worth <= 1 + ALMOST || !mayFit(room, counts)) break;
    master.add(counts);
  }
  master.dispose();
  return best;
}
