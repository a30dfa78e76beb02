import type { CubicCurve, Curve } from '../../geometry/curve.ts';
import type { Point } from '../../geometry/point.ts';
import { between, distanceBetween } from '../../geometry/vector.ts';
import { curvePoint } from '../curve-part.ts';

/** A B-spline, rational where weights are given. `knots` has `points.length + degree + 1` values that never fall. */
export interface Spline {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly points: readonly Point[];
  /** One a point, above 0. */
  readonly weights?: readonly number[];
}

/** Whether the numbers describe a curve. */
export function isSpline({ degree, knots, points, weights }: Spline): boolean {
  const rises = knots.every((knot, i) => Number.isFinite(knot) && (i === 0 || knots[i - 1]! <= knot));
  const isWeighted = weights === undefined || (weights.length === points.length && weights.every((weight) => weight > 0));
  return degree >= 1 && degree <= HIGHEST_DEGREE && points.length > degree && knots.length === points.length + degree + 1 && rises && isWeighted;
}

/** Higher ones occur in no drawing; each point costs the square of the degree. */
const HIGHEST_DEGREE = 15;

/**
 * The spline's pieces in order. Lines, quadratic and cubic ones without weights are exact; of others cubics that leave the
 * curve by at most `tolerance`. Bézier points by the polar form: Ramshaw, "Blossoming: a connect-the-dots approach to
 * splines", DEC SRC report 19 (1987). Give it only what `isSpline` accepts.
 */
export function* splineCurves(spline: Spline, tolerance: number): Generator<Curve> {
  const { degree, knots, points, weights } = spline;
  const isExact = degree <= 3 && (weights === undefined || weights.every((weight) => weight === weights[0]));
  let last: Point | undefined;
  for (let span = degree; span < points.length; span++) {
    const [start, end] = [knots[span]!, knots[span + 1]!];
    if (start === end) continue;
    const polar = polarForm(spline, span);
    for (const piece of isExact ? [exactPiece(degree, polar, start, end)] : fittedPieces(degree, polar, start, end, tolerance, 0)) {
      yield last ? { ...piece, from: last } : piece;
      last = piece.to;
    }
  }
}

type PolarForm = (parameters: readonly number[]) => Homogeneous;
type Homogeneous = readonly [x: number, y: number, weight: number];

/** Of the spline's polynomial on one span: as many parameters as the degree, in any order. */
function polarForm({ degree, knots, points, weights }: Spline, span: number): PolarForm {
  const own = Array.from({ length: degree + 1 }, (_, j): Homogeneous => {
    const i = span - degree + j;
    const weight = weights?.[i] ?? 1;
    return [points[i]!.x * weight, points[i]!.y * weight, weight];
  });
  return (parameters) => {
    const d = [...own];
    for (let r = 1; r <= degree; r++) {
      for (let j = degree; j >= r; j--) {
        const i = span - degree + j;
        const [low, high] = [knots[i]!, knots[i + degree - r + 1]!];
        const t = (parameters[r - 1]! - low) / (high - low);
        const [a, b] = [d[j - 1]!, d[j]!];
        d[j] = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
      }
    }
    return d[degree]!;
  };
}

function projected([x, y, weight]: Homogeneous): Point {
  return { x: x / weight, y: y / weight };
}

function exactPiece(degree: number, polar: PolarForm, start: number, end: number): Curve {
  const corner = (ends: number) => projected(polar(Array.from({ length: degree }, (_, i) => (i < ends ? end : start))));
  const [from, to] = [corner(0), corner(degree)];
  if (degree === 1) return { kind: 'line', from, to };
  if (degree === 3) return { kind: 'cubic', from, control1: corner(1), control2: corner(2), to };
  return { kind: 'cubic', from, control1: between(from, corner(1), 2 / 3), control2: between(to, corner(1), 2 / 3), to };
}

/** Halved until the cubic with the same ends and tangents keeps to the curve at five places between. */
function* fittedPieces(degree: number, polar: PolarForm, start: number, end: number, tolerance: number, depth: number): Generator<Curve> {
  const at = (t: number) => projected(polar(Array.from({ length: degree }, () => t)));
  const cubic = hermite(degree, polar, start, end);
  const fits = PROBES.every((share) => distanceBetween(curvePoint(cubic, share), at(start + share * (end - start))) <= tolerance);
  const middle = (start + end) / 2;
  if (fits || depth === DEEPEST || !(start < middle && middle < end)) {
    yield cubic;
    return;
  }
  yield* fittedPieces(degree, polar, start, middle, tolerance, depth + 1);
  yield* fittedPieces(degree, polar, middle, end, tolerance, depth + 1);
}

const PROBES = [1 / 6, 1 / 3, 1 / 2, 2 / 3, 5 / 6] as const;
const DEEPEST = 12;

function hermite(degree: number, polar: PolarForm, start: number, end: number): CubicCurve {
  const from = projected(polar(Array.from({ length: degree }, () => start)));
  const to = projected(polar(Array.from({ length: degree }, () => end)));
  // A third of the derivative over the piece; of a rational curve by the rule for quotients.
  const handle = (t: number): Point => {
    const value = polar(Array.from({ length: degree }, () => t));
    const [low, high] = [start, end].map((other) => polar(Array.from({ length: degree }, (_, i) => (i === 0 ? other : t))));
    const rate = (k: 0 | 1 | 2) => (degree * (high![k] - low![k])) / 3;
    return { x: (rate(0) - (value[0] / value[2]) * rate(2)) / value[2], y: (rate(1) - (value[1] / value[2]) * rate(2)) / value[2] };
  };
  const [out, into] = [handle(start), handle(end)];
  return { kind: 'cubic', from, control1: { x: from.x + out.x, y: from.y + out.y }, control2: { x: to.x - into.x, y: to.y - into.y }, to };
}
