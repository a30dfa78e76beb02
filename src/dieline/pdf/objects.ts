import { decodePDFRawStream, PDFArray, PDFDict, PDFHexString, PDFName, PDFNumber, PDFRawStream, PDFRef, PDFString, type PDFContext, type PDFObject } from '@cantoo/pdf-lib';
import { inputError } from '../../base/issue.ts';
import { READING_LIMITS } from '../limits.ts';
import { limitPassed } from '../xml.ts';

/** Looking into a PDF's objects without believing that they are what they should be. */

/** What stands under the key, references followed. */
export function entry(dict: PDFDict | undefined, key: string): PDFObject | undefined {
  return dict?.context.lookup(dict.get(PDFName.of(key)));
}

export function asDict(object: PDFObject | undefined): PDFDict | undefined {
  if (object instanceof PDFRawStream) return object.dict;
  return object instanceof PDFDict ? object : undefined;
}

export function dictEntry(dict: PDFDict | undefined, key: string): PDFDict | undefined {
  return asDict(entry(dict, key));
}

export function asNumber(object: PDFObject | undefined): number | undefined {
  const value = object instanceof PDFNumber ? object.asNumber() : NaN;
  return Number.isFinite(value) ? value : undefined;
}

/** A name without its slash. */
export function asName(object: PDFObject | undefined): string | undefined {
  return object instanceof PDFName ? object.decodeText() : undefined;
}

export function asText(object: PDFObject | undefined): string | undefined {
  return object instanceof PDFString || object instanceof PDFHexString ? object.decodeText() : undefined;
}

/** Items with references followed; nothing for what is no array. */
export function items(object: PDFObject | undefined, context: PDFContext): (PDFObject | undefined)[] {
  return object instanceof PDFArray ? object.asArray().map((item) => context.lookup(item)) : [];
}

/** All numbers of an array; undefined where it is none or holds something else. */
export function numbers(object: PDFObject | undefined, context: PDFContext): number[] | undefined {
  if (!(object instanceof PDFArray)) return undefined;
  const values = items(object, context).map(asNumber);
  return values.every((value) => value !== undefined) ? values : undefined;
}

/** Identifies an indirect object; each direct one is itself alone. */
export function identityOf(raw: PDFObject | undefined): PDFObject | string | undefined {
  return raw instanceof PDFRef ? raw.tag : raw;
}

/**
 * What a stream holds, its filters undone. Throws InputError `drawing-limit` beyond `limit` bytes, at every filter, and
 * `pdf-not-readable` where a filter is not known.
 */
export function contentsOf(stream: PDFRawStream, limit: number = READING_LIMITS.pdfContentBytes): Uint8Array {
  try {
    const bytes = decodePDFRawStream(stream).getBytes(limit + 1) as Uint8Array;
    if (bytes.length > limit) throw limitPassed('bytes of unpacked content', limit);
    return bytes;
  } catch (error) {
    throw (error as Error).name === 'InputError' ? error : inputError('pdf-not-readable', { facts: { reason: (error as Error).message } });
  }
}
