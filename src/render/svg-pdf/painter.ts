import type { PDFRef } from '@cantoo/pdf-lib';
import type { Issue } from '../../base/issue.ts';
import type { DrawingCollector } from '../../dieline/drawing-collector.ts';
import { inPixels, parseNumbers, parseSvgLength } from '../../dieline/length.ts';
import { readShape, SHAPES } from '../../dieline/shape.ts';
import { ROOT_STYLE, type Style } from '../../dieline/style.ts';
import { describeElement } from '../../dieline/svg-names.ts';
import type { SvgContext, SvgVisitor, SvgWalk } from '../../dieline/svg-walk.ts';
import { parseTransform } from '../../dieline/transform-list.ts';
import { fitViewBox, viewBoxOf } from '../../dieline/viewport.ts';
import type { XmlElement } from '../../dieline/xml.ts';
import { areaFactor, compose, mapPath, reversePath, scaling, translation, type Affine } from '../../geometry/affine.ts';
import type { CurvePath } from '../../geometry/curve.ts';
import { flattenPath } from '../../geometry/flatten.ts';
import { boxOf, type Box } from '../../geometry/point.ts';
import { pathConstruction } from '../pdf-operators.ts';
import { plain } from '../plain.ts';
import { readColour, readInk, shownChannels, type Colour, type NamedInk } from './colours.ts';
import { drawImage, type Images } from './images.ts';
import { boxMap, gradientPattern, lenders, matrixOf } from './paint-servers.ts';
import { matrixOperands, precise, type Sheet } from './sheet.ts';
import { createStepByName } from './step-by-name.ts';
import { drawText, type Fonts } from './texts.ts';

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
  const { emit, context: pdf } = sheet;
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
      const pattern = tiling(server, context, box());
      if (pattern) sheet.setPattern(pattern, use);
      return pattern && { pattern };
    }
    if (otherwise === 'none' || otherwise === '') notKept(element, `the ${use} ${link.slice(0, 40)}`);
    return solid(element, context, otherwise || 'none', inherited['color']!);
  };

  /** SVG 2, 14.3. The cell's content is drawn in the pattern's own space. */
  const tiling = (element: XmlElement, context: SvgContext, box: Box): PDFRef | undefined => {
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
    return sheet.add(pdf.flateStream(content, {
      Type: 'Pattern', PatternType: 1, PaintType: 1, TilingType: 1, BBox: [0, 0, width, height], XStep: width, YStep: height, Resources: sheet.resources, Matrix: matrixOf(placed),
    } as never));
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
    const box = () => boxOf(own.flatMap((path) => flattenPath(path, BOX_SHARE * Math.max(1e-3, sizeOf(path)))));
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

  const around: SvgVisitor['around'] = (element, context, draw) => {
    const { own } = context.style;
    const opacity = own['opacity'] === undefined ? 1 : clamped(Number(own['opacity']));
    const blend = BLENDS[own['mix-blend-mode'] ?? 'normal'];
    const [clip, mask] = [linked(own['clip-path']), linked(own['mask'])];
    if (linked(own['filter']) !== undefined) notKept(element, 'its filter, which would have to be rasterised');
    if (blend === undefined) notKept(element, `its mixing by ${own['mix-blend-mode']}`);
    if (clip === undefined && mask === undefined && opacity === 1 && (blend ?? 'Normal') === 'Normal') return draw();
    emit('q');
    if (clip !== undefined) setClip(element, context, clip);
    if (mask === undefined && opacity === 1 && (blend ?? 'Normal') === 'Normal') draw();
    else {
      const whole = sheet.form(sheet.capture(draw), 'inherited');
      if (mask !== undefined) setMask(element, context, mask);
      sheet.state({ ca: opacity, CA: opacity, BM: blend ?? 'Normal' });
      sheet.draw(whole);
    }
    emit('Q');
  };

  const boxOfElement = (element: XmlElement, context: SvgContext): Box | undefined => {
    if (!SHAPES.has(element.name)) return undefined;
    const points = readShape(element, context.style, context.viewport).paths.flatMap(({ curves }) => flattenPath(curves, BOX_SHARE * Math.max(1e-3, sizeOf(curves))));
    return points.length > 0 ? boxOf(points) : undefined;
  };

  /** The content of a clip path or mask in the axes of what it is put on; undefined where it goes by a box that is not known. */
  const within = (element: XmlElement, context: SvgContext, holder: XmlElement, units: string): SvgContext | undefined => {
    const map = holder.name === 'clipPath' ? compose(context.map, parseTransform(holder.attributes['transform'] ?? '') ?? translation(0, 0)) : context.map;
    const inner: SvgContext = { ...context, style: walk.styleOf(holder, ROOT_STYLE), map, following: [...context.following, holder] };
    if (holder.attributes[units] !== 'objectBoundingBox') return inner;
    const box = boxOfElement(element, context);
    return box && { ...inner, map: compose(map, boxMap(box)) };
  };

  const holderOf = (element: XmlElement, context: SvgContext, link: string, name: string): XmlElement | undefined => {
    const holder = walk.target(link);
    if (holder?.name === name && !context.following.includes(holder)) return holder;
    notKept(element, `its ${name} ${link.slice(0, 40)}`);
    return undefined;
  };

  const setClip = (element: XmlElement, context: SvgContext, link: string): void => {
    const holder = holderOf(element, context, link, 'clipPath');
    const inner = holder && within(element, context, holder, 'clipPathUnits');
    if (!holder) return;
    if (!inner) return notKept(element, 'its clip path by the box of a group');
    const children = holder.children.filter(({ name, svg }) => svg && name !== 'title' && name !== 'desc');
    const shapes = children.map((child) => clipShape(child, inner));
    const plainly = shapes.every((found) => found !== undefined) && linked(holder.attributes['clip-path']) === undefined;
    const single = shapes.length === 1 || shapes.every((found) => found?.paths.length === 1);
    if (plainly && single) {
      const [only] = shapes;
      const paths = shapes.length === 1 ? only!.paths : shapes.map((found) => counterClockwise(found!.paths[0]!));
      if (paths.length === 0) return emit('0 0 0 0 re W n');
      return emit(`${pathConstruction(paths)}\n${shapes.length === 1 && only!.isEvenOdd ? 'W*' : 'W'} n`);
    }
    const outer = isClip;
    isClip = true;
    const form = sheet.form(sheet.capture(() => walk.visitChildren(holder, inner)), 'DeviceGray');
    isClip = outer;
    sheet.softMask(form, 'Luminosity');
  };

  /** A shape of a clip path that clips by its outline alone, millimetres; undefined for anything else. */
  const clipShape = (element: XmlElement, context: SvgContext): { readonly paths: readonly CurvePath[]; readonly isEvenOdd: boolean } | undefined => {
    if (!SHAPES.has(element.name)) return undefined;
    const style = walk.styleOf(element, context.style);
    const transform = style.own['transform'];
    const own = transform === undefined ? translation(0, 0) : parseTransform(transform);
    if (!own || areaFactor(own) === 0 || style.own['transform-origin'] !== undefined || linked(style.own['clip-path']) !== undefined) return undefined;
    const { paths } = readShape(element, style, context.viewport);
    const isShown = style.own['display'] !== 'none' && style.inherited['visibility'] === 'visible';
    return { paths: isShown ? paths.map(({ curves }) => mapPath(compose(context.map, own), curves)) : [], isEvenOdd: style.inherited['clip-rule'] === 'evenodd' };
  };

  const setMask = (element: XmlElement, context: SvgContext, link: string): void => {
    const holder = holderOf(element, context, link, 'mask');
    if (!holder) return;
    const inner = within(element, context, holder, 'maskContentUnits');
    if (!inner) return notKept(element, 'its mask by the box of a group');
    const byAlpha = /alpha/.test(holder.attributes['mask-type'] ?? holder.attributes['style'] ?? '');
    const form = sheet.form(sheet.capture(() => walk.visitChildren(holder, inner)), 'DeviceRGB');
    sheet.softMask(form, byAlpha ? 'Alpha' : 'Luminosity');
  };

  /** What was met, once for each matter. */
  const said = (): Issue[] => [
    ...[...missingFonts].map(([font, text]): Issue => ({ code: 'artwork-font-not-in-svg', severity: 'warning', facts: { font: font.slice(0, 60), text: text.slice(0, 40) } })),
    ...(mixed > 0 ? [{ code: 'artwork-rgb', severity: 'warning', facts: { count: mixed } } as const] : []),
    ...(stepsLeftOut.size > 0 ? [{ code: 'artwork-steps-left-out', severity: 'note', facts: { count: [...stepsLeftOut.values()].reduce((sum, count) => sum + count, 0), steps: [...stepsLeftOut.keys()].join(', ') } } as const] : []),
  ];

  const visitor: SvgVisitor = { shape, text, image, around };
  return { visitor, said, lend: (lent: SvgWalk) => void (walk = lent) };
}

