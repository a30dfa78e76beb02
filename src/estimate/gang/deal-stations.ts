/** What one station of a form prints: the number of a version, or nothing. */
export type Printed = number | undefined;

/**
 * Which version every station of every form prints, from the stations that each form gives each version. The first form
 * has its versions one after the other; on each further one a version keeps as many of its stations as it still has, so
 * that as few plates change as the counts allow.
 * @param forms `forms[form][version]`, no more than `stations` together
 * @returns `[form][station]`
 */
export function dealStations(forms: readonly (readonly number[])[], stations: number): Printed[][] {
  const dealt: Printed[][] = [];
  for (const counts of forms) dealt.push(dealForm(counts, dealt.at(-1) ?? new Array<Printed>(stations).fill(undefined)));
  return dealt;
}

function dealForm(counts: readonly number[], before: readonly Printed[]): Printed[] {
  const left = [...counts];
  const kept = before.map((version): Printed => (version !== undefined && left[version]!-- > 0 ? version : undefined));
  const waiting = left.flatMap((count, version) => new Array<number>(Math.max(0, count)).fill(version));
  let next = 0;
  return kept.map((version) => version ?? waiting[next++]);
}

/** Stations of each version on each form: `[form][version]`. */
export function countStations(forms: readonly (readonly Printed[])[], versions: number): number[][] {
  return forms.map((form) => Array.from({ length: versions }, (_, version) => form.filter((printed) => printed === version).length));
}
