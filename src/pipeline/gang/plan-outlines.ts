import { boundByPrices, mayFit, mostAlone, mostWorth, oneFormBound, type FormRoom } from '../../estimate/gang/form-bound.ts';
import type { Wanted } from '../../estimate/gang/form-runs.ts';
import type { Placement, Problem } from '../../layout/problem.ts';
import type { DriverSettings } from '../../nesting/driver.ts';
import type { Effort } from '../../nesting/effort.ts';
import { areaLimit, areaShares } from '../../nesting/limits/area-limit.ts';
import { grant } from '../../nesting/limits/granted.ts';
import { prepareLinearPrograms } from '../../nesting/linear-program.ts';
import { mostByStraightCuts, worthMostByStraightCuts } from '../../nesting/mixed/straight-layout.ts';
import { solve } from '../../nesting/solve.ts';
import { limitHolds } from '../verify-limit.ts';
import { coverShares } from './cover-shares.ts';
import { better, chooseForms, partitionedForms, weighForms, type ChosenForms } from './choose-forms.ts';
import { improveForms, type FormsBudget, type FormsSearch } from './improve-forms.ts';
import { createPool, type LayoutPool, type MixedLayout } from './layout-pool.ts';
import { createMaster, type Master } from './master.ts';
import { createMaker, seekLayouts } from './seek-layouts.ts';

export interface OutlineSettings extends Pick<DriverSettings, 'effort' | 'seed' | 'runner' | 'stop'> {
  /** Where the sheets are guillotined: whether straight cuts take a layout of rectangles apart. */
  readonly straight?: ((placements: readonly Placement[]) => boolean) | undefined;
}

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
/** Each design by itself need not be searched longer than the mixture. Absent: as the lighter effort found it. */
const EFFORT_ALONE: Readonly<Partial<Record<Effort, Effort>>> = { quick: 'quick', thorough: 'normal' };
/** A deeper effort begins with all that the lighter ones do: with its own finer tables and other starts it may miss what they found. */
const PASSES: Readonly<Record<Effort, readonly Effort[]>> = { quick: ['quick'], normal: ['quick', 'normal'], thorough: ['quick', 'normal', 'thorough'] };

/**
 * Counts and layouts together for designs that may share a form: layouts found one by one at the prices of a master
 * program (Gilmore and Gomory's column generation, the pricing step being the search for layouts), forms chosen among them
 * with whole pressings, then counts sought that would save more. Same problem, effort and seed, same plans; a deeper effort
 * goes on where a lighter one ends, and no plan or bound of it is worse.
 */
export async function planOutlines(problem: Problem, wanted: Wanted, mostForms: number, settings: OutlineSettings): Promise<OutlinePlans> {
  await prepareLinearPrograms();
  const { straight } = settings;
  const master = createMaster(wanted.least);
  try {
    const pool = createPool(problem.parts.length, master);
    const maker = createMaker(problem, pool, straight);
    const found: (ChosenForms | undefined)[] = Array.from({ length: mostForms + 1 }, () => undefined);
    let alone: readonly Alone[] = [];
    let covers: readonly (readonly number[])[] = [];
    let [room, bounds]: [FormRoom, number[]] = [{ shares: areaShares(problem, grant(problem)), alone: [] }, []];
    for (const effort of PASSES[settings.effort]) {
      const depth = EFFORT_ALONE[effort];
      if (depth) alone = straight ? cutAlone(problem) : moreOf(alone, await layAlone(problem, { ...settings, effort: depth }));
      // Straight cuts have exact bounds of their own.
      if (!straight && problem.parts.length > 1) covers = [...covers, ...coverShares(problem, wanted.least, alone.map(({ most }) => most), { ...settings, effort })];
      room = { shares: room.shares, alone: alone.map(({ most }) => most), covers };
      if (depth) {
        for (const { placements, source } of alone) if (straight?.(placements) ?? true) pool.add(placements, source);
        seekLayouts(maker, pool, master, room, wanted, () => settings.stop() !== undefined);
      }
      bounds = boundsFor(room, wanted.least, mostForms, straight && boundByCuts(problem, master, wanted.least));
      await improvePlans({ problem, pool, master, maker, room, wanted, settings }, found, bounds, { ...BUDGETS[effort], ...(straight && { tasks: 0 }) });
    }
    return { plans: found.map((chosen) => chosen && planOf(chosen, pool)), bounds, byArea: wanted.least.reduce((sum, quantity, d) => sum + quantity * room.shares[d]!, 0), alone: alone.map(({ placements }, d) => aloneOf(placements.length, wanted.least[d]!)) };
  } finally {
    master.dispose();
  }
}

