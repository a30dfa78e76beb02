import type { ArcCurve, Curve } from './curve.ts';
import type { Point } from './point.ts';
import { between, cross, dot, minus, samePoint } from './vector.ts';

/** The ellipse of an arc, without the part of it that is meant. */
export type Ellipse = Pick<ArcCurve, 'centre' | 'radiusX' | 'radiusY' | 'tilt'>;

/** Point of the ellipse at a parameter angle. */
export function ellipsePoint({ centre, radiusX, radiusY, tilt }: Ellipse, angle: number): Point {
  const u = radiusX * Math.cos(angle);
  const v = radiusY * Math.sin(angle);
  const c = Math.cos(tilt);
  const s = Math.sin(tilt);
  return { x: centre.x + u * c - v * s, y: centre.y + u * s + v * c };
}

/** Derivative of `ellipsePoint` by its angle. */
export function ellipseVelocity(ellipse: Ellipse, angle: number): Point {
  return ellipsePoint({ ...ellipse, centre: { x: 0, y: 0 } }, angle + Math.PI / 2);
}

/** The arc from parameter angle `start` through `sweep` radians (counter-clockwise positive); 2π is the whole ellipse. */
export function ellipseArc(ellipse: Ellipse, start: number, sweep: number): ArcCurve {
  const from = ellipsePoint(ellipse, start);
  const to = Math.abs(sweep) === 2 * Math.PI ? from : ellipsePoint(ellipse, start + sweep);
  const { centre, radiusX, radiusY, tilt } = ellipse;
  return { kind: 'arc', from, to, centre, radiusX, radiusY, tilt, start, sweep };
}

/**
 * Part of a circle by its ends and its bulge, as DXF writes it: the tangent of a quarter of the swept angle, positive where
 * it runs counter-clockwise. A bulge of 0 gives a line.
 */
export function arcOfBulge(from: Point, to: Point, bulge: number): Curve {
  if (bulge === 0) return { kind: 'line', from, to };
  const half = { x: (to.x - from.x) / 2, y: (to.y - from.y) / 2 };
  const height = (1 - bulge * bulge) / (2 * bulge);
  const middle = between(from, to, 0.5);
  const centre = { x: middle.x - half.y * height, y: middle.y + half.x * height };
  const arm = minus(from, centre);
  const radius = Math.sqrt(dot(arm, arm));
  return { kind: 'arc', from, to, centre, radiusX: radius, radiusY: radius, tilt: 0, start: Math.atan2(arm.y, arm.x), sweep: 4 * Math.atan(bulge) };
}

export interface ArcEnds {
  readonly from: Point;
  readonly to: Point;
  readonly radiusX: number;
  readonly radiusY: number;
  /** Angle of the first half axis against x, radians. */
  readonly tilt: number;
  /** Of the two arcs in the wanted direction, the one over half a turn. */
  readonly large: boolean;
  /** Angles grow from `from` to `to`, in the axes the points are given in. */
  readonly positive: boolean;
}

/**
 * The arc between two points, as SVG writes it. Radii too small for the distance are scaled up, a zero radius gives a
 * line, equal end points give nothing. SVG 2, implementation notes, "Conversion from endpoint to center
 * parameterization" and "Correction of out-of-range radii".
 */
export function arcBetween(ends: ArcEnds): Curve | undefined {
  const { from, to, tilt, large, positive } = ends;
  if (samePoint(from, to)) return undefined;
  if (ends.radiusX === 0 || ends.radiusY === 0) return { kind: 'line', from, to };
  const cos = Math.cos(tilt);
  const sin = Math.sin(tilt);
  const half = { x: (from.x - to.x) / 2, y: (from.y - to.y) / 2 };
  // Half the chord in the ellipse's own axes, in units of the radii: the ellipse becomes the unit circle.
  const unscaledX = cos * half.x + sin * half.y;
  const unscaledY = cos * half.y - sin * half.x;
  const stretch = Math.max(1, Math.sqrt((unscaledX / ends.radiusX) ** 2 + (unscaledY / ends.radiusY) ** 2));
  const radiusX = Math.abs(ends.radiusX) * stretch;
  const radiusY = Math.abs(ends.radiusY) * stretch;
  const chord = { x: unscaledX / radiusX, y: unscaledY / radiusY };
  const height = Math.sqrt(Math.max(0, 1 / dot(chord, chord) - 1)) * (large === positive ? -1 : 1);
  const middle = { x: height * chord.y, y: -height * chord.x };
  const first = minus(chord, middle);
  const last = { x: -chord.x - middle.x, y: -chord.y - middle.y };
  const start = Math.atan2(first.y, first.x);
  const turned = Math.atan2(cross(first, last), dot(first, last));
  const sweep = positive === turned > 0 ? turned : turned + (positive ? 2 : -2) * Math.PI;
  const mid = between(from, to, 0.5);
  const offset = { x: radiusX * middle.x, y: radiusY * middle.y };
  const centre = { x: mid.x + cos * offset.x - sin * offset.y, y: mid.y + sin * offset.x + cos * offset.y };
  return { kind: 'arc', from, to, centre, radiusX, radiusY, tilt, start, sweep };
}
