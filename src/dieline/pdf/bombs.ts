import { PDFContext, PDFRawStream } from '@cantoo/pdf-lib';
import { inputError } from '../../base/issue.ts';
import { READING_LIMITS } from '../limits.ts';
import { contentsOf } from './objects.ts';

/**
 * The library unpacks object streams and cross-reference streams whole while it opens a file, believes the counts in them,
 * and reads runs of digits or blanks between objects again from every place in them. Whatever of that would hold the
 * machine up is refused before. Throws InputError `drawing-limit` or `pdf-not-readable`.
 */
export function refuseBombs(bytes: Uint8Array): void {
  const text = new TextDecoder('latin1').decode(bytes);
  if (/\d{2000}|[ \t\r\n\f\0]{20000}/.test(text)) throw inputError('pdf-not-readable', { facts: { reason: 'it holds a run of digits or blanks without end' } });
  let left: number = READING_LIMITS.pdfContentBytes;
  for (const match of text.matchAll(/(?<!end)stream(?:\r\n|\n|\r)/g)) {
    const start = match.index + match[0].length;
    const from = Math.max(0, match.index - LONGEST_DICTIONARY);
    const dictionary = unescaped(text.slice(Math.max(from, text.lastIndexOf('obj', match.index)), match.index));
    if (!/\/Type\s*(?:\/(?:ObjStm|XRef)\b|\d+\s+\d+\s+R)/.test(dictionary)) continue;
    refuseCounts(dictionary);
    left -= unpackedLength(bytes.subarray(start), dictionary, left);
  }
}

/** Characters before `stream` in which its dictionary is looked for. */
const LONGEST_DICTIONARY = 100_000;

/** Entries of a cross-reference stream, and anything else its dictionary counts. */
const HIGHEST_COUNT = 100_000_000;

function refuseCounts(dictionary: string): void {
  const isHigh = [...dictionary.matchAll(/[/\s[](\d+)/g)].some(([, digits]) => Number(digits) > HIGHEST_COUNT);
  const isHidden = /\/(?:Index|Size|W|N|Filter)\s+\d+\s+\d+\s+R/.test(dictionary);
  if (isHigh || isHidden) throw inputError('pdf-not-readable', { facts: { reason: 'its list of objects is not plausible' } });
}

function unpackedLength(packed: Uint8Array, dictionary: string, limit: number): number {
  const filters = dictionary.match(/\/(?:\w+Decode|Fl|LZW|RL|AHx|A85)\b/g) ?? [];
  if (filters.length === 0) return 0;
  if (filters.length > 1 || filters[0] !== '/FlateDecode') throw inputError('pdf-not-readable', { facts: { reason: `its list of objects is packed by ${filters.join(' ')}` } });
  return contentsOf(PDFRawStream.of(PDFContext.create().obj({ Filter: 'FlateDecode' }), packed), limit).length;
}

/** Names may spell any letter as `#xx`. */
function unescaped(text: string): string {
  return text.replace(/#([0-9a-f]{2})/gi, (_, code: string) => String.fromCharCode(parseInt(code, 16)));
}
