import type { ArcCurve, Curve, CurvePath } from './curve.ts';
import type { Point } from './point.ts';
import type { Turn } from './turn.ts';
import { turnPoint } from './turn.ts';

/** x' = a x + c y + e, y' = b x + d y + f: the six numbers of SVG's `matrix(a b c d e f)`. */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const IDENTITY: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

export function translation(x: number, y: number): Affine {
  return { ...IDENTITY, e: x, f: y };
}

export function scaling(x: number, y = x): Affine {
  return { ...IDENTITY, a: x, d: y };
}

/** Counter-clockwise with y up. Multiples of 90 degrees are exact. */
export function rotation(degrees: number): Affine {
  const turn = degrees / 90;
  if (Number.isInteger(turn)) {
    const { x, y } = turnPoint({ x: 1, y: 0 }, (((turn % 4) + 4) % 4) as Turn);
    return { a: x, b: y, c: -y + 0, d: x, e: 0, f: 0 };
  }
  const angle = (degrees * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return { a: cos, b: sin, c: -sin, d: cos, e: 0, f: 0 };
}

/** First `inner`, then `outer`. */
export function compose(outer: Affine, inner: Affine): Affine {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: outer.a * inner.e + outer.c * inner.f + outer.e,
    f: outer.b * inner.e + outer.d * inner.f + outer.f,
  };
}

/** Signed factor of areas; negative when the map mirrors, zero when it has no inverse. */
export function areaFactor(map: Affine): number {
  return map.a * map.d - map.b * map.c;
}

/** The map that undoes this one; undefined when it flattens the plane. */
export function inverse(map: Affine): Affine | undefined {
  const factor = areaFactor(map);
  if (factor === 0) return undefined;
  const { a, b, c, d, e, f } = map;
  return {
    a: d / factor,
    b: -b / factor,
    c: -c / factor,
    d: a / factor,
    e: (c * f - d * e) / factor,
    f: (b * e - a * f) / factor,
  };
}

export function mapPoint({ a, b, c, d, e, f }: Affine, { x, y }: Point): Point {
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

/** The curve's image, of the same kind: an elliptical arc stays one. The map must have an inverse. */
export function mapCurve(map: Affine, curve: Curve): Curve {
  const from = mapPoint(map, curve.from);
  const to = mapPoint(map, curve.to);
  switch (curve.kind) {
    case 'line':
      return { kind: 'line', from, to };
    case 'cubic':
      return { kind: 'cubic', from, control1: mapPoint(map, curve.control1), control2: mapPoint(map, curve.control2), to };
    case 'arc':
      return { kind: 'arc', from, to, centre: mapPoint(map, curve.centre), ...mapEllipse(map, curve) };
  }
}

export function mapPath(map: Affine, path: CurvePath): CurvePath {
  return path.map((curve) => mapCurve(map, curve));
}

/** The same way travelled backwards. */
export function reverseCurve(curve: Curve): Curve {
  const ends = { from: curve.to, to: curve.from };
  switch (curve.kind) {
    case 'line':
      return { kind: 'line', ...ends };
    case 'cubic':
      return { kind: 'cubic', ...ends, control1: curve.control2, control2: curve.control1 };
    case 'arc':
      return { ...curve, ...ends, start: curve.start + curve.sweep, sweep: -curve.sweep };
  }
}

export function reversePath(path: CurvePath): CurvePath {
  return path.toReversed().map(reverseCurve);
}

type Swept = Pick<ArcCurve, 'radiusX' | 'radiusY' | 'tilt' | 'start' | 'sweep'>;

function mapEllipse(map: Affine, arc: ArcCurve): Swept {
  const { a, b, c, d } = map;
  // Similarities keep the half axes, and a circle exactly a circle.
  const turning = a === d && b === -c;
  const mirroring = a === -d && b === c;
  if (!turning && !mirroring) return principalAxes(map, arc);
  const scale = Math.sqrt(a * a + b * b);
  const angle = Math.atan2(b, a);
  const radii = { radiusX: arc.radiusX * scale, radiusY: arc.radiusY * scale };
  return turning
    ? { ...radii, tilt: angle + arc.tilt, start: arc.start, sweep: arc.sweep }
    : { ...radii, tilt: angle - arc.tilt, start: -arc.start, sweep: -arc.sweep };
}

/**
 * Half axes of the image from the singular values of (map · tilt · radii) = U · diag(s1, s2) · V, both U and V
 * rotations and s2 negative when the map mirrors. Closed form for 2 × 2 matrices: Blinn, "Consider the lowly 2 × 2
 * matrix", IEEE CG&A 16 (1996).
 */
function principalAxes(map: Affine, arc: ArcCurve): Swept {
  const cos = Math.cos(arc.tilt);
  const sin = Math.sin(arc.tilt);
  const m11 = (map.a * cos + map.c * sin) * arc.radiusX;
  const m21 = (map.b * cos + map.d * sin) * arc.radiusX;
  const m12 = (map.c * cos - map.a * sin) * arc.radiusY;
  const m22 = (map.d * cos - map.b * sin) * arc.radiusY;
  const e = (m11 + m22) / 2;
  const f = (m11 - m22) / 2;
  const g = (m21 + m12) / 2;
  const h = (m21 - m12) / 2;
  const q = Math.sqrt(e * e + h * h);
  const r = Math.sqrt(f * f + g * g);
  const sum = Math.atan2(h, e);
  const difference = Math.atan2(g, f);
  const tilt = (sum + difference) / 2;
  const start = arc.start + (sum - difference) / 2;
  const second = q - r;
  return second < 0
    ? { radiusX: q + r, radiusY: -second, tilt, start: -start, sweep: -arc.sweep }
    : { radiusX: q + r, radiusY: second, tilt, start, sweep: arc.sweep };
}
