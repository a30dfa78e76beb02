import { inputError } from '../base/issue.ts';
import type { Dieline } from './dieline.ts';
import { DEFAULT_READ_OPTIONS, type ReadOptions } from './options.ts';
import { readSvg } from './svg-drawing.ts';
import { understand } from './understand.ts';

/**
 * Reads an SVG drawing. The result's `issues` hold all that is doubtful or was repaired, with places in the drawing's
 * own axes (mm, y down from the page's top); a drawing without a blank has none in `blanks` and an error among them.
 * Throws InputError where the file is no SVG, passes a limit, or `widthIs` finds no single blank to speak of.
 */
export function readSvgDrawing(bytes: Uint8Array, options: Partial<ReadOptions> = {}): Dieline {
  const all = { ...DEFAULT_READ_OPTIONS, ...options };
  if (all.widthIs !== undefined) return readByWidth(bytes, all, all.widthIs);
  return understand(readSvg(bytes, all.scale), all);
}

/** Tolerances are in millimetres, so the blank's width is measured again at the scale found, until it is the given one. */
function readByWidth(bytes: Uint8Array, options: ReadOptions, widthMm: number): Dieline {
  let scale = options.scale;
  for (let round = 0; round < 4; round++) {
    const dieline = understand(readSvg(bytes, scale), options);
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
