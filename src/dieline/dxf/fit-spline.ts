import type { CubicCurve, Curve } from '../../geometry/curve.ts';
import type { Point } from '../../geometry/point.ts';
import { distanceBetween, samePoint } from '../../geometry/vector.ts';

/**
 * A smooth curve through points: the cubic spline over the lengths of its chords with ends that do not bend (de Boor, "A
 * Practical Guide to Splines", 1978, chapter IV), a closed one smooth all round. Drawing programs that hand on the points
 * alone each have a curve of their own between them; this one goes through every point. Undefined for fewer than two.
 */
export function fitCurves(given: readonly Point[], closed: boolean): Curve[] | undefined {
  const apart = given.filter((point, i) => i === 0 || !samePoint(point, given[i - 1]!));
  const points = closed && apart.length > 1 && samePoint(apart[0]!, apart.at(-1)!) ? apart.slice(0, -1) : apart;
  if (points.length < 2) return undefined;
  if (points.length === 2) return [{ kind: 'line', from: points[0]!, to: points[1]! }];
  if (!closed) return pieces(points);
  // Whole turns before and after, so many that the free ends no longer tell.
  const before = Math.ceil(REACH / points.length) * points.length;
  const long = Array.from({ length: 2 * before + points.length + 1 }, (_, i) => points[i % points.length]!);
  return joined(pieces(long).slice(before, before + points.length));
}

/** Points after which the pull of an end, which falls to less than a third at each, is nothing. */
const REACH = 30;

/** The last piece ends where the first begins, to the bit. */
function joined(curves: readonly CubicCurve[]): CubicCurve[] {
  return curves.map((curve, i) => (i === curves.length - 1 ? { ...curve, to: curves[0]!.from } : curve));
}

function pieces(points: readonly Point[]): CubicCurve[] {
  const lengths = points.slice(1).map((point, i) => distanceBetween(point, points[i]!));
  const slopes = { x: slopesOf(points.map(({ x }) => x), lengths), y: slopesOf(points.map(({ y }) => y), lengths) };
  return lengths.map((length, i): CubicCurve => {
    const [from, to] = [points[i]!, points[i + 1]!];
    const handle = (at: number) => ({ x: (slopes.x[at]! * length) / 3, y: (slopes.y[at]! * length) / 3 });
    const [out, into] = [handle(i), handle(i + 1)];
    return { kind: 'cubic', from, control1: { x: from.x + out.x, y: from.y + out.y }, control2: { x: to.x - into.x, y: to.y - into.y }, to };
  });
}

/** First derivatives at the values: equal second derivatives where pieces meet, none at the ends. A tridiagonal system. */
function slopesOf(values: readonly number[], lengths: readonly number[]): number[] {
  const last = values.length - 1;
  const rise = lengths.map((length, i) => (values[i + 1]! - values[i]!) / length);
  const diagonal = values.map((_, i) => (i === 0 || i === last ? 2 : 2 * (1 / lengths[i - 1]! + 1 / lengths[i]!)));
  const beside = (i: number) => (i === 0 || i === last ? 1 : undefined);
  const right = values.map((_, i) => (i === 0 ? 3 * rise[0]! : i === last ? 3 * rise[last - 1]! : 3 * (rise[i - 1]! / lengths[i - 1]! + rise[i]! / lengths[i]!)));
  for (let i = 1; i <= last; i++) {
    const lower = beside(i) ?? 1 / lengths[i - 1]!;
    const upper = beside(i - 1) ?? 1 / lengths[i - 1]!;
    const share = lower / diagonal[i - 1]!;
    diagonal[i]! -= share * upper;
    right[i]! -= share * right[i - 1]!;
  }
  const slopes = [...right];
  for (let i = last; i >= 0; i--) {
    const upper = i === last ? 0 : (beside(i) ?? 1 / lengths[i]!);
    slopes[i] = (right[i]! - upper * (slopes[i + 1] ?? 0)) / diagonal[i]!;
  }
  return slopes;
}
