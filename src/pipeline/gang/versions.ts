import { planOrder } from '../../estimate/day/plan-day.ts';
import { planVersions, stationsThatChange } from '../../estimate/gang/plan-versions.ts';
import type { FormRun } from '../../estimate/gang/run-lengths.ts';
import type { GangFacts } from '../../render/gang-facts.ts';
import type { VersionsJob } from './versions-job.ts';

/** The best plan for versions on equal stations, its forms in the order in which fewest plates change. */
export function gangVersions({ ids, task, currency, notes }: VersionsJob): GangFacts {
  const { forms, pressings, cost, lowerBound, optimal, overs } = planVersions(task);
  const order = fewestChanges(forms);
  return {
    ids,
    quantities: task.quantities,
    stations: task.stations,
    forms: order.map((form, f) => ({ ...form, changes: f === 0 ? undefined : stationsThatChange(order[f - 1]!, form) })),
    formsAllowed: task.forms,
    costs: task.costs,
    currency,
    pressings,
    cost,
    lowerBound,
    optimal,
    overs,
    oversLimits: task.oversLimits,
    notes,
  };
}

/** Changes count the same both ways, so the longer end comes first. */
function fewestChanges(forms: readonly FormRun[]): FormRun[] {
  const none = forms.map(() => 0);
  const { order } = planOrder({ first: none, between: forms.map((from) => forms.map((to) => stationsThatChange(from, to))), busy: none, due: forms.map(() => undefined) });
  const ordered = order.map((form) => forms[form]!);
  return ordered[0]!.pressings < ordered.at(-1)!.pressings ? ordered.toReversed() : ordered;
}
