/** The things by their key, keys and things in the order in which they come. */
export function groupBy<T, Key>(things: Iterable<T>, keyOf: (thing: T) => Key): Map<Key, T[]> {
  const groups = new Map<Key, T[]>();
  for (const thing of things) {
    const group = groups.get(keyOf(thing));
    if (group) group.push(thing);
    else groups.set(keyOf(thing), [thing]);
  }
  return groups;
}
