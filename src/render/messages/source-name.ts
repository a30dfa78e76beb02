/** A search's name part by part, as `nested rows and free search, plain rows` is made; a part without a word stays as it is. */
export function sourceName(sources: Readonly<Record<string, string>>, source: string): string {
  return sources[source] ?? source.replace(/[^,]+?(?=,|$| and )/g, (part) => part.replace(part.trim(), sources[part.trim()] ?? part.trim()));
}
