import type { PDFRef } from '@cantoo/pdf-lib';
import type { Issue } from '../../base/issue.ts';
import type { DrawingCollector } from '../../dieline/drawing-collector.ts';
import { inPixels, parseNumbers, parseSvgLength } from '../../dieline/length.ts';
import { readShape } from '../../dieline/shape.ts';
import type { Style } from '../../dieline/style.ts';
import { describeElement } from '../../dieline/svg-names.ts';
import type { SvgContext, SvgVisitor, SvgWalk } from '../../dieline/svg-walk.ts';
import type { XmlElement } from '../../dieline/xml.ts';
import { areaFactor, mapPath, scaling, type Affine } from '../../geometry/affine.ts';
import type { CurvePath } from '../../geometry/curve.ts';
import type { Box } from '../../geometry/point.ts';
import { pathConstruction } from '../pdf-operators.ts';
import { plain } from '../plain.ts';
import { readColour, readInk, shownChannels, type Colour, type NamedInk } from './colours.ts';
import { createEffects } from './effects.ts';
import { drawImage, type Images } from './images.ts';
import { gradientPattern, lenders } from './paint-servers.ts';
import { clamped, shapeBox } from './shape-box.ts';
import { matrixOperands, precise, type Sheet } from './sheet.ts';
import { createStepByName } from './step-by-name.ts';
import { drawText, type Fonts } from './texts.ts';
import { tilingPattern } from './tiling.ts';

type Use = 'fill' | 'stroke';

interface Given {
  readonly sheet: Sheet;
  readonly collector: DrawingCollector;
  readonly images: Images;
  readonly fonts: Fonts;
  readonly inks: readonly NamedInk[];
}

const WHITE: Colour = { space: 'DeviceGray', components: [1], alpha: 1 };

