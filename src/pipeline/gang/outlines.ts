import { inputError } from '../../base/issue.ts';
import { toMicrons } from '../../base/units.ts';
import { layoutOf } from '../../layout/layout-of.ts';
import { placedArea } from '../../layout/outcome.ts';
import type { Placement, Problem } from '../../layout/problem.ts';
import { judgeForProduction, type SoundLayout } from '../../layout/sound.ts';
import type { GangFacts, GangForm } from '../../render/gang-facts.ts';
import type { OutlinesJob } from './outlines-job.ts';
import { cutListInMillimetres, cutListOf, tooNarrow } from '../guillotine.ts';
import { planOutlines, type OutlinePlans, type OutlineSettings } from './plan-outlines.ts';

type Found = NonNullable<OutlinePlans['plans'][number]>;

/** One group of designs that may share forms, its plans by the number of forms it is given. */
interface Group {
  readonly members: readonly number[];
  readonly problem: Problem;
  readonly plans: OutlinePlans;
}

/**
 * The best forms found for several outlines: designs that may share are ganged, the forms allowed are dealt out to the
 * groups. Throws an InputError when no plan keeps the limits of overs within the forms allowed.
 */
export async function gangOutlines(job: OutlinesJob, settings: OutlineSettings): Promise<GangFacts> {
  const groups: Group[] = [];
  for (const members of job.grouped.groups) {
    const problem: Problem = { ...job.sheet.frame, parts: members.map((d) => job.prepared[d]!.part), demand: { kind: 'most' }, locked: [] };
    const wanted = {
      least: members.map((d) => job.quantities[d]! + job.overs[d]!.least),
      most: members.map((d) => job.quantities[d]! + job.overs[d]!.greatest),
    };
    const most = job.forms - job.grouped.groups.length + 1;
    const { guillotine } = job;
    if (guillotine && Math.min(job.sheet.frame.sheet.width, job.sheet.frame.sheet.height) > toMicrons(guillotine.width)) throw tooNarrow(problem, guillotine);
    const straight = guillotine && ((placements: readonly Placement[]) => cutListOf(problem, placements, guillotine) !== undefined);
    groups.push({ members, problem, plans: await planOutlines(problem, wanted, Math.min(most, members.length), { ...settings, straight }) });
  }
  return factsOf(job, groups, settings.seed);
}

function factsOf(job: OutlinesJob, groups: readonly Group[], seed: number): GangFacts {
  const { costs } = job;
  const worth = (forms: number, pressings: number) => (costs ? Math.round((forms * costs.form + pressings * costs.pressing) * 1e6) / 1e6 : pressings);
  const best = leastDeal(groups.map(({ plans }) => plans.plans.map((plan) => plan && { forms: plan.forms.length, pressings: plan.pressings })), job.forms, worth);
  if (!best) throw inputError('gang-limits-not-met', { where: 'overs', facts: { forms: job.forms } });
  const bound = leastDeal(groups.map(({ plans }) => plans.bounds.map((pressings, forms) => (pressings === Infinity ? undefined : { forms, pressings }))), job.forms, worth);
  const forms = groups.flatMap((group, g) => group.plans.plans[best.dealt[g]!]!.forms.map((form) => formOf(job, group, form, seed))).toSorted((a, b) => b.pressings - a.pressings);
  const pressings = forms.reduce((sum, form) => sum + form.pressings, 0);
  const value = worth(forms.length, pressings);
  // Where the inks do not suffice, other designs could have been put together: then only the area is a proof.
  const provedWorth = job.grouped.apart.some(({ because }) => because === 'inks') ? worth(1, Math.ceil(groups.reduce((sum, { plans }) => sum + plans.byArea, 0) - 1e-6)) : bound?.worth ?? 0;
  const lowerBound = Math.min(value, provedWorth);
  const alone = groups.flatMap(({ plans }) => plans.alone).reduce((sum, one) => sum + one.pressings, 0);
  return {
    ids: job.ids,
    quantities: job.quantities,
    stations: undefined,
    forms,
    formsAllowed: job.forms,
    costs,
    currency: job.currency,
    pressings,
    cost: costs && value,
    lowerBound,
    optimal: lowerBound === value,
    overs: job.quantities.map((quantity, d) => forms.reduce((made, { counts, pressings: run }) => made + counts[d]! * run, 0) - quantity),
    separate: { forms: job.ids.length, pressings: alone, cost: costs && worth(job.ids.length, alone) },
    apart: job.grouped.apart,
    notes: [...job.notes, ...job.sheet.notes],
  };
}

interface Dealt {
  /** Forms dealt to each group. */
  readonly dealt: readonly number[];
  readonly forms: number;
  readonly pressings: number;
  readonly worth: number;
}

/** The forms dealt out to the groups at least worth, then fewest forms. `options[group][forms dealt]`. */
function leastDeal(options: readonly (readonly ({ readonly forms: number; readonly pressings: number } | undefined)[])[], forms: number, worth: (forms: number, pressings: number) => number): Dealt | undefined {
  let best: Dealt | undefined;
  const deal = (group: number, left: number, dealt: readonly number[], used: number, pressings: number): void => {
    if (group === options.length) {
      const found = { dealt, forms: used, pressings, worth: worth(used, pressings) };
      if (!best || found.worth < best.worth || (found.worth === best.worth && used < best.forms)) best = found;
      return;
    }
    options[group]!.forEach((option, given) => {
      if (option && given <= left) deal(group + 1, left - given, [...dealt, given], used + option.forms, pressings + option.pressings);
    });
  };
  deal(0, forms, [], 0, 0);
  return best;
}

function formOf(job: OutlinesJob, { members, problem }: Group, { layout, counts, pressings }: Found['forms'][number], seed: number): GangForm {
  const placements = withoutSpare(layout.placements, counts);
  const list = job.guillotine && cutListOf(problem, placements, job.guillotine);
  const cuts = list && cutListInMillimetres(list);
  return {
    counts: job.ids.map((_, d) => (members.includes(d) ? counts[members.indexOf(d)]! : 0)),
    pressings,
    layout: judged(job, members, problem, placements, { source: layout.source, pressings, seed, ...(cuts && { cut: { by: 'guillotine', strokes: cuts.strokes, turns: cuts.turns, steps: cuts.steps } }) }),
    cuts,
  };
}

/** Only as many of each design as are wanted; the last ones of the list are left off. */
function withoutSpare(placements: readonly Placement[], counts: readonly number[]): Placement[] {
  const taken = counts.map(() => 0);
  return placements.filter(({ part }) => taken[part]!++ < counts[part]!);
}

function judged({ prepared }: OutlinesJob, members: readonly number[], problem: Problem, placements: readonly Placement[], result: Readonly<Record<string, unknown>>): SoundLayout {
  const share = placedArea(problem, placements) / (problem.sheet.width * problem.sheet.height);
  const rounded = (value: number) => Math.round(value * 1e6) / 1e6;
  const layout = layoutOf(problem, members.map((d) => prepared[d]!.design), placements, { ups: placements.length, ...result, yield: rounded(share), waste: rounded(1 - share) });
  const laid = new Set(layout.placements.map(({ design }) => design));
  const { sound, judgement } = judgeForProduction({ ...layout, designs: layout.designs.filter(({ id }) => laid.has(id)) });
  if (!sound) throw new Error(`the judge refused the layout: ${JSON.stringify(judgement.faults[0])}`);
  return sound;
}
