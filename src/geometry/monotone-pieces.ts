import type { ArcCurve, CubicCurve, Curve } from './curve.ts';
import type { Point } from './point.ts';
import { between, cross, lengthOf, minus } from './vector.ts';

/**
 * Part of a curve whose tangent turns one way only and stays within one quadrant. It lies in the triangle of its two
 * ends and the crossing of its end tangents, and that triangle lies in the box of the two ends. Parameter u in [0, 1].
 */
export interface Piece {
  point(u: number): Point;
  /** Direction of travel, of any length, never zero unless the piece is a point. */
  direction(u: number): Point;
  /** √curvature × speed: vertices spaced evenly in its integral deviate evenly, since a chord of length s deviates by κs²/8. */
  density(u: number): number;
}

/** Splits arcs and cubic curves at axis extremes and inflections. A line has no pieces to split into. */
export function monotonePieces(curve: Exclude<Curve, { kind: 'line' }>): readonly Piece[] {
  return curve.kind === 'arc' ? arcPieces(curve) : cubicPieces(curve);
}

function arcPieces(arc: ArcCurve): Piece[] {
  const { radiusX, radiusY, tilt, start, sweep } = arc;
  // x'(t) = 0 and y'(t) = 0, each twice a turn.
  const extremes = [
    Math.atan2(-radiusY * Math.sin(tilt), radiusX * Math.cos(tilt)),
    Math.atan2(radiusY * Math.cos(tilt), radiusX * Math.sin(tilt)),
  ];
  const splits = extremes.flatMap((first) => {
    const low = Math.min(start, start + sweep);
    const base = first + Math.ceil((low - first) / Math.PI) * Math.PI;
    return [0, 1, 2].map((k) => (base + k * Math.PI - start) / sweep);
  });
  return spans(splits).map(([from, to]) => arcPiece(arc, from, to));
}

function arcPiece(arc: ArcCurve, from: number, to: number): Piece {
  const { centre, radiusX, radiusY } = arc;
  const cos = Math.cos(arc.tilt);
  const sin = Math.sin(arc.tilt);
  const sign = Math.sign(arc.sweep);
  const angularSpeed = Math.abs(arc.sweep) * (to - from);
  const angle = (u: number) => arc.start + arc.sweep * (from + u * (to - from));
  const tilted = (along: number, across: number): Point => ({ x: along * cos - across * sin, y: along * sin + across * cos });
  const direction = (u: number) => {
    const t = angle(u);
    return tilted(-sign * radiusX * Math.sin(t), sign * radiusY * Math.cos(t));
  };
  return {
    point: (u) => {
      // The stored ends are shared bit for bit with the neighbouring curves.
      if (u === 0 && from === 0) return arc.from;
      if (u === 1 && to === 1) return arc.to;
      const t = angle(u);
      const { x, y } = tilted(radiusX * Math.cos(t), radiusY * Math.sin(t));
      return { x: centre.x + x, y: centre.y + y };
    },
    direction,
    density: (u) => Math.sqrt((radiusX * radiusY) / lengthOf(direction(u))) * angularSpeed,
  };
}

type Controls = readonly [Point, Point, Point, Point];

function cubicPieces(curve: CubicCurve): Piece[] {
  const controls: Controls = [curve.from, curve.control1, curve.control2, curve.to];
  const { a, b, c } = polynomial(controls);
  const splits = [
    ...quadraticRoots(3 * a.x, 2 * b.x, c.x),
    ...quadraticRoots(3 * a.y, 2 * b.y, c.y),
    // Zeros of (first derivative × second derivative): inflections and cusps.
    ...quadraticRoots(-3 * cross(a, b), 3 * cross(c, a), cross(c, b)),
  ];
  return spans(splits).map(([from, to]) => cubicPiece(partOf(controls, from, to)));
}

function cubicPiece(controls: Controls): Piece {
  const [p0, p1, p2, p3] = controls;
  const { a, b, c } = polynomial(controls);
  const velocity = (u: number): Point => ({
    x: (3 * a.x * u + 2 * b.x) * u + c.x,
    y: (3 * a.y * u + 2 * b.y) * u + c.y,
  });
  // Where the velocity vanishes at an end (a control point upon it, a cusp) the direction is that to the next point.
  const startDirection = firstNonZero(minus(p1, p0), minus(p2, p0), minus(p3, p0));
  const endDirection = firstNonZero(minus(p3, p2), minus(p3, p1), minus(p3, p0));
  return {
    point: (u) => {
      if (u === 0) return p0;
      if (u === 1) return p3;
      const v = 1 - u;
      const [w0, w1, w2, w3] = [v * v * v, 3 * v * v * u, 3 * v * u * u, u * u * u];
      return {
        x: w0 * p0.x + w1 * p1.x + w2 * p2.x + w3 * p3.x,
        y: w0 * p0.y + w1 * p1.y + w2 * p2.y + w3 * p3.y,
      };
    },
    direction: (u) => (u === 0 ? startDirection : u === 1 ? endDirection : velocity(u)),
    density: (u) => {
      const speed = velocity(u);
      const bend = cross(speed, { x: 6 * a.x * u + 2 * b.x, y: 6 * a.y * u + 2 * b.y });
      return bend === 0 ? 0 : Math.sqrt(Math.abs(bend) / lengthOf(speed));
    },
  };
}

function firstNonZero(...vectors: readonly Point[]): Point {
  return vectors.find((v) => v.x !== 0 || v.y !== 0) ?? { x: 0, y: 0 };
}

/** B(t) = a t³ + b t² + c t + p0. */
function polynomial([p0, p1, p2, p3]: Controls): { a: Point; b: Point; c: Point } {
  return {
    a: { x: p3.x - 3 * p2.x + 3 * p1.x - p0.x, y: p3.y - 3 * p2.y + 3 * p1.y - p0.y },
    b: { x: 3 * (p2.x - 2 * p1.x + p0.x), y: 3 * (p2.y - 2 * p1.y + p0.y) },
    c: { x: 3 * (p1.x - p0.x), y: 3 * (p1.y - p0.y) },
  };
}

/** Control points of the part from parameter `from` to `to`, by de Casteljau's construction. */
function partOf(controls: Controls, from: number, to: number): Controls {
  const tail = from === 0 ? controls : splitAt(controls, from)[1];
  return to === 1 ? tail : splitAt(tail, (to - from) / (1 - from))[0];
}

function splitAt([p0, p1, p2, p3]: Controls, t: number): [Controls, Controls] {
  const a = between(p0, p1, t);
  const b = between(p1, p2, t);
  const c = between(p2, p3, t);
  const ab = between(a, b, t);
  const bc = between(b, c, t);
  const middle = between(ab, bc, t);
  return [
    [p0, a, ab, middle],
    [middle, bc, c, p3],
  ];
}

/** Real roots of a t² + b t + c. */
function quadraticRoots(a: number, b: number, c: number): number[] {
  const discriminant = b * b - 4 * a * c;
  if (discriminant < 0) return [];
  // The form without cancellation; a = 0 leaves one finite root.
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant));
  return [q / a, c / q];
}

/** The stretches of [0, 1] between the splits that lie strictly within. */
function spans(splits: readonly number[]): [number, number][] {
  const inner = splits.filter((t) => t > 0 && t < 1).toSorted((s, t) => s - t);
  const marks = [0, ...inner.filter((t, i) => t !== inner[i - 1]), 1];
  return marks.slice(1).map((to, i) => [marks[i], to]);
}
