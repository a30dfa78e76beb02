import { parseTransform } from '../../dieline/transform-list.ts';
import { readShape, SHAPES } from '../../dieline/shape.ts';
import { ROOT_STYLE } from '../../dieline/style.ts';
import type { SvgContext, SvgVisitor, SvgWalk } from '../../dieline/svg-walk.ts';
import type { XmlElement } from '../../dieline/xml.ts';
import { areaFactor, compose, mapPath, reversePath, translation } from '../../geometry/affine.ts';
import type { CurvePath } from '../../geometry/curve.ts';
import { flattenPath } from '../../geometry/flatten.ts';
import type { Box } from '../../geometry/point.ts';
import { pathConstruction } from '../pdf-operators.ts';
import { boxMap } from './paint-servers.ts';
import { clamped, shapeBox } from './shape-box.ts';
import type { Sheet } from './sheet.ts';

interface Lent {
  readonly sheet: Sheet;
  readonly walk: () => SvgWalk;
  /** Told what cannot be kept. */
  readonly notKept: (element: XmlElement, what: string) => void;
  /** Draws all shapes in white, whatever they are painted with. */
  readonly inWhite: (draw: () => void) => void;
}

/** What an element does as a whole: opacity, mixing, clip paths and masks, all as vectors. */
export function createEffects({ sheet, walk, notKept, inWhite }: Lent): NonNullable<SvgVisitor['around']> {
  const { emit } = sheet;
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
    return shapeBox(readShape(element, context.style, context.viewport).paths.map(({ curves }) => curves));
  };

  /** The content of a clip path or mask in the axes of what it is put on; undefined where it goes by a box that is not known. */
  const within = (element: XmlElement, context: SvgContext, holder: XmlElement, units: string): SvgContext | undefined => {
    const map = holder.name === 'clipPath' ? compose(context.map, parseTransform(holder.attributes['transform'] ?? '') ?? translation(0, 0)) : context.map;
    const inner: SvgContext = { ...context, style: walk().styleOf(holder, ROOT_STYLE), map, following: [...context.following, holder] };
    if (holder.attributes[units] !== 'objectBoundingBox') return inner;
    const box = boxOfElement(element, context);
    return box && { ...inner, map: compose(map, boxMap(box)) };
  };

  const holderOf = (element: XmlElement, context: SvgContext, link: string, name: string): XmlElement | undefined => {
    const holder = walk().target(link);
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
    const content = sheet.capture(() => inWhite(() => walk().visitChildren(holder, inner)));
    sheet.softMask(sheet.form(content, 'DeviceGray'), 'Luminosity');
  };

  /** A shape of a clip path that clips by its outline alone, millimetres; undefined for anything else. */
  const clipShape = (element: XmlElement, context: SvgContext): { readonly paths: readonly CurvePath[]; readonly isEvenOdd: boolean } | undefined => {
    if (!SHAPES.has(element.name)) return undefined;
    const style = walk().styleOf(element, context.style);
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
    const form = sheet.form(sheet.capture(() => walk().visitChildren(holder, inner)), 'DeviceRGB');
    sheet.softMask(form, byAlpha ? 'Alpha' : 'Luminosity');
  };

  return around;
}

/** CSS names of PDF's blend modes. */
const BLENDS: Readonly<Record<string, string>> = {
  normal: 'Normal', multiply: 'Multiply', screen: 'Screen', overlay: 'Overlay', darken: 'Darken', lighten: 'Lighten', 'color-dodge': 'ColorDodge', 'color-burn': 'ColorBurn',
  'hard-light': 'HardLight', 'soft-light': 'SoftLight', difference: 'Difference', exclusion: 'Exclusion', hue: 'Hue', saturation: 'Saturation', color: 'Color', luminosity: 'Luminosity',
};

/** The link of `url(#…)`. */
function linked(value: string | undefined): string | undefined {
  return /^url\(\s*["']?([^"')]*)["']?\s*\)/.exec(value?.trim() ?? '')?.[1];
}

function counterClockwise(path: CurvePath): CurvePath {
  const points = flattenPath(path, 0.01);
  const twice = points.reduce((sum, { x, y }, i) => sum + x * points[(i + 1) % points.length]!.y - y * points[(i + 1) % points.length]!.x, 0);
  return twice < 0 ? reversePath(path) : path;
}
