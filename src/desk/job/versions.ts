import type { VersionsAsk, VersionsOnForms } from '../engine/protocol.ts';
import { numberOf, wholeOf } from './number-of.ts';
import { NO_OVERS, oversOfEach, type OversFields } from './overs.ts';

/** Versions of the blank, printed together: each station of each form prints one of them. Fields stay as typed. */
export interface Versions {
  readonly list: readonly VersionFields[];
  /** Most forms allowed. */
  readonly forms: string;
  readonly formCost: string;
  readonly pressingCost: string;
  /** Limits for every version that has none of its own; absent in jobs kept before there were any. */
  readonly overs?: OversFields;
  readonly plan: VersionPlan | undefined;
}

export interface VersionFields {
  /** Stays with the version through all changes. */
  readonly id: string;
  readonly name: string;
  readonly quantity: string;
  /** Limits of its own; where one is empty, that for every version holds. */
  readonly overs?: OversFields;
}

/** Stations shared out over the versions, by the engine or by hand. Pressings and overs follow from it. */
export interface VersionPlan {
  /** `[form][station]`: id of the version, or '' for a station that prints nothing. */
  readonly forms: readonly (readonly string[])[];
  /** What `lowerBound` holds for, as one text; '' while nothing is proved. */
  readonly asked: string;
  /** Pressings, or money where costs were given. */
  readonly lowerBound: number;
}

export const NO_VERSIONS: Versions = { list: [], forms: '1', formCost: '', pressingCost: '', plan: undefined };

/** More rows than this are no list to type. */
export const MOST_VERSIONS = 100;

/** A field of the versions whose text cannot be used; `row` counts from 0. */
export type VersionFault = { readonly field: 'name' | 'quantity' | 'ownOvers'; readonly row: number } | { readonly field: 'forms' | 'formCost' | 'pressingCost' | 'overs' };

export type VersionsJob = { readonly ask: VersionsAsk } | { readonly faults: readonly VersionFault[] };

/** What is typed as the engine reads it, or which fields cannot be used. */
export function versionsJobOf({ list, forms, formCost, pressingCost, overs = NO_OVERS }: Versions, stations: number): VersionsJob {
  const faults: VersionFault[] = [];
  const names = list.map(({ name }, row) => nameOf(name, row));
  const versions = list.map(({ quantity }, row) => {
    if (names.indexOf(names[row]!) < row) faults.push({ field: 'name', row });
    const value = wholeOf(quantity);
    if (typeof value !== 'number' || value < 1) faults.push({ field: 'quantity', row });
    return { id: names[row]!, quantity: Number(value) };
  });
  const most = wholeOf(forms);
  if (typeof most !== 'number' || most < 1) faults.push({ field: 'forms' });
  const [form, pressing] = [numberOf(formCost), numberOf(pressingCost)];
  if (form === 'fault') faults.push({ field: 'formCost' });
  if (pressing === 'fault') faults.push({ field: 'pressingCost' });
  const { limits, isFaulty, rows } = oversOfEach(overs, list.map((version) => version.overs), versions.map(({ quantity }) => quantity));
  if (isFaulty) faults.push({ field: 'overs' });
  for (const row of rows) faults.push({ field: 'ownOvers', row });
  if (faults.length > 0 || form === 'fault' || pressing === 'fault') return { faults };
  const costs = form === undefined && pressing === undefined ? undefined : { form: form ?? 0, pressing: pressing ?? 0 };
  return { ask: { stations, versions: limits ? versions.map((version, row) => ({ ...version, overs: limits[row]! })) : versions, forms: Number(most), ...(costs && { costs }) } };
}

/** A version without a name goes by its letter. */
export function nameOf(name: string, row: number): string {
  return name.trim() || letterOf(row);
}

/** A, B, … Z, AA, AB, …: how a version is marked on the sheet. */
export function letterOf(row: number): string {
  const last = String.fromCharCode(65 + (row % 26));
  return row < 26 ? last : letterOf(Math.floor(row / 26) - 1) + last;
}

/** The plan on so many stations, as row numbers; stations without a version, or with one that is gone, print nothing. */
export function printedRows({ list, plan }: Versions, stations: number): (number | undefined)[][] {
  const rows = new Map(list.map(({ id }, row) => [id, row]));
  return (plan?.forms ?? []).map((form) => Array.from({ length: stations }, (_, station) => rows.get(form[station] ?? '')));
}

/** Whether some version stands on no station of the forms. */
export function leavesOut({ list }: Versions, forms: readonly (readonly (number | undefined)[])[]): boolean {
  return list.some((_, row) => !forms.some((form) => form.includes(row)));
}

/** What is handed over of the versions; undefined where there is no plan, or where it leaves a version out. */
export function versionsOnForms(versions: Versions, stations: number, empty: string, currency: string): VersionsOnForms | undefined {
  const job = versionsJobOf(versions, stations);
  const forms = printedRows(versions, stations);
  if (!('ask' in job) || forms.length === 0 || leavesOut(versions, forms)) return undefined;
  const { plan } = versions;
  return { ask: job.ask, letters: versions.list.map((_, row) => letterOf(row)), forms, lowerBound: plan?.asked === JSON.stringify(job.ask) ? plan.lowerBound : undefined, empty, currency };
}

/** The other way round. */
export function planFrom(forms: readonly (readonly (number | undefined)[])[], { list }: Versions): VersionPlan['forms'] {
  return forms.map((form) => form.map((row) => (row === undefined ? '' : (list[row]?.id ?? ''))));
}

/** Rows pasted from a table: a name and a quantity each, with a tab, a semicolon or several spaces between. */
export function pastedRows(text: string): { name: string; quantity: string }[] {
  return text.split(/\r?\n/).filter((line) => line.trim() !== '').map((line) => {
    const [name = '', quantity = ''] = line.split(/\t|;|\s{2,}/);
    return { name: name.trim(), quantity: quantity.trim() };
  });
}
