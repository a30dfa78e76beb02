import type { PDFRef } from '@cantoo/pdf-lib';
import { inPixels, parseSvgLength } from '../../dieline/length.ts';
import { ROOT_STYLE } from '../../dieline/style.ts';
import type { SvgContext, SvgWalk } from '../../dieline/svg-walk.ts';
import { parseTransform } from '../../dieline/transform-list.ts';
import { fitViewBox, viewBoxOf } from '../../dieline/viewport.ts';
import type { XmlElement } from '../../dieline/xml.ts';
import { compose, scaling, translation } from '../../geometry/affine.ts';
import type { Box } from '../../geometry/point.ts';
import { lenders, matrixOf } from './paint-servers.ts';
import type { Sheet } from './sheet.ts';

interface Lent {
  readonly sheet: Sheet;
  readonly walk: SvgWalk;
  /** Told what cannot be kept. */
  readonly notKept: (element: XmlElement, what: string) => void;
}

/**
 * The pattern for a shape of box `box` in its user units (SVG 2, 14.3). The cell's content is drawn in the pattern's own space.
 * Undefined where nothing is painted.
 */
export function tilingPattern(element: XmlElement, context: SvgContext, box: Box, { sheet, walk, notKept }: Lent): PDFRef | undefined {
  if (context.following.includes(element)) return void notKept(element, 'a pattern within itself');
  const chain = lenders(element, walk);
  const attribute = (name: string) => chain.find(({ attributes }) => attributes[name] !== undefined)?.attributes[name];
  const source = chain.find(({ children }) => children.length > 0);
  const byBox = attribute('patternUnits') !== 'userSpaceOnUse';
  const length = (name: string, whole: number) => {
    const parsed = parseSvgLength(attribute(name));
    return parsed ? inPixels(parsed, byBox ? 1 : whole) : 0;
  };
  const { width: viewWidth, height: viewHeight } = context.viewport;
  const [unitX, unitY] = byBox ? [box.maxX - box.minX, box.maxY - box.minY] : [1, 1];
  const [width, height] = [length('width', viewWidth) * unitX, length('height', viewHeight) * unitY];
  if (!source || !(width > 0 && height > 0)) return undefined;
  const x = (byBox ? box.minX : 0) + length('x', viewWidth) * unitX;
  const y = (byBox ? box.minY : 0) + length('y', viewHeight) * unitY;
  const own = parseTransform(attribute('patternTransform') ?? '') ?? translation(0, 0);
  const placed = compose(context.map, compose(own, translation(x, y)));
  const view = viewBoxOf(chain.find(({ attributes }) => attributes['viewBox'] !== undefined) ?? source);
  const inner = view
    ? fitViewBox(view, width, height, attribute('preserveAspectRatio'))
    : attribute('patternContentUnits') === 'objectBoundingBox' ? scaling(box.maxX - box.minX, box.maxY - box.minY) : translation(-x, -y);
  const content = sheet.capture(() =>
    walk.visitChildren(source, { ...context, style: walk.styleOf(source, ROOT_STYLE), map: inner, following: [...context.following, element] }));
  return sheet.add(sheet.context.flateStream(content, {
    Type: 'Pattern', PatternType: 1, PaintType: 1, TilingType: 1, BBox: [0, 0, width, height], XStep: width, YStep: height, Resources: sheet.resources, Matrix: matrixOf(placed),
  } as never));
}
