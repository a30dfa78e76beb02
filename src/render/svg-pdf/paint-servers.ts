import type { PDFObject, PDFRef } from '@cantoo/pdf-lib';
import { inPixels, parseSvgLength } from '../../dieline/length.ts';
import type { SvgContext, SvgWalk } from '../../dieline/svg-walk.ts';
import { parseTransform } from '../../dieline/transform-list.ts';
import { attributeByLocalName, type XmlElement } from '../../dieline/xml.ts';
import { compose, scaling, translation, type Affine } from '../../geometry/affine.ts';
import type { Box } from '../../geometry/point.ts';
import { readColour, readInk, shownChannels, type Colour, type NamedInk } from './colours.ts';
import { matrixOperands, type Sheet } from './sheet.ts';

interface Stop {
  readonly offset: number;
  readonly colour: Colour;
}

/** A gradient as a pattern, with a second one in grey for its alpha where it is not all opaque. */
export interface GradientPattern {
  readonly pattern: PDFRef;
  readonly alpha: PDFRef | undefined;
  /** Whether its colours are mixed as red, green and blue. */
  readonly isRgb: boolean;
}

/** Gradients that borrow from one another, at most. */
const DEEPEST = 16;

/** The element and those it borrows from by `href`, nearest first. */
export function lenders(element: XmlElement, { target }: Pick<SvgWalk, 'target'>): XmlElement[] {
  const chain = [element];
  while (chain.length < DEEPEST) {
    const next = target(attributeByLocalName(chain.at(-1)!, 'href')?.trim() ?? '');
    if (!next || chain.includes(next)) break;
    chain.push(next);
  }
  return chain;
}

/**
 * The pattern of a gradient for a shape of box `box` in its user units (SVG 2, 14.2). Undefined where nothing is painted: no
 * stops, or a box without area. A spread other than `pad` is padded.
 */
export function gradientPattern(element: XmlElement, box: Box, { map, viewport, style }: SvgContext, sheet: Sheet, walk: SvgWalk, inks: readonly NamedInk[]): GradientPattern | Colour | undefined {
  const chain = lenders(element, walk);
  const attribute = (name: string) => chain.find(({ attributes }) => attributes[name] !== undefined)?.attributes[name];
  const source = chain.find(({ children }) => children.some(({ name }) => name === 'stop'));
  const stops = stopsOf(source, walk, style, inks);
  if (stops.length === 0) return undefined;
  if (stops.length === 1) return stops[0]!.colour;
  const byBox = attribute('gradientUnits') !== 'userSpaceOnUse';
  if (byBox && !(box.maxX > box.minX && box.maxY > box.minY)) return undefined;
  const along = (name: string, missing: string, whole: number) => {
    const length = parseSvgLength(attribute(name) ?? missing) ?? parseSvgLength(missing)!;
    return inPixels(length, byBox ? 1 : whole);
  };
  const { width, height } = viewport;
  const diagonal = Math.sqrt((width ** 2 + height ** 2) / 2);
  const coordinates = element.name === 'linearGradient'
    ? [along('x1', '0%', width), along('y1', '0%', height), along('x2', '100%', width), along('y2', '0%', height)]
    : radialCoordinates(along, attribute, { width, height, diagonal });
  const own = parseTransform(attribute('gradientTransform') ?? '') ?? translation(0, 0);
  const placed = compose(byBox ? compose(map, boxMap(box)) : map, own);
  const pattern = (colours: readonly Stop[], space: PDFObject): PDFRef => {
    const { context } = sheet;
    const shading = { ShadingType: element.name === 'linearGradient' ? 2 : 3, ColorSpace: space, Coords: coordinates, Extend: [true, true], Function: stitched(colours) };
    return sheet.add(context.obj({ Type: 'Pattern', PatternType: 2, Matrix: matrixOf(placed), Shading: shading } as never));
  };
  const uniform = inOneSpace(stops);
  const isOpaque = stops.every(({ colour }) => colour.alpha === 1);
  const alphas = stops.map(({ offset, colour }): Stop => ({ offset, colour: { space: 'DeviceGray', components: [colour.alpha], alpha: 1 } }));
  return { pattern: pattern(uniform, sheet.spaceObject(uniform[0]!.colour)), alpha: isOpaque ? undefined : pattern(alphas, sheet.spaceObject(alphas[0]!.colour)), isRgb: uniform[0]!.colour.space === 'DeviceRGB' };
}

