import { inputError } from '../base/issue.ts';
import type { Curve, CurvePath } from '../geometry/curve.ts';
import type { MmRing } from './layout-file.ts';

/**
 * The judge's own flattening, apart from the one that searches use: points on the true curve, chords between them,
 * each at most this far from the curve. Well under the judge's tolerance of 0.002 mm.
 */
export const CHORD_ERROR_MM = 0.0005;

/** Keeps one curve of a hostile file from filling memory. At 1 m radius the chord error still stays below 0.001 mm. */
const MOST_CHORDS = 4096;
const MOST_POINTS = 100_000;

/** A closed outline, millimetres. Edge i goes from point i to point i + 1, the last one back to point 0. */
export interface Outline {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  /** 1 where the edge is a straight line of the drawing, 0 where it is a chord of a curve. */
  readonly straight: Uint8Array;
}

export function outlineOfRing(ring: MmRing): Outline {
  return outlineOf(ring.map(([x, y]) => ({ x, y, straight: true })));
}

/** Throws an InputError when the loop would take more than `MOST_POINTS` points. */
export function outlineOfLoop(loop: CurvePath): Outline {
  return outlineOf(chordStartsOf(loop));
}

/** An open path as an outline without an inside: there and back. */
export function outlineOfPath(path: CurvePath): Outline {
  const there = chordStartsOf(path);
  const end = path.at(-1);
  return outlineOf(end ? [...there, { ...end.to, straight: true }, ...there.slice(1).toReversed()] : []);
}

interface ChordStart {
  readonly x: number;
  readonly y: number;
  readonly straight: boolean;
}

/** Edges of no length are left out: they bound nothing. */
function outlineOf(points: readonly ChordStart[]): Outline {
  const kept = points.filter((point, i) => {
    const next = points[(i + 1) % points.length]!;
    return point.x !== next.x || point.y !== next.y;
  });
  return {
    xs: Float64Array.from(kept, (point) => point.x),
    ys: Float64Array.from(kept, (point) => point.y),
    straight: Uint8Array.from(kept, (point) => (point.straight ? 1 : 0)),
  };
}

function chordStartsOf(path: CurvePath): ChordStart[] {
  const count = path.reduce((sum, curve) => sum + chordCount(curve), 0);
  if (count > MOST_POINTS) throw inputError('path-too-long', { facts: { points: count, limit: MOST_POINTS } });
  return path.flatMap(chordStarts);
}

function chordStarts(curve: Curve): ChordStart[] {
  if (curve.kind === 'line') return [{ ...curve.from, straight: true }];
  const count = chordCount(curve);
  const at = curve.kind === 'arc' ? arcPoint : cubicPoint;
  return Array.from({ length: count }, (_, i) => ({ ...(i === 0 ? curve.from : at(curve as never, i / count)), straight: false }));
}

/** A chord over a parameter step h errs by at most h²/8 times the largest second derivative. */
function chordCount(curve: Curve): number {
  if (curve.kind === 'line') return 1;
  const bend = curve.kind === 'arc' ? curve.sweep ** 2 * Math.max(curve.radiusX, curve.radiusY) : cubicBend(curve);
  return Math.max(1, Math.min(MOST_CHORDS, Math.ceil(Math.sqrt(bend / (8 * CHORD_ERROR_MM)))));
}

type Cubic = Extract<Curve, { kind: 'cubic' }>;
type Arc = Extract<Curve, { kind: 'arc' }>;

/** The second derivative of a cubic is linear, so its largest value stands at an end. */
function cubicBend({ from, control1, control2, to }: Cubic): number {
  const at = (a: typeof from, b: typeof from, c: typeof from) => 6 * Math.sqrt((a.x - 2 * b.x + c.x) ** 2 + (a.y - 2 * b.y + c.y) ** 2);
  return Math.max(at(from, control1, control2), at(control1, control2, to));
}

function cubicPoint({ from, control1, control2, to }: Cubic, t: number): { x: number; y: number } {
  const s = 1 - t;
  const [a, b, c, d] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
  return { x: a * from.x + b * control1.x + c * control2.x + d * to.x, y: a * from.y + b * control1.y + c * control2.y + d * to.y };
}

function arcPoint({ centre, radiusX, radiusY, tilt, start, sweep }: Arc, t: number): { x: number; y: number } {
  const angle = start + sweep * t;
  const u = radiusX * Math.cos(angle);
  const v = radiusY * Math.sin(angle);
  return { x: centre.x + u * Math.cos(tilt) - v * Math.sin(tilt), y: centre.y + u * Math.sin(tilt) + v * Math.cos(tilt) };
}