/** Goes on from the plans found so far, `found[k]` on at most k forms, and puts better ones in their place. */
async function improvePlans(search: Omit<FormsSearch, 'enough'>, found: (ChosenForms | undefined)[], bounds: readonly number[], budget: FormsBudget): Promise<void> {
  const { pool, master, wanted } = search;
  const mostForms = found.length - 1;
  for (let forms = 1; forms <= mostForms; forms++) {
    const before = found[forms - 1];
    // From the plan with a form less, the best known with so many, and one in which each form has its own designs.
    const apart = partitionedForms(pool, wanted.least, forms);
    const starts = [before, chooseForms(pool, master, wanted, forms, found[forms]?.layouts), apart && weighForms(pool, master, wanted, apart)].filter((start) => start !== undefined);
    // The last and largest number of forms is what is asked for; the others only break ties and weigh costs.
    const rounds = Math.ceil(budget.rounds / (forms === mostForms ? starts.length : 3 * starts.length));
    let best = better(found[forms], before);
    for (const start of starts) best = better(best, await improveForms({ ...search, enough: bounds[forms]! }, forms, { ...budget, rounds }, start));
    // A plan that came to need fewer forms than it was given counts for these too.
    for (let fewer = best?.layouts.length ?? forms; fewer <= forms; fewer++) found[fewer] = better(found[fewer], best);
  }
}

/** The better of each design by itself: more ups laid, fewer possible. */
function moreOf(known: readonly Alone[], found: readonly Alone[]): Alone[] {
  return found.map((one, d) => {
    const before = known[d];
    return before ? { ...(before.placements.length >= one.placements.length ? before : one), most: Math.min(before.most, one.most) } : one;
  });
}

function aloneOf(ups: number, quantity: number) {
  return { ups, pressings: Math.ceil(quantity / ups) };
}

/** A design by itself: its best layout, its part number put in, and the most ups that are possible. */
interface Alone {
  readonly placements: readonly Placement[];
  readonly source: string;
  readonly most: number;
}

async function layAlone(problem: Problem, settings: OutlineSettings): Promise<Alone[]> {
  const found: Alone[] = [];
  for (const [d, part] of problem.parts.entries()) {
    const alone: Problem = { ...problem, parts: [part], demand: { kind: 'most' } };
    const { best, limit } = await solve(alone, { ...settings, verifyLimit: (one) => limitHolds(alone, one) });
    found.push({ placements: best?.placements.map((placement) => ({ ...placement, part: d })) ?? [], source: best?.source ?? '', most: limit?.ups ?? Infinity });
  }
  return found;
}

function cutAlone(problem: Problem): Alone[] {
  return problem.parts.map((part, d) => {
    const alone: Problem = { ...problem, parts: [part] };
    const { placements, exact } = mostByStraightCuts(alone);
    return { placements: placements.map((placement) => ({ ...placement, part: d })), source: 'straight cuts', most: exact ? placements.length : areaLimit(alone, grant(alone)).ups };
  });
}

/** By the prices of the layouts known, and the most worth that straight cuts get out of a sheet at these, which is exact. */
function boundByCuts(problem: Problem, master: Master, quantities: readonly number[]): number {
  const { prices } = master.solve();
  const found = worthMostByStraightCuts(problem, prices);
  if (!found?.exact) return 0;
  const worth = found.placements.reduce((sum, { part }) => sum + prices[part]!, 0) * (1 + ALMOST / 1000);
  return quantities.reduce((sum, quantity, d) => sum + quantity * prices[d]!, 0) / Math.max(worth, Number.MIN_VALUE);
}

function planOf(chosen: ChosenForms, pool: LayoutPool): OutlinePlan {
  const forms = chosen.layouts.map((layout, form) => ({ layout: pool.layouts[layout]!, counts: chosen.counts[form]!, pressings: chosen.runs[form]! }));
  return { forms: forms.toSorted((a, b) => b.pressings - a.pressings), pressings: chosen.pressings };
}

/** Sums of doubles near a whole number are that number. */
const ALMOST = 1e-6;

/** One form: the fewest pressings at which its counts may fit. More: the program over all counts that may fit. */
function boundsFor(room: FormRoom, quantities: readonly number[], mostForms: number, byCuts = 0): number[] {
  const any = Math.max(1, Math.ceil(Math.max(byCuts, anyForms(room, quantities)) - ALMOST));
  return Array.from({ length: mostForms + 1 }, (_, forms) => (forms === 0 ? Infinity : forms === 1 ? Math.max(any, oneFormBound(room, quantities)) : any));
}

const BOUND_ROUNDS = 200;

function anyForms(room: FormRoom, quantities: readonly number[]): number {
  const master = createMaster(quantities);
  room.alone.forEach((_, d) => master.add(room.alone.map((__, other) => (other === d ? mostAlone(room, d) : 0))));
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