export function matrixOf(map: Affine): number[] {
  return matrixOperands(map).split(' ').map(Number);
}

/** The unit square onto a box. */
export function boxMap({ minX, minY, maxX, maxY }: Box): Affine {
  return compose(translation(minX, minY), scaling(maxX - minX, maxY - minY));
}

function radialCoordinates(along: (name: string, missing: string, whole: number) => number, attribute: (name: string) => string | undefined, { width, height, diagonal }: { width: number; height: number; diagonal: number }): number[] {
  const [cx, cy, r] = [along('cx', '50%', width), along('cy', '50%', height), along('r', '50%', diagonal)];
  const fx = attribute('fx') === undefined ? cx : along('fx', '50%', width);
  const fy = attribute('fy') === undefined ? cy : along('fy', '50%', height);
  return [fx, fy, along('fr', '0%', diagonal), cx, cy, r];
}

/** Offsets from 0 to 1, never falling. */
function stopsOf(source: XmlElement | undefined, { styleOf }: Pick<SvgWalk, 'styleOf'>, around: SvgContext['style'], inks: readonly NamedInk[]): Stop[] {
  let last = 0;
  return (source?.children ?? []).filter(({ name }) => name === 'stop').flatMap((stop): Stop[] => {
    const style = styleOf(stop, around);
    const [text, opacity] = [style.own['stop-color'] ?? 'black', Number(style.own['stop-opacity'] ?? 1)];
    const colour = readColour(text.toLowerCase() === 'currentcolor' ? style.inherited['color']! : text, inks);
    if (!colour) return [];
    const length = parseSvgLength(stop.attributes['offset']);
    const offset = length ? (length.unit === '%' ? length.value / 100 : length.value) : 0;
    last = Math.min(1, Math.max(last, offset));
    const ink = stop.attributes['data-ink'];
    const painted = ink === undefined ? colour : { ...readInk(ink, shownChannels(colour)), alpha: colour.alpha };
    return [{ offset: last, colour: { ...painted, alpha: painted.alpha * (Number.isFinite(opacity) ? Math.min(1, Math.max(0, opacity)) : 1) } }];
  });
}

/** Stops of one device's colours, or of one ink and white, stay so; any others are mixed as they look. */
function inOneSpace(stops: readonly Stop[]): Stop[] {
  const ink = stops.find(({ colour }) => colour.ink)?.colour.ink;
  const isWhite = ({ space, components }: Colour) => space === 'DeviceGray' && components[0] === 1;
  if (ink && stops.every(({ colour }) => colour.ink?.name === ink.name || isWhite(colour))) {
    return stops.map(({ offset, colour }) => ({ offset, colour: colour.ink ? colour : { space: 'Separation', components: [0], alpha: colour.alpha, ink } }));
  }
  const [{ colour: first }] = stops as [Stop];
  if (!ink && stops.every(({ colour }) => colour.space === first.space)) return [...stops];
  return stops.map(({ offset, colour }) => ({ offset, colour: { space: 'DeviceRGB', components: shownChannels(colour), alpha: colour.alpha } }));
}

/** From stop to stop in straight lines, over 0 to 1. */
function stitched(stops: readonly Stop[]): object {
  const [first, last] = [stops[0]!, stops.at(-1)!];
  const all = [...(first.offset > 0 ? [{ ...first, offset: 0 }] : []), ...stops, ...(last.offset < 1 ? [{ ...last, offset: 1 }] : [])];
  const pieces = all.slice(1).map((to, i) => ({ from: all[i]!, to })).filter(({ from, to }) => to.offset > from.offset);
  const functions = pieces.map(({ from, to }) => ({ FunctionType: 2, Domain: [0, 1], C0: [...from.colour.components], C1: [...to.colour.components], N: 1 }));
  if (functions.length === 1) return functions[0]!;
  return { FunctionType: 3, Domain: [0, 1], Functions: functions, Bounds: pieces.slice(1).map(({ from }) => from.offset), Encode: pieces.flatMap(() => [0, 1]) };
}
