import type { Point } from './point.ts';

/**
 * True curves of a drawing, millimetres, y up. Quadratic curves are raised to cubic ones exactly on reading.
 * An arc is part of an ellipse: centre, half axes, the angle of the first half axis against x (radians), and the start
 * and swept parameter angles (radians, counter-clockwise positive). `from` and `to` are stored for every kind, so that
 * neighbouring curves share end points bit for bit.
 */
export interface LineCurve {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

export interface CubicCurve {
  readonly kind: 'cubic';
  readonly from: Point;
  readonly control1: Point;
  readonly control2: Point;
  readonly to: Point;
}

export interface ArcCurve {
  readonly kind: 'arc';
  readonly from: Point;
  readonly to: Point;
  readonly centre: Point;
  readonly radiusX: number;
  readonly radiusY: number;
  readonly tilt: number;
  readonly start: number;
  readonly sweep: number;
}

export type Curve = LineCurve | CubicCurve | ArcCurve;

/** Curves end to end; a closed loop's last curve ends where the first begins. */
export type CurvePath = readonly Curve[];