/** Boxes of shapes are found by chords within this share of the shape's size. */
const BOX_SHARE = 1e-4;

function sizeOf(path: CurvePath): number {
  const { minX, minY, maxX, maxY } = boxOf(path.flatMap(({ from, to }) => [from, to]));
  return Math.max(maxX - minX, maxY - minY);
}

const CAPS: Readonly<Record<string, number>> = { butt: 0, round: 1, square: 2 };
const JOINS: Readonly<Record<string, number>> = { miter: 0, round: 1, bevel: 2 };

/** CSS names of PDF's blend modes. */
const BLENDS: Readonly<Record<string, string>> = {
  normal: 'Normal', multiply: 'Multiply', screen: 'Screen', overlay: 'Overlay', darken: 'Darken', lighten: 'Lighten', 'color-dodge': 'ColorDodge', 'color-burn': 'ColorBurn',
  'hard-light': 'HardLight', 'soft-light': 'SoftLight', difference: 'Difference', exclusion: 'Exclusion', hue: 'Hue', saturation: 'Saturation', color: 'Color', luminosity: 'Luminosity',
};

/** The link of `url(#…)`. */
function linked(value: string | undefined): string | undefined {
  return /^url\(\s*["']?([^"')]*)["']?\s*\)/.exec(value?.trim() ?? '')?.[1];
}

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

function counterClockwise(path: CurvePath): CurvePath {
  const points = flattenPath(path, 0.01);
  const twice = points.reduce((sum, { x, y }, i) => sum + x * points[(i + 1) % points.length]!.y - y * points[(i + 1) % points.length]!.x, 0);
  return twice < 0 ? reversePath(path) : path;
}

function clamped(value: number): number {
  return Number.isFinite(value) ? Math.min(1, Math.max(0, value)) : 1;
}
