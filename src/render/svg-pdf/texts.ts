import { StandardFonts, type PDFDocument, type PDFFont } from '@cantoo/pdf-lib';
import { inPixels, parseNumbers, parseSvgLength } from '../../dieline/length.ts';
import type { Style } from '../../dieline/style.ts';
import type { SvgContext, SvgWalk } from '../../dieline/svg-walk.ts';
import type { XmlElement } from '../../dieline/xml.ts';
import { compose, scaling, translation } from '../../geometry/affine.ts';
import { matrixOperands, precise, type Sheet } from './sheet.ts';

/** Regular, bold, italic and bold italic of each family. */
const FAMILIES = {
  sans: [StandardFonts.Helvetica, StandardFonts.HelveticaBold, StandardFonts.HelveticaOblique, StandardFonts.HelveticaBoldOblique],
  serif: [StandardFonts.TimesRoman, StandardFonts.TimesRomanBold, StandardFonts.TimesRomanItalic, StandardFonts.TimesRomanBoldItalic],
  mono: [StandardFonts.Courier, StandardFonts.CourierBold, StandardFonts.CourierOblique, StandardFonts.CourierBoldOblique],
} as const;

export type Fonts = ReadonlyMap<StandardFonts, PDFFont>;

export async function standInFonts(document: PDFDocument): Promise<Fonts> {
  const names = Object.values(FAMILIES).flat();
  return new Map(await Promise.all(names.map(async (name) => [name, await document.embedFont(name)] as const)));
}

/** Letters of one style from one place on. */
interface Run {
  readonly letters: string;
  readonly style: Style;
  readonly font: PDFFont;
  readonly size: number;
  readonly width: number;
}

/** Runs that are anchored together. */
interface Chunk {
  x: number;
  y: number;
  readonly runs: Run[];
}

interface Lent {
  readonly fonts: Fonts;
  readonly sheet: Sheet;
  readonly walk: Pick<SvgWalk, 'styleOf'>;
  /** Sets the paint of a run and returns its rendering mode; undefined where it is not painted. */
  readonly paint: (element: XmlElement, style: Style) => number | undefined;
  /** Told the font that a text asks for. */
  readonly missing: (font: string, content: string) => void;
  /** Told what of a text is not kept. */
  readonly leftOut: (element: XmlElement, what: string) => void;
}

/**
 * Draws a text with the standard font nearest to the one asked for: an SVG does not hold its fonts. Lines, spans, anchors and
 * shifts are kept; text on a path and turned letters are not.
 */
export function drawText(element: XmlElement, context: SvgContext, { fonts, sheet, walk, paint, missing, leftOut }: Lent): void {
  const chunks: Chunk[] = [];
  const owners = new Map<Run, XmlElement>();
  let endsWithBlank = true;

  const add = (text: string, owner: XmlElement, style: Style): void => {
    const collapsed = text.replace(/\s+/g, ' ');
    const letters = endsWithBlank ? collapsed.trimStart() : collapsed;
    if (letters === '' || style.inherited['visibility'] !== 'visible') return;
    endsWithBlank = letters.endsWith(' ');
    const { font, size } = fontOf(style, fonts);
    const known = new Set(font.getCharacterSet());
    const written = Array.from(letters, (letter) => (known.has(letter.codePointAt(0)!) ? letter : '?')).join('');
    if (written !== letters) leftOut(owner, 'letters that the stand-in font lacks');
    const run: Run = { letters: written, style, font, size, width: font.widthOfTextAtSize(written, size) + spacing(style) * written.length };
    owners.set(run, owner);
    chunks.at(-1)!.runs.push(run);
    missing(style.inherited['font-family'] || 'no name', letters.trim());
  };

  const visit = (span: XmlElement, style: Style): void => {
    const list = (name: string, whole: number) => (span.attributes[name] ?? '').split(/[\s,]+/).flatMap((word) => {
      const length = parseSvgLength(word);
      return length ? [inPixels(length, whole)] : [];
    });
    const [xs, ys, dxs, dys] = [list('x', context.viewport.width), list('y', context.viewport.height), list('dx', 0), list('dy', 0)];
    if (xs.length > 1 || ys.length > 1 || dxs.length > 1 || dys.length > 1) leftOut(span, 'places of single letters');
    if (span.attributes['rotate'] !== undefined || span.attributes['textLength'] !== undefined) leftOut(span, 'turned or stretched letters');
    const before = chunks.at(-1);
    const end = before ? { x: before.x + before.runs.reduce((sum, { width }) => sum + width, 0), y: before.y } : { x: 0, y: 0 };
    if (span === element || xs.length + ys.length + dxs.length + dys.length > 0) {
      chunks.push({ x: (xs[0] ?? end.x) + (dxs[0] ?? 0), y: (ys[0] ?? end.y) + (dys[0] ?? 0), runs: [] });
      if (xs.length > 0) endsWithBlank = true;
    }
    for (const run of span.runs ?? []) {
      if (typeof run === 'string') add(run, span, style);
      else if (run.name === 'tspan' || run.name === 'a') {
        const own = walk.styleOf(run, style);
        if (own.own['display'] !== 'none') visit(run, own);
      } else if (run.name === 'textPath') leftOut(run, 'text on a path');
    }
  };

  visit(element, context.style);
  for (const chunk of chunks) {
    const width = chunk.runs.reduce((sum, run) => sum + run.width, 0);
    const anchor = chunk.runs[0]?.style.inherited['text-anchor'];
    let x = chunk.x - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0);
    for (const run of chunk.runs) {
      sheet.emit('q');
      const mode = paint(owners.get(run)!, run.style);
      if (mode !== undefined) {
        const placed = compose(context.map, compose(translation(x, chunk.y), scaling(1, -1)));
        const name = sheet.resource('Font', run.font.name, () => run.font.ref);
        sheet.emit(`BT /${name} ${precise(run.size)} Tf ${precise(spacing(run.style))} Tc ${mode} Tr ${matrixOperands(placed)} Tm ${run.font.encodeText(run.letters).toString()} Tj ET`);
      }
      sheet.emit('Q');
      x += run.width;
    }
  }
}

function fontOf({ inherited }: Style, fonts: Fonts): { font: PDFFont; size: number } {
  const family = inherited['font-family']!.toLowerCase();
  const faces = /mono|courier|consol/.test(family) ? FAMILIES.mono : /(?<!sans[- ])serif|times|georgia|garamond|roman/.test(family) ? FAMILIES.serif : FAMILIES.sans;
  const isBold = /^bold|^[6-9]00$/.test(inherited['font-weight']!);
  const isItalic = /italic|oblique/.test(inherited['font-style']!);
  const size = parseSvgLength(inherited['font-size']) ?? { value: 16, unit: '' };
  return { font: fonts.get(faces[(isBold ? 1 : 0) + (isItalic ? 2 : 0)]!)!, size: inPixels(size, 16) };
}

function spacing({ inherited }: Style): number {
  const [value] = parseNumbers(inherited['letter-spacing']!.replace(/px$/, '')) ?? [];
  return value ?? 0;
}
