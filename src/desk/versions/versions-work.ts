import type { Desk } from '../desk.ts';
import { EngineLost } from '../engine/client.ts';
import { InputError, type Issue } from '../../base/issue.ts';
import { planFrom, versionsJobOf, type VersionPlan, type Versions } from '../job/versions.ts';

/** A step of the person; `kind` joins quick changes of one kind. */
export function changeVersions(desk: Desk, edit: (versions: Versions) => Versions, kind = ''): void {
  desk.change((job) => {
    const versions = edit(job.versions);
    return versions === job.versions ? job : { ...job, versions };
  }, kind);
}

/** Has the stations shared out anew. Undefined when all went well or it was called off; else why it cannot be done. */
export async function shareOutStations(desk: Desk, stations: number): Promise<readonly Issue[] | undefined> {
  const job = versionsJobOf(desk.job.value.versions, stations);
  if ('faults' in job) return undefined;
  try {
    const { forms, lowerBound } = await desk.planner.ask('versions', job.ask);
    changeVersions(desk, (versions) => ({ ...versions, plan: { forms: planFrom(forms, versions), asked: JSON.stringify(job.ask), lowerBound } }));
    return undefined;
  } catch (error) {
    if (error instanceof InputError) return error.issues;
    // Called off, or the thread broke down; either way what was there stays.
    if (error instanceof EngineLost) return undefined;
    throw error;
  }
}

/** Gives one station of a form a version, or none with ''. */
export function giveStation(desk: Desk, stations: number, form: number, station: number, version: string): void {
  changePlan(desk, (plan) => {
    const printed = Array.from({ length: stations }, (_, i) => plan.forms[form]?.[i] ?? '');
    return printed[station] === version ? plan : { ...plan, forms: plan.forms.with(form, printed.with(station, version)) };
  });
}

/** Begins without a search: one form that prints nothing yet. */
export function beginByHand(desk: Desk, stations: number): void {
  changeVersions(desk, (versions) => ({ ...versions, plan: { forms: [new Array<string>(stations).fill('')], asked: '', lowerBound: 0 } }));
}

export function copyForm(desk: Desk, form: number): void {
  changePlan(desk, (plan) => ({ ...plan, forms: plan.forms.toSpliced(form + 1, 0, plan.forms[form]!) }));
}

/** The last form takes the whole plan with it. */
export function removeForm(desk: Desk, form: number): void {
  changePlan(desk, (plan) => (plan.forms.length > 1 ? { ...plan, forms: plan.forms.toSpliced(form, 1) } : undefined));
}

function changePlan(desk: Desk, edit: (plan: VersionPlan) => VersionPlan | undefined): void {
  changeVersions(desk, (versions) => {
    const plan = versions.plan && edit(versions.plan);
    return plan === versions.plan ? versions : { ...versions, plan };
  });
}
