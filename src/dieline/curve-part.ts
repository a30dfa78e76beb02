import { compose, mapCurve, translation, type Affine } from '../geometry/affine.ts';
import { ellipsePoint } from '../geometry/arc.ts';
import type { Curve, CurvePath } from '../geometry/curve.ts';
import type { Point } from '../geometry/point.ts';
import { between, distanceBetween, minus, samePoint } from '../geometry/vector.ts';

/** Point of a curve at parameter t in [0, 1]; the stored ends at 0 and 1. */
export function curvePoint(curve: Curve, t: number): Point {
  if (t === 0) return curve.from;
  if (t === 1) return curve.to;
  switch (curve.kind) {
    case 'line':
      return between(curve.from, curve.to, t);
    case 'arc':
      return ellipsePoint(curve, curve.start + curve.sweep * t);
    case 'cubic': {
      const v = 1 - t;
      const [w0, w1, w2, w3] = [v * v * v, 3 * v * v * t, 3 * v * t * t, t * t * t];
      return {
        x: w0 * curve.from.x + w1 * curve.control1.x + w2 * curve.control2.x + w3 * curve.to.x,
        y: w0 * curve.from.y + w1 * curve.control1.y + w2 * curve.control2.y + w3 * curve.to.y,
      };
    }
  }
}

/** The stretch from parameter s to t; backwards when s > t. */
export function curvePart(curve: Curve, s: number, t: number): Curve {
  const from = curvePoint(curve, s);
  const to = curvePoint(curve, t);
  switch (curve.kind) {
    case 'line':
      return { kind: 'line', from, to };
    case 'arc':
      return { ...curve, from, to, start: curve.start + curve.sweep * s, sweep: curve.sweep * (t - s) };
    case 'cubic':
      // The blossom of the cubic: its value at (s, s, t) and (s, t, t) gives the inner control points.
      return { kind: 'cubic', from, control1: blossom(curve, s, s, t), control2: blossom(curve, s, t, t), to };
  }
}

function blossom({ from, control1, control2, to }: Extract<Curve, { kind: 'cubic' }>, r: number, s: number, t: number): Point {
  const [a, b, c] = [between(from, control1, r), between(control1, control2, r), between(control2, to, r)];
  return between(between(a, b, s), between(b, c, s), t);
}

/**
 * Parameters of points on the curve, 0 and 1 among them, between which it leaves its chords by at most the tolerance.
 * Arc: sagitta r (1 − cos(δ/2)). Cubic: a chord over a step h of parameter is left by at most h²/8 · max|B''|, and
 * |B''| is at most 6 times the larger second difference of the control points.
 */
export function chordParameters(curve: Curve, toleranceMm: number): number[] {
  const count = Math.min(MOST_CHORDS, Math.max(1, Math.ceil(chordCount(curve, toleranceMm))));
  return Array.from({ length: count + 1 }, (_, i) => i / count);
}

/** Chords of one curve: 16 m of radius at the finest tolerance in use needs 4 500. */
const MOST_CHORDS = 10_000;

function chordCount(curve: Curve, tolerance: number): number {
  switch (curve.kind) {
    case 'line':
      return 1;
    case 'arc': {
      const radius = Math.max(curve.radiusX, curve.radiusY);
      // At least an eighth of a turn each, so that a small circle keeps its shape.
      const step = Math.min(Math.PI / 4, radius > tolerance ? 2 * Math.acos(1 - tolerance / radius) : Math.PI / 4);
      return Math.abs(curve.sweep) / step;
    }
    case 'cubic': {
      const { from, control1, control2, to } = curve;
      const bend = (a: Point, b: Point, c: Point) => distanceBetween({ x: a.x + c.x, y: a.y + c.y }, { x: 2 * b.x, y: 2 * b.y });
      const largest = Math.max(bend(from, control1, control2), bend(control1, control2, to));
      return Math.sqrt((6 * largest) / (8 * tolerance));
    }
  }
}

/** Nodes and weights on [−1, 1] of the Gauss–Legendre rule of order 5; exact to degree 9. */
const NODES = [0, 0.5384693101056831, -0.5384693101056831, 0.906179845938664, -0.906179845938664];
const WEIGHTS = [0.5688888888888889, 0.47862867049936647, 0.47862867049936647, 0.23692688505618908, 0.23692688505618908];

/** Length of a curve, mm: closed form for lines and circles, elsewhere integrated in 16 steps (relative error under 10⁻⁸ for what is drawn). */
export function curveLength(curve: Curve): number {
  if (curve.kind === 'line') return distanceBetween(curve.from, curve.to);
  if (curve.kind === 'arc' && curve.radiusX === curve.radiusY) return curve.radiusX * Math.abs(curve.sweep);
  const steps = 16;
  let sum = 0;
  for (let step = 0; step < steps; step++) {
    for (let i = 0; i < NODES.length; i++) sum += WEIGHTS[i] * speed(curve, (step + (1 + NODES[i]) / 2) / steps);
  }
  return sum / (2 * steps);
}

function speed(curve: Exclude<Curve, { kind: 'line' }>, t: number): number {
  if (curve.kind === 'arc') {
    const angle = curve.start + curve.sweep * t;
    return Math.abs(curve.sweep) * Math.sqrt((curve.radiusX * Math.sin(angle)) ** 2 + (curve.radiusY * Math.cos(angle)) ** 2);
  }
  const v = 1 - t;
  const [a, b, c] = [minus(curve.control1, curve.from), minus(curve.control2, curve.control1), minus(curve.to, curve.control2)];
  const along = (p: number, q: number, r: number) => 3 * (v * v * p + 2 * v * t * q + t * t * r);
  return Math.sqrt(along(a.x, b.x, c.x) ** 2 + along(a.y, b.y, c.y) ** 2);
}

export function pathLength(path: CurvePath): number {
  return path.reduce((sum, curve) => sum + curveLength(curve), 0);
}

/**
 * The curve with its ends moved onto the given points, a few hundredths of a millimetre away: by the similarity that
 * maps one chord onto the other, so that an arc of a circle stays one. Where the chord is too short for that (nearly
 * full circles) it is only shifted, and a short line closes the rest.
 */
export function withEnds(curve: Curve, from: Point, to: Point): Curve[] {
  if (samePoint(curve.from, from) && samePoint(curve.to, to)) return [curve];
  if (curve.kind === 'line') return samePoint(from, to) ? [] : [{ kind: 'line', from, to }];
  const old = minus(curve.to, curve.from);
  const wanted = minus(to, from);
  const square = old.x * old.x + old.y * old.y;
  if (square > SHORTEST_CHORD_MM * SHORTEST_CHORD_MM) {
    // wanted = (a + ib) · old, as complex numbers.
    const a = (wanted.x * old.x + wanted.y * old.y) / square;
    const b = (wanted.y * old.x - wanted.x * old.y) / square;
    const map: Affine = compose(translation(from.x, from.y), compose({ a, b, c: -b, d: a, e: 0, f: 0 }, translation(-curve.from.x, -curve.from.y)));
    return [{ ...mapCurve(map, curve), from, to }];
  }
  const shifted = { ...mapCurve(translation(from.x - curve.from.x, from.y - curve.from.y), curve), from };
  return samePoint(shifted.to, to) ? [shifted] : [shifted, { kind: 'line', from: shifted.to, to }];
}

/** Below this length of chord a similarity would turn and scale the curve by more than its ends move, mm. */
const SHORTEST_CHORD_MM = 1;
