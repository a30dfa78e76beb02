import { PDFDocument, StandardFonts, type PDFFont, type PDFRef } from '@cantoo/pdf-lib';
import type { Box } from '../geometry/point.ts';
import { COORDINATE_LIMIT } from '../geometry/point.ts';
import { pathConstruction, POINTS_PER_MM, textShown, turnMatrix } from './pdf-operators.ts';
import { plain } from './plain.ts';
import { COLOURS, type Look, type Paint, type PathItem, type Scene, type SceneItem, type TextItem } from './scene.ts';

/** A4 and the margin kept free on it, mm. */
const A4 = [297, 210] as const;
const A4_MARGIN = 8;

interface Fonts {
  readonly regular: PDFFont;
  readonly bold: PDFFont;
}

/**
 * The scene as PDF. Page 1 is the sheet at true size, with the lower left corner of the page that of the sheet; page 2
 * is the whole picture, dimensions and title block included, on A4. Carries no dates, so that the same scene gives
 * the same bytes. Letters outside the standard fonts' set (Western European) are written as `?`.
 */
export async function sceneToPdf(scene: Scene): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle(scene.title, { showInWindowTitleBar: true });
  document.setSubject(scene.description);
  document.setProducer('Blankwright');
  document.setCreator('Blankwright');
  const fonts = { regular: await document.embedFont(StandardFonts.Helvetica), bold: await document.embedFont(StandardFonts.HelveticaBold) };
  const picture = pictureForm(document, scene, fonts);

  const { width, height } = scene.sheet;
  placePicture(document, picture, [width, height], 1, 0, 0);

  const { minX, minY, maxX, maxY } = scene.box;
  const isWide = maxX - minX >= maxY - minY;
  const page: [number, number] = isWide ? [A4[0], A4[1]] : [A4[1], A4[0]];
  const factor = Math.min((page[0] - 2 * A4_MARGIN) / (maxX - minX), (page[1] - 2 * A4_MARGIN) / (maxY - minY));
  placePicture(document, picture, page, factor, (page[0] - factor * (minX + maxX)) / 2, (page[1] - factor * (minY + maxY)) / 2);
  return document.save();
}

/** A new page (mm) with the picture scaled and moved onto it. */
function placePicture(document: PDFDocument, picture: PDFRef, [width, height]: readonly [number, number], factor: number, x: number, y: number): void {
  const page = document.addPage([width * POINTS_PER_MM, height * POINTS_PER_MM]);
  const name = page.node.newXObject('Picture', picture);
  const scale = (POINTS_PER_MM * factor).toFixed(8);
  const content = `q ${scale} 0 0 ${scale} ${plain(x * POINTS_PER_MM)} ${plain(y * POINTS_PER_MM)} cm ${name} Do Q`;
  page.node.addContentStream(document.context.register(document.context.flateStream(content)));
}

/** The picture as one reusable drawing in millimetres; symbols are reusable drawings within it. */
function pictureForm(document: PDFDocument, scene: Scene, fonts: Fonts): PDFRef {
  const limit = COORDINATE_LIMIT / 1000;
  const everything: Box = { minX: -limit, minY: -limit, maxX: limit, maxY: limit };
  const names = new Map(scene.symbols.map(({ id }, i) => [id, `Symbol${i + 1}`]));
  const symbols: Record<string, PDFRef> = {};
  for (const { id, items } of scene.symbols) symbols[names.get(id)!] = form(document, items.map(pathOperators).join('\n'), everything, {});
  const content = scene.layers.flatMap(({ items }) => items.map((item) => itemOperators(item, names, fonts))).join('\n');
  return form(document, content, scene.box, { XObject: symbols, Font: { Regular: fonts.regular.ref, Bold: fonts.bold.ref } });
}

function form(document: PDFDocument, content: string, { minX, minY, maxX, maxY }: Box, resources: Record<string, Record<string, PDFRef>>): PDFRef {
  const stream = document.context.flateStream(`1 j\n${content}`, { Type: 'XObject', Subtype: 'Form', BBox: [minX, minY, maxX, maxY], Resources: resources });
  return document.context.register(stream);
}

function itemOperators(item: SceneItem, names: ReadonlyMap<string, string>, fonts: Fonts): string {
  switch (item.kind) {
    case 'path':
      return pathOperators(item);
    case 'use':
      return `q ${turnMatrix(item.turn, item.at.x, item.at.y)} cm /${names.get(item.symbol)} Do Q`;
    case 'text':
      return textOperators(item, item.bold ? fonts.bold : fonts.regular);
  }
}

function pathOperators({ paths, look }: PathItem): string {
  return `q ${lookOperators(look)}\n${pathConstruction(paths)}\n${paintOperator(look)} Q`;
}

function lookOperators({ fill, stroke, width, dash, round }: Look): string {
  return [
    fill && `${colour(fill)} rg`,
    stroke && `${colour(stroke)} RG ${plain(width ?? 0)} w`,
    dash && `[${dash.map(plain).join(' ')}] 0 d`,
    round && '1 J',
  ].filter(Boolean).join(' ');
}

/** Filled areas by the even-odd rule. */
function paintOperator({ fill, stroke }: Look): string {
  if (fill && stroke) return 'B*';
  return fill ? 'f*' : stroke ? 'S' : 'n';
}

function textOperators(item: TextItem, font: PDFFont): string {
  const name = font.name === StandardFonts.HelveticaBold ? 'Bold' : 'Regular';
  return `BT ${colour(item.paint)} rg ${textShown(item, font, name)} ET`;
}

function colour(paint: Paint): string {
  return COLOURS[paint].map((part) => plain(part / 255)).join(' ');
}
