import { PDFArray, PDFParser, PDFRawStream, type PDFContext, type PDFDict, type PDFObject } from '@cantoo/pdf-lib';
import { InputError, inputError } from '../../base/issue.ts';
import { UNIT_IN_MM } from '../../base/units.ts';
import { compose, mapPoint, rotation, scaling, translation, type Affine } from '../../geometry/affine.ts';
import { boxOf, type Box } from '../../geometry/point.ts';
import { READING_LIMITS } from '../limits.ts';
import { limitPassed } from '../xml.ts';
import { refuseBombs } from './bombs.ts';
import { asDict, asNumber, contentsOf, dictEntry, entry, numbers } from './objects.ts';

export interface PdfFile {
  readonly context: PDFContext;
  readonly catalog: PDFDict;
  readonly pages: readonly PdfPage[];
}

export interface PdfPage {
  readonly dict: PDFDict;
  readonly resources: PDFDict | undefined;
  /** What is shown, user space. */
  readonly box: Box;
  /** Where the finished piece lies, and how far print goes beyond it, where the page says so. User space. */
  readonly trimBox: Box | undefined;
  readonly bleedBox: Box | undefined;
  /** Clockwise. */
  readonly turnedDegrees: number;
  /** Millimetres of a unit of user space. */
  readonly mmPerUnit: number;
}

/** Takes the file apart. Throws InputError `pdf-encrypted`, `pdf-not-readable` and `drawing-limit`. */
export async function openPdf(bytes: Uint8Array): Promise<PdfFile> {
  if (bytes.length > READING_LIMITS.fileBytes) throw limitPassed('bytes', READING_LIMITS.fileBytes);
  refuseBombs(bytes);
  const context = await parsed(bytes);
  if (context.trailerInfo.Encrypt !== undefined) throw inputError('pdf-encrypted');
  const catalog = asDict(context.lookup(context.trailerInfo.Root));
  const root = dictEntry(catalog, 'Pages');
  if (!catalog || !root) throw inputError('pdf-not-readable', { facts: { reason: 'it has no list of pages' } });
  const pages = pagesUnder(root, context);
  if (pages.length === 0) throw inputError('pdf-not-readable', { facts: { reason: 'it has no page' } });
  return { context, catalog, pages };
}

async function parsed(bytes: Uint8Array): Promise<PDFContext> {
  try {
    return await PDFParser.forBytesWithOptions(bytes).parseDocument();
  } catch (error) {
    if (error instanceof InputError) throw error;
    throw inputError('pdf-not-readable', { facts: { reason: (error as Error).message.slice(0, 120) } });
  }
}

/** The leaves of the page tree in order, each node visited once; what pages inherit is handed down. */
function pagesUnder(root: PDFDict, context: PDFContext): PdfPage[] {
  const pages: PdfPage[] = [];
  const seen = new Set<PDFDict>();
  const visit = (node: PDFDict, inherited: ReadonlyMap<string, PDFObject>, depth: number): void => {
    if (seen.has(node) || depth > DEEPEST || pages.length >= MOST_PAGES) return;
    seen.add(node);
    const own = new Map(inherited);
    for (const key of INHERITED) {
      const value = entry(node, key);
      if (value) own.set(key, value);
    }
    const kids = entry(node, 'Kids');
    if (!(kids instanceof PDFArray)) return void pages.push(pageOf(node, own, context));
    for (const kid of kids.asArray()) {
      const dict = asDict(context.lookup(kid));
      if (dict) visit(dict, own, depth + 1);
    }
  };
  visit(root, new Map(), 0);
  return pages;
}

const INHERITED = ['Resources', 'MediaBox', 'CropBox', 'Rotate'] as const;
const DEEPEST = 64;
const MOST_PAGES = 10_000;

/** Letter size, as ISO 32000-1 has no default and viewers take it. */
const PAGE_WITHOUT_SIZE: Box = { minX: 0, minY: 0, maxX: 612, maxY: 792 };

function pageOf(dict: PDFDict, inherited: ReadonlyMap<string, PDFObject>, context: PDFContext): PdfPage {
  const media = boxFrom(numbers(inherited.get('MediaBox'), context)) ?? PAGE_WITHOUT_SIZE;
  const crop = boxFrom(numbers(inherited.get('CropBox'), context));
  const shown = crop && intersection(crop, media);
  const unit = asNumber(entry(dict, 'UserUnit')) ?? 1;
  return {
    dict,
    resources: asDict(inherited.get('Resources')),
    box: shown ?? media,
    trimBox: boxFrom(numbers(entry(dict, 'TrimBox'), context)),
    bleedBox: boxFrom(numbers(entry(dict, 'BleedBox'), context)),
    turnedDegrees: Math.round((asNumber(inherited.get('Rotate')) ?? 0) / 90) * 90,
    mmPerUnit: (unit > 0 ? unit : 1) * UNIT_IN_MM.pt!,
  };
}

function boxFrom(values: readonly number[] | undefined): Box | undefined {
  if (values?.length !== 4) return undefined;
  const [x1, y1, x2, y2] = values as [number, number, number, number];
  const box = boxOf([{ x: x1, y: y1 }, { x: x2, y: y2 }]);
  return box.minX < box.maxX && box.minY < box.maxY ? box : undefined;
}

function intersection(a: Box, b: Box): Box | undefined {
  const box = { minX: Math.max(a.minX, b.minX), minY: Math.max(a.minY, b.minY), maxX: Math.min(a.maxX, b.maxX), maxY: Math.min(a.maxY, b.maxY) };
  return box.minX < box.maxX && box.minY < box.maxY ? box : undefined;
}

/** Image of an upright box under a map of quarter turns. */
export function mapBox(map: Affine, { minX, minY, maxX, maxY }: Box): Box {
  return boxOf([mapPoint(map, { x: minX, y: minY }), mapPoint(map, { x: maxX, y: maxY })]);
}

/** User space to millimetres as the page is looked at: turned, its upper left corner at the origin, y up. */
export function pageMap({ box, turnedDegrees }: PdfPage, mmPerUnit: number): { readonly map: Affine; readonly size: { readonly width: number; readonly height: number } } {
  const turned = compose(rotation(-turnedDegrees), scaling(mmPerUnit));
  const corners = mapBox(turned, box);
  return { map: compose(translation(-corners.minX, -corners.maxY), turned), size: { width: corners.maxX - corners.minX, height: corners.maxY - corners.minY } };
}

/** The page's content, its parts joined by a line end as the standard asks. */
export function pageContents({ dict }: PdfPage): Uint8Array {
  const contents = entry(dict, 'Contents');
  const streams = (contents instanceof PDFArray ? contents.asArray().map((part) => dict.context.lookup(part)) : [contents]).filter((part) => part instanceof PDFRawStream);
  const parts: Uint8Array[] = [];
  let left: number = READING_LIMITS.pdfContentBytes;
  for (const stream of streams) {
    const part = contentsOf(stream, left);
    left -= part.length + 1;
    parts.push(part);
  }
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length + 1, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    whole[at + part.length] = 0x0a;
    at += part.length + 1;
  }
  return whole;
}
