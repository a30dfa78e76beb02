import { planVersions, stationsThatChange } from '../../estimate/gang/plan-versions.ts';
import type { GangFacts } from '../../render/gang-facts.ts';
import type { VersionsJob } from './versions-job.ts';

/** The best plan for versions on equal stations. */
export function gangVersions({ ids, task }: VersionsJob): GangFacts {
  const { forms, pressings, cost, lowerBound, optimal, overs } = planVersions(task);
  return {
    ids,
    quantities: task.quantities,
    stations: task.stations,
    forms: forms.map((form, f) => ({ ...form, changes: f === 0 ? undefined : stationsThatChange(forms[f - 1]!, form) })),
    formsAllowed: task.forms,
    costs: task.costs,
    pressings,
    cost,
    lowerBound,
    optimal,
    overs,
  };
}
