/** Names in drawings: layers, ids, classes, labels, as programs mangle them. */

/**
 * Lower-case words of a name without accents: `Stanz-Linie_2`, `StanzLinie`, `Stanz_x002D_Linie` all give
 * `['stanz', 'linie']`. Numbers are dropped: they count copies. Signs that join two things become `and`.
 */
export function wordsOf(name: string): string[] {
  return unescaped(name)
    .replace(/ß/g, 'ss')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .replace(/(\p{Lu})(\p{Lu}\p{Ll})/gu, '$1 $2')
    .toLowerCase()
    .replace(/[&+/]/g, ' and ')
    .split(/\P{L}+/u)
    .filter((word) => word !== '');
}

/** Ids may hold only some characters; drawing programs write the others as `_x20_` or `_x0020_`. */
export function unescaped(name: string): string {
  return name.replace(/_x([0-9a-fA-F]{2,5})_/g, (_, code: string) => String.fromCodePoint(parseInt(code, 16)));
}

/** Case, accents and mangling aside, the same name; `*` in the pattern stands for any characters. */
export function matchesName(name: string, pattern: string): boolean {
  const plain = (text: string) => unescaped(text).normalize('NFC').trim().toLowerCase();
  const source = plain(pattern).split('*').map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('.*');
  return new RegExp(`^${source}$`, 'su').test(plain(name));
}