/** Paints what a walk through an SVG meets. The walk is lent once it stands: paint servers need it. */
export function createPainter({ sheet, collector, images, fonts, inks }: Given) {
  const { emit } = sheet;
  const stepNamed = createStepByName();
  const missingFonts = new Map<string, string>();
  const stepsLeftOut = new Map<string, number>();
  let mixed = 0;
  /** While a clip path is drawn, everything is white. */
  let isClip = false;
  let walk: SvgWalk;

  const notKept = (element: XmlElement, what: string) => collector.once('artwork-part-not-kept', 'warning', `${describeElement(element, [])}: ${what}`, { what });

  /** Sets the paint for filling or stroking; false where nothing is painted. `box` is in user units. */
  const setPaint = (element: XmlElement, context: SvgContext, style: Style, use: Use, box: () => Box): boolean => {
    const { inherited } = style;
    if (isClip) {
      if (use === 'fill') sheet.setColour(WHITE, 'fill');
      return use === 'fill';
    }
    const text = inherited[use]!.trim();
    const opacity = clamped(Number(inherited[`${use}-opacity`]));
    const [, link, otherwise = 'none'] = /^url\(\s*["']?([^"')]*)["']?\s*\)\s*(.*)$/.exec(text) ?? [];
    const paint = link === undefined ? solid(element, context, text, inherited['color']!) : served(element, { ...context, style }, link, otherwise, use, box);
    if (!paint) return false;
    const alpha = opacity * ('space' in paint ? paint.alpha : 1);
    if (alpha === 0) return false;
    if (alpha < 1) sheet.state(use === 'fill' ? { ca: alpha } : { CA: alpha });
    if (!('space' in paint)) return true;
    if (paint.space === 'DeviceRGB') mixed++;
    sheet.setColour(paint, use);
    return true;
  };

  const solid = (element: XmlElement, { following }: Pick<SvgContext, 'following'>, text: string, current: string): Colour | undefined => {
    if (text === 'none' || text === 'transparent') return undefined;
    const colour = readColour(text.toLowerCase() === 'currentcolor' ? current : text, inks);
    if (!colour) {
      notKept(element, `the colour ${text.slice(0, 40)}`);
      return undefined;
    }
    const ink = inkAround(element, following);
    return ink === undefined ? colour : { ...readInk(ink, shownChannels({ ...colour, ...(colour.space === 'Separation' && { components: [1] }) })), alpha: colour.alpha };
  };

  /** A gradient or pattern is set here already. */
  const served = (element: XmlElement, context: SvgContext, link: string, otherwise: string, use: Use, box: () => Box): Colour | { readonly pattern: PDFRef } | undefined => {
    const server = walk.target(link);
    const inherited = context.style.inherited;
    if (server?.name === 'linearGradient' || server?.name === 'radialGradient') {
      if (lenders(server, walk).some(({ attributes: { spreadMethod } }) => spreadMethod === 'repeat' || spreadMethod === 'reflect')) notKept(server, 'the repeats of a gradient');
      const gradient = gradientPattern(server, box(), context, sheet, walk, inks);
      if (!gradient || 'space' in gradient) return gradient;
      if (gradient.alpha) {
        const { minX, minY, maxX, maxY } = sheet.box;
        const shaded = sheet.capture(() => {
          sheet.setPattern(gradient.alpha!, 'fill');
          emit(`${plain(minX)} ${plain(minY)} ${plain(maxX - minX)} ${plain(maxY - minY)} re f`);
        });
        sheet.softMask(sheet.form(shaded, 'DeviceGray'), 'Luminosity');
      }
      if (gradient.isRgb) mixed++;
      sheet.setPattern(gradient.pattern, use);
      return gradient;
    }
    if (server?.name === 'pattern') {
      const pattern = tilingPattern(server, context, box(), { sheet, walk, notKept });
      if (pattern) sheet.setPattern(pattern, use);
      return pattern && { pattern };
    }
    if (otherwise === 'none' || otherwise === '') notKept(element, `the ${use} ${link.slice(0, 40)}`);
    return solid(element, context, otherwise || 'none', inherited['color']!);
  };

  const stepOf = ({ levels, style: { inherited } }: SvgContext) => stepNamed(levels, inherited['fill'] !== 'none');

  const shape: SvgVisitor['shape'] = (element, context, outer) => {
    const { style, map } = context;
    if (style.inherited['visibility'] !== 'visible') return;
    const step = isClip ? undefined : stepOf(context);
    if (step !== undefined) return void stepsLeftOut.set(step, (stepsLeftOut.get(step) ?? 0) + 1);
    const read = readShape(element, style, context.viewport);
    if (read.fault !== undefined) collector.once('shape-not-read', 'warning', describeElement(element, outer.levels), { fault: read.fault });
    if (read.paths.length === 0) return;
    if ([style.inherited['marker-start'], style.inherited['marker-end']].some((marker) => marker!.startsWith('url('))) notKept(element, 'its markers');
    const own = read.paths.map(({ curves }) => curves);
    const box = () => shapeBox(own)!;
    paintShape(element, context, 'fill', box, () => {
      const rule = style.inherited[isClip ? 'clip-rule' : 'fill-rule'];
      emit(`${pathConstruction(own.map((path) => mapPath(map, path)))}\n${rule === 'evenodd' ? 'f*' : 'f'}`);
    });
    if (widthOf(context) > 0) paintShape(element, context, 'stroke', box, () => emitStroke(own, context));
  };

  const paintShape = (element: XmlElement, context: SvgContext, use: Use, box: () => Box, draw: () => void): void => {
    const content = sheet.capture(() => {
      if (setPaint(element, context, context.style, use, box)) draw();
    });
    if (content.trimEnd().endsWith('f') || content.trimEnd().endsWith('f*') || content.trimEnd().endsWith('S')) emit(`q\n${content}\nQ`);
  };

  const widthOf = ({ style, viewport }: SvgContext) => inPixels(parseSvgLength(style.inherited['stroke-width']) ?? { value: 0, unit: '' }, viewport.width);

  /** Where user units are stretched unevenly the pen is so too. */
  const emitStroke = (own: readonly CurvePath[], context: SvgContext): void => {
    const { map, viewport, style: { inherited } } = context;
    const scale = Math.sqrt(Math.abs(areaFactor(map)));
    const even = isSimilarity(map);
    const dash = inherited['stroke-dasharray'] === 'none' ? [] : inherited['stroke-dasharray']!.split(/[\s,]+/).map((word) => inPixels(parseSvgLength(word) ?? { value: NaN, unit: '' }, viewport.width));
    const usable = dash.length > 0 && dash.every((value) => value >= 0) && dash.some((value) => value > 0) ? dash : [];
    const [offset] = parseNumbers(inherited['stroke-dashoffset']!.replace(/px$/, '')) ?? [0];
    emit(`${plain(widthOf(context) * scale)} w ${CAPS[inherited['stroke-linecap']!] ?? 0} J ${JOINS[inherited['stroke-linejoin']!] ?? 0} j ${precise(Math.max(1, Number(inherited['stroke-miterlimit']) || 4))} M [${usable.map((value) => plain(value * scale)).join(' ')}] ${plain((offset ?? 0) * scale)} d`);
    if (even) return emit(`${pathConstruction(own.map((path) => mapPath(map, path)))}\nS`);
    const { a, b, c, d, e, f } = map;
    emit(`${matrixOperands({ a: a / scale, b: b / scale, c: c / scale, d: d / scale, e, f })} cm\n${pathConstruction(own.map((path) => mapPath(scaling(scale), path)))}\nS`);
  };

  const text: SvgVisitor['text'] = (element, context) => {
    if (stepOf(context) !== undefined) return;
    drawText(element, context, {
      fonts, sheet, walk, leftOut: notKept,
      missing: (font, content) => void (missingFonts.has(font) || missingFonts.set(font, content)),
      paint: (owner, style) => {
        const box = () => ({ minX: 0, minY: 0, maxX: 0, maxY: 0 });
        const filled = setPaint(owner, context, style, 'fill', box);
        const stroked = !isClip && style.inherited['stroke'] !== 'none' && setPaint(owner, context, style, 'stroke', box);
        if (stroked) emit(`${plain(widthOf({ ...context, style }) * Math.sqrt(Math.abs(areaFactor(context.map))))} w`);
        return filled && stroked ? 2 : filled ? 0 : stroked ? 1 : undefined;
      },
    });
  };

  const image: SvgVisitor['image'] = (element, context) => {
    const held = images.get(element);
    if (held) drawImage(element, held, context, sheet);
  };

  /** What was met, once for each matter. */
  const said = (): Issue[] => [
    ...[...missingFonts].map(([font, text]): Issue => ({ code: 'artwork-font-not-in-svg', severity: 'warning', facts: { font: font.slice(0, 60), text: text.slice(0, 40) } })),
    ...(mixed > 0 ? [{ code: 'artwork-rgb', severity: 'warning', facts: { count: mixed } } as const] : []),
    ...(stepsLeftOut.size > 0 ? [{ code: 'artwork-steps-left-out', severity: 'note', facts: { count: [...stepsLeftOut.values()].reduce((sum, count) => sum + count, 0), steps: [...stepsLeftOut.keys()].join(', ') } } as const] : []),
  ];

  const inWhite = (draw: () => void): void => {
    const outer = isClip;
    isClip = true;
    draw();
    isClip = outer;
  };
  const visitor: SvgVisitor = { shape, text, image, around: createEffects({ sheet, walk: () => walk, notKept, inWhite }) };
  return { visitor, said, lend: (lent: SvgWalk) => void (walk = lent) };
}

const CAPS: Readonly<Record<string, number>> = { butt: 0, round: 1, square: 2 };
const JOINS: Readonly<Record<string, number>> = { miter: 0, round: 1, bevel: 2 };

/** The ink named on the element, on a group around it, or on the `use` that brings it here. */
function inkAround(element: XmlElement, following: readonly XmlElement[]): string | undefined {
  for (const start of [element, ...following.toReversed()]) {
    for (let at: XmlElement | undefined = start; at; at = at.parent) {
      const ink = at.attributes['data-ink']?.trim();
      if (ink) return ink;
    }
  }
  return undefined;
}

function isSimilarity({ a, b, c, d }: Affine): boolean {
  const scale = a * a + b * b;
  return Math.abs(scale - c * c - d * d) <= 1e-6 * scale && Math.abs(a * c + b * d) <= 1e-6 * scale;
}

