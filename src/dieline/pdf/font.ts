import { PDFArray, PDFRawStream, type PDFContext, type PDFDict } from '@cantoo/pdf-lib';
import { asDict, asName, asNumber, dictEntry, entry, items, numbers } from './objects.ts';

/** A font as far as it tells how wide a text is, and whether the file holds it. */
export interface PdfFont {
  readonly name: string;
  /** Width of a string of bytes, in units of the font's size. */
  readonly width: (bytes: string) => number;
  /** Whether bytes are characters; of composite fonts two bytes are one glyph of a numbering of its own. */
  readonly isPlain: boolean;
  readonly isEmbedded: boolean;
}

/** Where a font does not say how wide a character is, shares of its size: about the mean of running text. */
const USUAL_WIDTH = 0.55;
const MOST_WIDTHS = 70_000;

/** ISO 32000-1, 9.6 and 9.7. */
export function readFont(dict: PDFDict, context: PDFContext): PdfFont {
  const subtype = asName(entry(dict, 'Subtype'));
  const name = asName(entry(dict, 'BaseFont')) ?? asName(entry(dict, 'Name')) ?? 'no name';
  if (subtype === 'Type0') return compositeFont(dict, name, context);
  const first = asNumber(entry(dict, 'FirstChar')) ?? 0;
  const widths = numbers(entry(dict, 'Widths'), context) ?? [];
  const isType3 = subtype === 'Type3';
  const unit = isType3 ? Math.abs(numbers(entry(dict, 'FontMatrix'), context)?.[0] ?? 0.001) : 0.001;
  const widthOf = (code: number) => {
    const width = widths[code - first];
    return width === undefined || width === 0 ? USUAL_WIDTH : width * unit;
  };
  return {
    name, isPlain: true,
    isEmbedded: isType3 || holdsFile(dictEntry(dict, 'FontDescriptor')),
    width: (bytes) => Array.from(bytes, (byte) => widthOf(byte.charCodeAt(0))).reduce((sum, width) => sum + width, 0),
  };
}

function compositeFont(dict: PDFDict, name: string, context: PDFContext): PdfFont {
  const descendant = asDict(items(entry(dict, 'DescendantFonts'), context)[0]);
  const widths = glyphWidths(descendant, context);
  const usual = asNumber(entry(descendant, 'DW')) ?? 1000;
  return {
    name, isPlain: false,
    isEmbedded: holdsFile(dictEntry(descendant, 'FontDescriptor')),
    width: (bytes) => {
      let sum = 0;
      for (let i = 0; i + 1 < bytes.length; i += 2) sum += widths.get(bytes.charCodeAt(i) * 256 + bytes.charCodeAt(i + 1)) ?? usual;
      return sum / 1000;
    },
  };
}

/** `c [w1 w2 …]` and `first last w`, one after the other. */
function glyphWidths(descendant: PDFDict | undefined, context: PDFContext): Map<number, number> {
  const found = new Map<number, number>();
  const list = items(entry(descendant, 'W'), context);
  for (let i = 0; i + 1 < list.length && found.size < MOST_WIDTHS; ) {
    const first = asNumber(list[i]) ?? 0;
    const next = list[i + 1];
    if (next instanceof PDFArray) {
      (numbers(next, context) ?? []).forEach((width, k) => found.set(first + k, width));
      i += 2;
      continue;
    }
    const [last, width] = [asNumber(next) ?? first, asNumber(list[i + 2]) ?? 0];
    for (let code = first; code <= last && found.size < MOST_WIDTHS; code++) found.set(code, width);
    i += 3;
  }
  return found;
}

function holdsFile(descriptor: PDFDict | undefined): boolean {
  return ['FontFile', 'FontFile2', 'FontFile3'].some((key) => entry(descriptor, key) instanceof PDFRawStream);
}

/** Resources within resources, at most. */
const MOST_RESOURCES = 5000;

/** Names of the fonts that content under these resources may use and the file does not hold, each once. */
export function missingFonts(resources: PDFDict | undefined, context: PDFContext): string[] {
  const names = new Set<string>();
  const seen = new Set<PDFDict>();
  const open = [resources];
  while (open.length > 0 && seen.size < MOST_RESOURCES) {
    const dict = open.pop();
    if (!dict || seen.has(dict)) continue;
    seen.add(dict);
    for (const [key] of dictEntry(dict, 'Font')?.entries() ?? []) {
      const font = asDict(entry(dictEntry(dict, 'Font')!, key.decodeText()));
      if (!font) continue;
      const { name, isEmbedded } = readFont(font, context);
      if (!isEmbedded) names.add(name);
      if (asName(entry(font, 'Subtype')) === 'Type3') open.push(dictEntry(font, 'Resources'));
    }
    for (const kind of ['XObject', 'Pattern']) {
      for (const [key] of dictEntry(dict, kind)?.entries() ?? []) open.push(dictEntry(asDict(entry(dictEntry(dict, kind)!, key.decodeText())), 'Resources'));
    }
  }
  return [...names].toSorted();
}
