import { LANGUAGES } from '../../src/render/messages/languages.ts';
import type { Report } from '../../src/render/report.ts';

/** Languages other than English. */
export const OTHER_LANGUAGES = Object.keys(LANGUAGES).filter((tag) => tag !== 'en');

/** All that a report says, part by part. */
export function saidIn({ title, answer, sections, caution }: Report): string[] {
  return [
    title, answer, caution.heading, caution.text,
    ...sections.flatMap(({ heading, sentences, figures, table }) => [heading, ...sentences, ...figures.flatMap(({ label, value, formula, note }) => [label, value, formula ?? '', note ?? '']), ...(table ? [...table.head, ...table.rows.flat()] : [])]),
  ].filter((text) => text !== '');
}

/** Words of three letters or more. */
function wordsOf(texts: readonly string[]): Set<string> {
  return new Set(texts.join(' ').toLowerCase().match(/\p{L}{3,}/gu) ?? []);
}

/** Words that are right in the other language too. */
const SHARED: Readonly<Record<string, readonly string[]>> = {
  de: ['die', 'was', 'person', 'zone', 'palette', 'tonne'],
  fr: ['carton', 'fibres', 'grammage', 'machine', 'machines', 'stock', 'zone', 'zones', 'net', 'pile', 'piles', 'tonne'],
};

/** Words of the English report that stand in the other one, names in the data left out. */
export function englishLeft(english: Report, other: Report, data: unknown): string[] {
  const known = new Set([...wordsOf([JSON.stringify(data)]), ...SHARED[other.language]!]);
  const own = wordsOf(saidIn(other));
  return [...wordsOf(saidIn(english))].filter((word) => own.has(word) && !known.has(word));
}

/** Every number of a text, whatever the decimal sign; a thousand that prices go by is no figure. */
export function numbersIn(text: string): string[] {
  const plain = text.replace(/\u00a0/g, ' ').replace(/(?<=\d) (?=\d{3}(?!\d))/g, '').replace(/(?<=\d),(?=\d)/g, '.');
  return (plain.match(/(?<![\p{L}\d.])\d+(\.\d+)?/gu) ?? []).filter((number) => number !== '1000').toSorted();
}
