import { PDFDocument, PDFName } from '@cantoo/pdf-lib';
import { inputError, type Issue } from '../../base/issue.ts';
import { collectDrawing } from '../../dieline/drawing-collector.ts';
import { ROOT_STYLE } from '../../dieline/style.ts';
import { openSvg } from '../../dieline/svg-drawing.ts';
import { walkSvg } from '../../dieline/svg-walk.ts';
import { pageOf } from '../../dieline/viewport.ts';
import { compose, scaling, translation } from '../../geometry/affine.ts';
import { POINTS_PER_MM } from '../pdf-operators.ts';
import type { NamedInk } from './colours.ts';
import { elementsWithin, embedImages } from './images.ts';
import { createPainter } from './painter.ts';
import { createSheet } from './sheet.ts';
import { standInFonts } from './texts.ts';

/** An SVG as a PDF of one page of its size. */
export interface SvgAsPdf {
  readonly bytes: Uint8Array;
  readonly issues: readonly Issue[];
}

/**
 * An SVG as a page of a PDF: paths, gradients, patterns, clipping and texts stay what they are, images are taken in as they
 * are, nothing is rasterised. `inks`: colours that stand for inks. Lines that a name makes a processing step are left out of
 * the print. What cannot be kept is said, piece by piece. Nothing is fetched or run. Throws InputError where the file is no
 * SVG, has no size, passes a limit, or holds an image that lies elsewhere.
 */
export async function svgToPdf(svg: Uint8Array, inks: readonly NamedInk[] = []): Promise<SvgAsPdf> {
  const { root, issues } = openSvg(svg);
  const { size, map, viewport } = pageOf(root, undefined);
  if (!size || !(size.width > 0 && size.height > 0)) throw inputError('artwork-without-size');
  const document = await PDFDocument.create({ updateMetadata: false });
  const images = await embedImages(document, root);
  const hasText = [...elementsWithin(root)].some(({ name }) => name === 'text');
  const fonts = hasText ? await standInFonts(document) : new Map();
  const sheet = createSheet(document, { minX: 0, minY: 0, maxX: size.width, maxY: size.height });
  const collector = collectDrawing();
  const { visitor, lend, said } = createPainter({ sheet, collector, images, fonts, inks });
  const walk = walkSvg(root, collector, visitor);
  lend(walk);
  const content = sheet.capture(() =>
    walk.visitRoot(root, { style: ROOT_STYLE, map: compose(translation(0, size.height), compose(scaling(1, -1), map)), viewport, levels: [], following: [] }));
  const whole = sheet.form(content);
  const page = document.addPage([size.width * POINTS_PER_MM, size.height * POINTS_PER_MM]);
  page.node.set(PDFName.of('Resources'), document.context.obj({ XObject: { Whole: whole } }));
  const scale = POINTS_PER_MM.toFixed(8);
  page.node.addContentStream(document.context.register(document.context.flateStream(`q ${scale} 0 0 ${scale} 0 0 cm /Whole Do Q`)));
  sheet.finish();
  return { bytes: await document.save(), issues: [...issues, ...collector.issues, ...said()] };
}
