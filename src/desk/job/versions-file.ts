import type { OversFields } from './overs.ts';
import { MOST_VERSIONS, NO_VERSIONS, type VersionFields, type VersionPlan, type Versions } from './versions.ts';

/** Most forms that a plan is read with, as many as the engine plans. */
const MOST_FORMS = 50;
const MOST_STATIONS = 5_000;

/** Versions as a job file holds them; none where they cannot be read. What is proved of a plan is not believed. */
export function versionsFromFile(given: unknown): Versions {
  if (!isObject(given) || !isList(given['list'], MOST_VERSIONS, isVersion)) return NO_VERSIONS;
  const { list, plan } = given;
  if (new Set(list.map(({ id }) => id)).size < list.length) return NO_VERSIONS;
  const text = (field: 'forms' | 'formCost' | 'pressingCost') => (isText(given[field]) ? given[field] : NO_VERSIONS[field]);
  return {
    list: list.map(({ id, name, quantity, overs }) => ({ id, name, quantity, ...(overs && { overs: oversFromFile(overs) }) })),
    forms: text('forms'),
    formCost: text('formCost'),
    pressingCost: text('pressingCost'),
    overs: oversFromFile(given['overs']),
    plan: isObject(plan) && isList(plan['forms'], MOST_FORMS, isForm) ? { forms: plan['forms'], asked: '', lowerBound: 0 } : undefined,
  };
}

export function oversFromFile(given: unknown): OversFields {
  const text = (field: keyof OversFields) => (isObject(given) && isText(given[field]) ? given[field] : '');
  return { least: text('least'), greatest: text('greatest') };
}

function isVersion(given: unknown): given is VersionFields {
  return isObject(given) && isText(given['id']) && given['id'] !== '' && isText(given['name']) && isText(given['quantity']);
}

function isForm(given: unknown): given is VersionPlan['forms'][number] {
  return isList(given, MOST_STATIONS, isText);
}

function isList<Item>(given: unknown, most: number, is: (item: unknown) => item is Item): given is Item[] {
  return Array.isArray(given) && given.length <= most && given.every(is);
}

const LONGEST_TEXT = 200;

export function isText(given: unknown): given is string {
  return typeof given === 'string' && given.length <= LONGEST_TEXT;
}

export function isObject(given: unknown): given is Record<string, unknown> {
  return typeof given === 'object' && given !== null && !Array.isArray(given);
}
