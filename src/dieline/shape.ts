import { arcBetween, ellipseArc } from '../geometry/arc.ts';
import type { Curve, CurvePath } from '../geometry/curve.ts';
import { parsePathData } from '../geometry/path-data.ts';
import type { Point } from '../geometry/point.ts';
import { samePoint } from '../geometry/vector.ts';
import { inPixels, isPhysical, parseSvgLength } from './length.ts';
import { READING_LIMITS } from './limits.ts';
import type { Style } from './style.ts';
import type { Viewport } from './viewport.ts';
import { limitPassed, type XmlElement } from './xml.ts';

/** A basic shape or path as curves in its own user units, y down. */
export interface Shape {
  readonly paths: readonly Subpath[];
  /** Why the shape, or its rest, could not be read. */
  readonly fault?: string;
  /** Every length of it has a unit of its own (`20mm`), so that no assumption about user units touches it. */
  readonly physical: boolean;
}

export interface Subpath {
  readonly curves: CurvePath;
  readonly closed: boolean;
}

export const SHAPES: ReadonlySet<string> = new Set(['path', 'line', 'polyline', 'polygon', 'rect', 'circle', 'ellipse']);

export function readShape(element: XmlElement, style: Style, viewport: Viewport): Shape {
  const lengths = createLengths(element, style, viewport);
  switch (element.name) {
    case 'path':
      return readPath(element.attributes.d ?? '');
    case 'polyline':
      return readPoints(element.attributes.points ?? '', false);
    case 'polygon':
      return readPoints(element.attributes.points ?? '', true);
    case 'line': {
      const from = { x: lengths.x('x1'), y: lengths.y('y1') };
      const to = { x: lengths.x('x2'), y: lengths.y('y2') };
      return lengths.shape([{ curves: [{ kind: 'line', from, to }], closed: false }]);
    }
    case 'rect':
      return lengths.shape(rectangle(lengths));
    case 'circle': {
      const r = lengths.diagonal('r');
      return lengths.shape(oval(lengths.x('cx'), lengths.y('cy'), r, r));
    }
    default: {
      const rx = lengths.optional('rx', 'x') ?? lengths.optional('ry', 'y') ?? 0;
      return lengths.shape(oval(lengths.x('cx'), lengths.y('cy'), rx, lengths.optional('ry', 'y') ?? rx));
    }
  }
}

/** The element's lengths in user units, remembering what went wrong and whether any had no unit. */
function createLengths(element: XmlElement, style: Style, viewport: Viewport) {
  let fault: string | undefined;
  let physical = true;
  const wholes = { x: viewport.width, y: viewport.height, diagonal: Math.sqrt((viewport.width ** 2 + viewport.height ** 2) / 2) };
  const optional = (name: string, axis: keyof typeof wholes): number | undefined => {
    const text = style.own[name] ?? element.attributes[name];
    if (text === undefined || text === 'auto') return undefined;
    const length = parseSvgLength(text);
    if (!length) {
      fault ??= `${name}="${text}"`;
      return undefined;
    }
    if (length.value !== 0 && !isPhysical(length)) physical = false;
    return inPixels(length, wholes[axis]);
  };
  return {
    optional,
    x: (name: string) => optional(name, 'x') ?? 0,
    y: (name: string) => optional(name, 'y') ?? 0,
    diagonal: (name: string) => optional(name, 'diagonal') ?? 0,
    shape: (paths: readonly Subpath[]): Shape => ({ paths: fault === undefined ? paths : [], physical, ...(fault === undefined ? {} : { fault }) }),
  };
}

/** Read up to the first mistake, as SVG asks; what follows is lost and said. */
function readPath(data: string): Shape {
  if (data.length > READING_LIMITS.pathCharacters) throw limitPassed('characters of path data', READING_LIMITS.pathCharacters);
  const { paths, faultAt } = parsePathData(data);
  return {
    paths: paths.map((curves) => ({ curves, closed: samePoint(curves[0].from, curves[curves.length - 1].to) })),
    physical: false,
    ...(faultAt === undefined ? {} : { fault: `"${data.slice(faultAt, faultAt + 12)}", character ${faultAt + 1}` }),
  };
}

/** Numbers and separators of `points` are those of path data. */
function readPoints(points: string, closed: boolean): Shape {
  return points.trim() === '' ? { paths: [], physical: false } : readPath(`M${points}${closed ? 'Z' : ''}`);
}

function polyline(points: readonly Point[]): Curve[] {
  return points.slice(1).map((to, i) => ({ kind: 'line', from: points[i], to }));
}

/** The whole ellipse in four quarters, from its tip on the right. */
export function oval(cx: number, cy: number, radiusX: number, radiusY: number): Subpath[] {
  if (!(radiusX > 0 && radiusY > 0)) return [];
  const ellipse = { centre: { x: cx, y: cy }, radiusX, radiusY, tilt: 0 };
  const quarters = [0, 1, 2, 3].map((quarter) => ellipseArc(ellipse, (quarter * Math.PI) / 2, Math.PI / 2));
  const tips: Point[] = [{ x: cx + radiusX, y: cy }, { x: cx, y: cy + radiusY }, { x: cx - radiusX, y: cy }, { x: cx, y: cy - radiusY }];
  return [{ curves: quarters.map((arc, i) => ({ ...arc, from: tips[i], to: tips[(i + 1) % 4] })), closed: true }];
}

/** SVG 2, 10.2: one radius stands for both, none is larger than half its side. */
function rectangle(lengths: ReturnType<typeof createLengths>): Subpath[] {
  const x = lengths.x('x');
  const y = lengths.y('y');
  const width = lengths.x('width');
  const height = lengths.y('height');
  if (!(width > 0 && height > 0)) return [];
  const givenX = lengths.optional('rx', 'x');
  const givenY = lengths.optional('ry', 'y');
  const rx = Math.min(Math.max(givenX ?? givenY ?? 0, 0), width / 2);
  const ry = Math.min(Math.max(givenY ?? givenX ?? 0, 0), height / 2);
  if (rx === 0 || ry === 0) {
    const corners = [{ x, y }, { x: x + width, y }, { x: x + width, y: y + height }, { x, y: y + height }, { x, y }];
    return [{ curves: polyline(corners), closed: true }];
  }
  const right = x + width;
  const bottom = y + height;
  const points: Point[] = [
    { x: x + rx, y }, { x: right - rx, y }, { x: right, y: y + ry }, { x: right, y: bottom - ry },
    { x: right - rx, y: bottom }, { x: x + rx, y: bottom }, { x, y: bottom - ry }, { x, y: y + ry },
  ];
  const curves = points.flatMap((from, i): Curve[] => {
    const to = points[(i + 1) % points.length];
    if (samePoint(from, to)) return [];
    if (i % 2 === 0) return [{ kind: 'line', from, to }];
    return [arcBetween({ from, to, radiusX: rx, radiusY: ry, tilt: 0, large: false, positive: true })!];
  });
  return [{ curves, closed: true }];
}
