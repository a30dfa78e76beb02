import { inputError } from '../base/issue.ts';
import { isCompressed } from './decode.ts';
import type { Dieline } from './dieline.ts';
import type { Drawing } from './drawing.ts';
import { isBinaryDxf, isDxf } from './dxf/decode.ts';
import { readDxf } from './dxf/dxf-drawing.ts';
import { DEFAULT_READ_OPTIONS, type ReadOptions } from './options.ts';
import { openPdfDrawing } from './pdf/pdf-drawing.ts';
import { readSvg } from './svg-drawing.ts';
import { understand } from './understand.ts';

/** A drawing file of any format, at the scale given (millimetres a user unit) or at the one it names itself. */
export type DrawingReader = (scale: number | undefined) => Drawing;

/**
 * Reads a drawing: SVG, DXF or PDF, known by its content. The result's `issues` hold all that is doubtful or was repaired, with
 * places in the drawing's own axes; a drawing without a blank has none in `blanks` and an error among them. Throws
 * InputError where the file is no drawing, passes a limit, or `widthIs` finds no single blank to speak of.
 */
export async function readDrawing(bytes: Uint8Array, options: Partial<ReadOptions> = {}): Promise<Dieline> {
  const all = { ...DEFAULT_READ_OPTIONS, ...options };
  return dielineOf(await openDrawing(bytes, all), all);
}

/** Throws InputError `drawing-empty`, `drawing-kind-unknown`, or `dxf-binary`. */
async function openDrawing(bytes: Uint8Array, { page = 1, onWork }: ReadOptions): Promise<DrawingReader> {
  if (bytes.length === 0) throw inputError('drawing-empty');
  const head = String.fromCharCode(...bytes.subarray(0, 1024));
  if (head.includes('%PDF-')) return openPdfDrawing(bytes, page, onWork);
  if (page !== 1) throw inputError('no-such-page', { facts: { number: page, count: 1 } });
  if (isDxf(head)) return (scale) => readDxf(bytes, scale, onWork);
  if (isBinaryDxf(head)) throw inputError('dxf-binary');
  if (looksLikeSvg(head) || isCompressed(bytes)) return (scale) => readSvg(bytes, scale, onWork);
  throw inputError('drawing-kind-unknown');
}

/** A tag, after a byte order mark or blanks. */
export function looksLikeSvg(head: string): boolean {
  return /^(\u00ef\u00bb\u00bf|\u00ff\u00fe|\u00fe\u00ff)?[\s\0]*</.test(head);
}

/** From a drawing to its blanks, at the scale that the drawing or the user says. */
export function dielineOf(read: DrawingReader, options: ReadOptions): Dieline {
  return options.widthIs === undefined ? understand(read(options.scale), options) : readByWidth(read, options, options.widthIs);
}

/** Tolerances are in millimetres, so the blank's width is measured again at the scale found, until it is the given one. */
function readByWidth(read: DrawingReader, options: ReadOptions, widthMm: number): Dieline {
  let scale = options.scale;
  for (let round = 0; round < 4; round++) {
    const dieline = understand(read(scale), options);
    const { blanks } = dieline;
    const blank = options.blank === undefined ? blanks[0] : blanks.find(({ number }) => number === options.blank);
    if (!blank || (options.blank === undefined && blanks.length > 1)) {
      if (blanks.length === 0) return dieline;
      throw inputError('width-of-which-blank', { facts: { count: blanks.length } });
    }
    const width = blank.box.maxX - blank.box.minX;
    if (Math.abs(width - widthMm) < WIDTH_TOLERANCE_MM) return { ...dieline, scale: { ...dieline.scale, from: 'given width' } };
    scale = dieline.scale.mmPerUnit * (widthMm / width);
  }
  throw inputError('width-not-reached', { facts: { widthMm } });
}

/** Boxes are known to the micrometre; the scale that follows is as good as the width given. */
const WIDTH_TOLERANCE_MM = 0.0015;
