/** A search's name part by part, as `nested rows and free search, plain rows` is made; a part without a word stays as it is. */
export function sourceName(sources: Readonly<Record<string, string>>, source: string): string {
  return sources[source] ?? source.split(/(, | and )/).map((part) => (part === ' and ' ? ` ${sources['and'] ?? 'and'} ` : (sources[part] ?? part))).join('');
}
