/**
 * What hangs on a thing that is never changed and on the gap, and on no sheet: made when it is first asked for and kept as
 * long as the thing lives. A comparison asks the same of many sheets.
 */
export function keptAtGap<K extends object, T>(make: (thing: K, gap: number) => T): (thing: K, gap: number) => T {
  const known = new WeakMap<K, Map<number, T>>();
  return (thing, gap) => {
    const byGap = known.get(thing) ?? new Map<number, T>();
    known.set(thing, byGap);
    if (!byGap.has(gap)) byGap.set(gap, make(thing, gap));
    return byGap.get(gap)!;
  };
}
