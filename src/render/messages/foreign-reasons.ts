/**
 * Reasons that readers of XML, PDF and tables, the library's database and the file system give in their own English, and
 * our own of the same kind, by what they mean. The first that fits counts.
 */
const MEANINGS = {
  'element-open': /^unclosed tag: (.+)$/,
  'closes-nothing': /^(?:unexpected close tag|unmatched closing tag|weird empty close tag)/,
  'no-element': /^(?:document must contain a root element|it holds no element)$/,
  'text-outside': /^text data outside of root node/,
  'two-drawings': /^documents may contain only one root/,
  'attribute-twice': /^duplicate attribute: (.+)$/,
  'attribute-form': /^(?:attribute without|unquoted attribute|no whitespace between attributes|disallowed character in attribute)/,
  'entity-form': /^(?:empty entity name|malformed character entity)/,
  'comment-form': /^malformed comment/,
  'bad-character': /^(?:disallowed character|malformed name|forward-slash|the string "]]>")/,
  'declaration-form': /XML declaration|doctype|processing instruction|^(?:version number|encoding value|standalone value|expected |did not expect|value |whitespace required|incorrect syntax)/,
  'ends-too-soon': /^unexpected end/,

  'pdf-no-pages': /^(?:it has no (?:list of pages|page)$|Missing catalog)/,
  'pdf-packing': /^(?:its list of objects is packed by )?\/(\w+)(?: stream encoding not supported)?$/,
  'pdf-stream': /\b(?:flate|LZW|uncompressed block|code in)\b/,
  'pdf-objects': /^(?:its list of objects is not plausible|Failed to parse|Expected (?:next byte|instance)|Trying to parse)/,
  'pdf-endless': /^it holds a run of digits/,

  'quotes-open': /^Quoted field unterminated/,
  'quotes-within': /^Trailing quote on quoted field/,
  'table-empty': /^there is nothing in it$/,
  'column-twice': /^the column (.+) is there twice$/,
  'cells-too-many': /^(\d+) cells, but (\d+) columns$/,

  'cannot-be-opened': /^ConnectionFailed|unable to open/,
  'read-only': /readonly/,
  'no-rights': /^(?:EACCES|EPERM)|permission denied|not authorized|authorization denied/,
  'disk-error': /disk I\/O error/,
  'content-damaged': /^database disk image is malformed/,
  'no-database': /^file is not a database/,
  'no-such-file': /^ENOENT/,
  'is-a-folder': /^EISDIR/,
} as const;

export type Meaning = keyof typeof MEANINGS;

/** A clause for each; `{1}` and `{2}` stand for what is named in it. `other`: nothing but their own words, quoted. */
export type ReasonWords = Readonly<Record<Meaning | 'other', string>>;

/** Issues whose fact `reason` comes from outside. */
const FROM_OUTSIDE: ReadonlySet<string> = new Set(['drawing-not-xml', 'pdf-not-readable', 'csv-not-valid', 'library-not-writable', 'library-damaged', 'file-not-readable', 'output-not-writable', 'answer-not-valid']);

export function isFromOutside(code: string, fact: string): boolean {
  return fact === 'reason' && FROM_OUTSIDE.has(code);
}

export function reasonIn(words: ReasonWords, text: string): string {
  for (const [meaning, pattern] of Object.entries(MEANINGS)) {
    const found = pattern.exec(text);
    if (found) return filled(words[meaning as Meaning], found.slice(1));
  }
  return filled(words.other, [text]);
}

function filled(clause: string, parts: readonly string[]): string {
  return clause.replace(/\{(\d)\}/g, (_, place: string) => parts[Number(place) - 1] ?? '?');
}
