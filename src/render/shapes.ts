import { ellipseArc } from '../geometry/arc.ts';
import type { CurvePath, LineCurve } from '../geometry/curve.ts';
import type { Point } from '../geometry/point.ts';
import type { Look, Paint, PathItem, TextItem } from './scene.ts';

/** Small makers of display-list items. Millimetres. */
export function line(from: Point, to: Point): CurvePath {
  return [{ kind: 'line', from, to }];
}

/** Lines through the points; closed back to the first where asked. */
export function polyline(points: readonly Point[], closed = false): CurvePath {
  const curves: LineCurve[] = [];
  for (let i = 0; i + 1 < points.length; i++) curves.push({ kind: 'line', from: points[i]!, to: points[i + 1]! });
  if (closed && points.length > 1) curves.push({ kind: 'line', from: points.at(-1)!, to: points[0]! });
  return curves;
}

export function rectangle(minX: number, minY: number, maxX: number, maxY: number): CurvePath {
  return polyline([{ x: minX, y: minY }, { x: maxX, y: minY }, { x: maxX, y: maxY }, { x: minX, y: maxY }], true);
}

export function circle(centre: Point, radius: number): CurvePath {
  return [ellipseArc({ centre, radiusX: radius, radiusY: radius, tilt: 0 }, 0, 2 * Math.PI)];
}

export function drawn(paths: readonly CurvePath[], look: Look): PathItem {
  return { kind: 'path', paths, look };
}

export function label(text: string, at: Point, size: number, options: Partial<Pick<TextItem, 'anchor' | 'turn' | 'bold' | 'paint'>> = {}): TextItem {
  const paint: Paint = 'ink';
  return { kind: 'text', text, at, size, anchor: 'start', turn: 0, bold: false, paint, ...options };
}
