import type { PDFDocument, PDFImage } from '@cantoo/pdf-lib';
import { inputError } from '../../base/issue.ts';
import { inPixels, parseSvgLength } from '../../dieline/length.ts';
import { describeElement } from '../../dieline/svg-names.ts';
import type { SvgContext } from '../../dieline/svg-walk.ts';
import { fitViewBox } from '../../dieline/viewport.ts';
import { attributeByLocalName, limitPassed, type XmlElement } from '../../dieline/xml.ts';
import { compose, mapPath, scaling, translation } from '../../geometry/affine.ts';
import { pathConstruction } from '../pdf-operators.ts';
import { polyline } from '../shapes.ts';
import { matrixOperands, type Sheet } from './sheet.ts';

export type Images = ReadonlyMap<XmlElement, PDFImage>;

/** Pixels of one image, and bytes of all. An image of 600 × 400 mm at 300 an inch has 33 million pixels. */
const MOST_PIXELS = 100_000_000;
const MOST_BYTES = 64 * 1024 * 1024;

/**
 * Takes in the images that the file itself holds, PNG and JPEG, each once, as they are. Throws InputError: `artwork-image-outside` for a
 * link out of the file, which is never followed, `artwork-image-kind` for other kinds, `artwork-image-broken`.
 */
export async function embedImages(document: PDFDocument, root: XmlElement): Promise<Images> {
  const found = new Map<XmlElement, PDFImage>();
  const known = new Map<string, PDFImage>();
  let bytes = 0;
  for (const element of elementsWithin(root)) {
    if (!element.svg || element.name !== 'image') continue;
    const link = attributeByLocalName(element, 'href')?.trim() ?? '';
    if (link === '') continue;
    const where = describeElement(element, []);
    if (!link.startsWith('data:')) throw inputError('artwork-image-outside', { where, facts: { link: link.slice(0, 80) } });
    bytes += link.length;
    if (bytes > MOST_BYTES) throw limitPassed('bytes of images', MOST_BYTES);
    const image = known.get(link) ?? (await embed(document, link, where));
    known.set(link, image);
    found.set(element, image);
  }
  return found;
}

async function embed(document: PDFDocument, link: string, where: string): Promise<PDFImage> {
  const [, kind] = /^data:image\/(png|jpe?g)\s*(?:;[^,]*)?;\s*base64\s*,/i.exec(link) ?? [];
  if (kind === undefined) throw inputError('artwork-image-kind', { where, facts: { kind: link.slice(5, Math.min(45, Math.max(6, link.search(/[;,]/)))) } });
  try {
    const bytes = Uint8Array.from(atob(link.slice(link.indexOf(',') + 1).replace(/\s/g, '')), (letter) => letter.charCodeAt(0));
    if (kind.toLowerCase() !== 'png') return await document.embedJpg(bytes);
    const header = new DataView(bytes.buffer);
    if (header.getUint32(16) * header.getUint32(20) > MOST_PIXELS) throw limitPassed('pixels of an image', MOST_PIXELS);
    return await document.embedPng(bytes);
  } catch (error) {
    if ((error as Error).name === 'InputError') throw error;
    throw inputError('artwork-image-broken', { where, facts: { kind: kind.toLowerCase() } });
  }
}

export function* elementsWithin(root: XmlElement): Generator<XmlElement> {
  const open = [root];
  while (open.length > 0) {
    const element = open.pop()!;
    yield element;
    open.push(...element.children.toReversed());
  }
}

/** Draws an image into its box (SVG 2, 12.3). */
export function drawImage(element: XmlElement, image: PDFImage, { style, map, viewport }: SvgContext, { emit, resource }: Sheet): void {
  const length = (name: string, whole: number, missing: number) => {
    const parsed = parseSvgLength(style.own[name] ?? element.attributes[name]);
    return parsed ? inPixels(parsed, whole) : missing;
  };
  const width = length('width', viewport.width, image.width);
  const height = length('height', viewport.height, image.height);
  if (!(width > 0 && height > 0) || style.inherited['visibility'] !== 'visible') return;
  const box = compose(map, translation(length('x', viewport.width, 0), length('y', viewport.height, 0)));
  const preserve = element.attributes['preserveAspectRatio'];
  const fitted = fitViewBox({ x: 0, y: 0, width: image.width, height: image.height }, width, height, preserve);
  // An image fills the unit square, y up.
  const placed = compose(compose(box, fitted), compose(translation(0, image.height), scaling(image.width, -image.height)));
  const corners = [{ x: 0, y: 0 }, { x: width, y: 0 }, { x: width, y: height }, { x: 0, y: height }];
  const clip = preserve?.includes('slice') ? `${pathConstruction([mapPath(box, polyline(corners, true))])} W n ` : '';
  emit(`q ${clip}${matrixOperands(placed)} cm /${resource('XObject', image.ref.tag, () => image.ref)} Do Q`);
}
