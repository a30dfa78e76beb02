import { camelCase } from '../base/camel-case.ts';
import { z } from 'zod';
import { InputError, type Issue } from '../base/issue.ts';
import { readRecord } from './records.ts';

/** Letters by which a name may differ from a field's and still be taken for a slip: fewer in a short one. */
const slipOf = (field: string): number => (field.length <= 5 ? 1 : 2);

/**
 * A record may hold fields of the shop's own. But a name that is nearly a field's is a slip, and a record with no field of
 * its kind is one of another kind: both throw an InputError, since a margin that is passed over spoils a sheet. Returns
 * notes of the fields left aside.
 */
export function checkFields(known: readonly string[], json: unknown, file: string): Issue[] {
  if (!isObject(json)) return [];
  const names = Object.keys(json);
  const strange = names.filter((name) => !known.includes(camelCase(name)));
  const slips = strange.flatMap((name): Issue[] => {
    const meant = known.find((field) => distance(camelCase(name).toLowerCase(), field.toLowerCase()) <= slipOf(field));
    return meant ? [{ code: 'field-misspelt', severity: 'error', where: `${file}: ${name}`, facts: { meant } }] : [];
  });
  if (slips.length > 0) throw new InputError(slips);
  if (strange.length > 0 && names.every((name) => name === 'name' || strange.includes(name))) {
    throw new InputError([{ code: 'record-of-other-kind', severity: 'error', where: file, facts: { known: known.join(', ') } }]);
  }
  return strange.map((name): Issue => ({ code: 'field-left-aside', severity: 'note', where: file, facts: { field: name } }));
}

/** The same for a record and every object within it that its schema describes. Strict objects refuse strange fields themselves. */
export function checkAllFields(schema: z.ZodType, json: unknown, file: string): Issue[] {
  const inner = unwrapped(schema);
  if (inner instanceof z.ZodArray && Array.isArray(json)) return json.flatMap((item, i) => checkAllFields(inner.element as z.ZodType, item, `${file}.${i}`));
  if (!(inner instanceof z.ZodObject) || !isObject(json)) return [];
  const shape = inner.shape as Readonly<Record<string, z.ZodType>>;
  const isStrict = inner.def.catchall instanceof z.ZodNever;
  const own = isStrict ? [] : checkFields(Object.keys(shape), json, file);
  const within = Object.entries(json).flatMap(([name, value]) => {
    const field = Object.hasOwn(shape, camelCase(name)) ? shape[camelCase(name)] : undefined;
    return field ? checkAllFields(field, value, `${file}: ${name}`) : [];
  });
  return [...own, ...within];
}

/** A record by its schema, and notes of the fields in it that nobody knows. Throws an InputError. */
export function readNoted<Schema extends z.ZodType>(schema: Schema, json: unknown, file: string): { readonly record: z.output<Schema>; readonly notes: readonly Issue[] } {
  // A slip is named before the field that it leaves open.
  const notes = checkAllFields(schema, json, file);
  return { record: readRecord(schema, json, file), notes };
}

function unwrapped(schema: z.ZodType): z.ZodType {
  return schema instanceof z.ZodOptional || schema instanceof z.ZodDefault ? unwrapped(schema.unwrap() as z.ZodType) : schema;
}

function isObject(json: unknown): json is Readonly<Record<string, unknown>> {
  return typeof json === 'object' && json !== null && !Array.isArray(json);
}

/** Letters to be put in, taken out or changed to come from one word to the other (Levenshtein 1966). */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) next.push(Math.min(next[j - 1] + 1, row[j] + 1, row[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length];
}
