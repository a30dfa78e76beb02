import { InputError, type Issue } from '../base/issue.ts';
import { camelCase } from './records.ts';

/** Letters by which a name may differ from a field's and still be taken for a slip: fewer in a short one. */
const slipOf = (field: string): number => (field.length <= 4 ? 1 : 2);

/**
 * A record may hold fields of the shop's own. But a name that is nearly a field's is a slip, and a record with no field of
 * its kind is one of another kind: both throw an InputError, since a margin that is passed over spoils a sheet. Returns
 * notes of the fields left aside.
 */
export function checkFields(known: readonly string[], json: unknown, file: string): Issue[] {
  if (typeof json !== 'object' || json === null) return [];
  const names = Object.keys(json);
  const strange = names.filter((name) => !known.includes(camelCase(name)));
  const slips = strange.flatMap((name): Issue[] => {
    const meant = known.find((field) => distance(camelCase(name).toLowerCase(), field.toLowerCase()) <= slipOf(field));
    return meant ? [{ code: 'field-misspelt', severity: 'error', where: `${file}: ${name}`, facts: { meant } }] : [];
  });
  if (slips.length > 0) throw new InputError(slips);
  if (names.length > 0 && names.every((name) => name === 'name' || strange.includes(name))) {
    throw new InputError([{ code: 'record-of-other-kind', severity: 'error', where: file, facts: { known: known.join(', ') } }]);
  }
  return strange.map((name): Issue => ({ code: 'field-left-aside', severity: 'note', where: file, facts: { field: name } }));
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
