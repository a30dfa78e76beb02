import { compose, scaling, translation, type Affine } from '../geometry/affine.ts';
import type { Dieline } from './dieline.ts';
import { isPhysical, parseNumbers, parseSvgLength, type SvgLength, SVG_UNIT_IN_MM } from './length.ts';
import type { XmlElement } from './xml.ts';

/** Size that percentages are of, user units. */
export interface Viewport {
  readonly width: number;
  readonly height: number;
}

interface ViewBox extends Viewport {
  readonly x: number;
  readonly y: number;
}

export function viewBoxOf(element: XmlElement): ViewBox | undefined {
  const numbers = parseNumbers(element.attributes.viewBox ?? '');
  if (numbers?.length !== 4 || numbers[2] <= 0 || numbers[3] <= 0) return undefined;
  const [x, y, width, height] = numbers;
  return { x, y, width, height };
}

/** Shares of the room left over, by the word of preserveAspectRatio. */
const ALIGNMENT: Readonly<Record<string, number>> = { Min: 0, Mid: 0.5, Max: 1 };

/** Maps a viewBox onto a place of the given size with its upper left corner at the origin (SVG 2, 8.2). */
export function fitViewBox(box: ViewBox, width: number, height: number, preserve: string | undefined): Affine {
  const [, alignX, alignY, meetOrSlice] = /^\s*(?:defer\s+)?(?:x(Min|Mid|Max)Y(Min|Mid|Max))(?:\s+(meet|slice))?\s*$/.exec(preserve ?? '') ?? ['', 'Mid', 'Mid', 'meet'];
  const scaleX = width / box.width;
  const scaleY = height / box.height;
  const origin = translation(-box.x, -box.y);
  if (preserve?.trim() === 'none') return compose(scaling(scaleX, scaleY), origin);
  const scale = meetOrSlice === 'slice' ? Math.max(scaleX, scaleY) : Math.min(scaleX, scaleY);
  const restX = (width - scale * box.width) * ALIGNMENT[alignX];
  const restY = (height - scale * box.height) * ALIGNMENT[alignY];
  return compose(translation(restX, restY), compose(scaling(scale), origin));
}

/** The outermost svg element: how its user units become millimetres on the page. */
export interface Page {
  /** User units to mm, y down, page corner at the origin. */
  readonly map: Affine;
  readonly scale: Dieline['scale'];
  readonly viewport: Viewport;
  /** Size on paper as far as the drawing says it, mm. */
  readonly size: { readonly width: number; readonly height: number } | undefined;
  /** A unit of the page's size that stands for no length in SVG, such as ft. */
  readonly unknownUnit?: string;
}

export function pageOf(root: XmlElement, givenScale: number | undefined): Page {
  const unknown = [root.attributes.width, root.attributes.height].map((text) => /^\s*\d[\d.]*\s*([a-z]{1,12})\s*$/i.exec(text ?? '')?.[1]).find((unit) => unit !== undefined && SVG_UNIT_IN_MM[unit.toLowerCase()] === undefined);
  return { ...scaledPage(root, givenScale), ...(unknown !== undefined && { unknownUnit: unknown }) };
}

function scaledPage(root: XmlElement, givenScale: number | undefined): Page {
  const box = viewBoxOf(root);
  const width = sizeOf(root.attributes.width);
  const height = sizeOf(root.attributes.height);
  const origin = translation(-(box?.x ?? 0), -(box?.y ?? 0));
  if (givenScale !== undefined) {
    const size = box ? { width: box.width * givenScale, height: box.height * givenScale } : undefined;
    return { map: compose(scaling(givenScale), origin), scale: { mmPerUnit: givenScale, from: 'given scale' }, viewport: box ?? userSize(width, height), size };
  }
  if (!box || (!width && !height)) {
    const mmPerUnit = SVG_UNIT_IN_MM.px;
    const whole = box ?? userSize(width, height);
    const size = { width: whole.width * mmPerUnit, height: whole.height * mmPerUnit };
    return { map: compose(scaling(mmPerUnit), origin), scale: { mmPerUnit, from: 'assumed 96 per inch' }, viewport: whole, size: whole.width > 0 ? size : undefined };
  }
  const widthMm = width ? inMillimetres(width) : (inMillimetres(height!) / box.height) * box.width;
  const heightMm = height ? inMillimetres(height) : (inMillimetres(width!) / box.width) * box.height;
  const map = fitViewBox(box, widthMm, heightMm, root.attributes.preserveAspectRatio);
  const physical = [width, height].every((length) => !length || isPhysical(length));
  return { map, scale: { mmPerUnit: map.a, from: physical ? 'unit' : 'assumed 96 per inch' }, viewport: box, size: { width: widthMm, height: heightMm } };
}

/** A size that says something by itself: not a percentage, not zero. */
function sizeOf(text: string | undefined): SvgLength | undefined {
  const length = parseSvgLength(text);
  return length && length.value > 0 && (length.unit === '' || SVG_UNIT_IN_MM[length.unit] !== undefined) ? length : undefined;
}

function inMillimetres({ value, unit }: SvgLength): number {
  return value * SVG_UNIT_IN_MM[unit === '' ? 'px' : unit];
}

function userSize(width: SvgLength | undefined, height: SvgLength | undefined): Viewport {
  const inUnits = (length: SvgLength | undefined) => (length ? inMillimetres(length) / SVG_UNIT_IN_MM.px : 0);
  return { width: inUnits(width), height: inUnits(height) };
}
