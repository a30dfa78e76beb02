import { MICRONS_PER_MM, toMicrons } from '../base/units.ts';
import { reversePath } from './affine.ts';
import type { CurvePath } from './curve.ts';
import { loopArea } from './loop-area.ts';
import { monotonePieces, type Piece } from './monotone-pieces.ts';
import type { Point, Ring } from './point.ts';
import { cross, distanceBetween, dot, lengthOf, minus, samePoint } from './vector.ts';
import { withoutStraights } from './without-straights.ts';

/**
 * True curves to straight pieces. Sine and cosine differ between engines in the last bit, 10⁻¹³ mm here; rounding to
 * whole micrometres makes rings the same everywhere unless a vertex lies that near to the middle between two.
 */

export interface Flattening {
  /** Largest distance between curve and straight piece, before rounding to whole micrometres. */
  readonly toleranceMm: number;
  /**
   * `outside`: the ring holds the loop (tangents where it bulges out, chords where it bulges in).
   * `inside`: the loop holds the ring. `near`: vertices on the loop.
   */
  readonly side: 'outside' | 'inside' | 'near';
}

export interface FlattenedLoop {
  /** Whole µm, counter-clockwise whatever the loop's direction, no straight-through vertices. */
  readonly ring: Ring;
  /** Upper bound of the distance between ring and loop, rounding included. */
  readonly deviationMicrons: number;
}

/**
 * A vertex where curves meet smoothly is left out when it lies this near to the line of its neighbours, mm: drawings
 * give tangent points to about 10⁻⁴ mm, and it must stay well below the rounding of 0.5 µm.
 */
const SMOOTH_JOINT_MM = 0.0001;

/**
 * Closed loop in mm to a ring in whole µm. The side is kept to within the rounding of vertices to the nearest whole
 * micrometre, 0.71 µm at most. Tangents are laid at the axis extremes, so the ring's box is the loop's, rounded.
 * Not guaranteed where the loop comes nearer to itself than the deviation, as in a sharp point or a slit: there the ring
 * may cross itself, and then neither holds (ask `ringFaults`).
 */
export function flattenLoop(loop: CurvePath, { toleranceMm, side }: Flattening): FlattenedLoop {
  const chain = { vertices: [] as Vertex[], deviation: 0 };
  const counterClockwise = loopArea(loop) < 0 ? reversePath(loop) : loop;
  for (const curve of counterClockwise) {
    startAt(chain.vertices, curve.from);
    if (curve.kind === 'line') continue;
    for (const piece of monotonePieces(curve)) addPiece(chain, piece, toleranceMm, side);
  }
  closeUp(chain.vertices);
  const { kept, offset } = withoutSmoothJoints(chain.vertices);
  return snapped(kept, chain.deviation + offset);
}

/** Straight pieces with vertices on the curves, within the tolerance; mm. First and last point are the path's ends. */
export function flattenPath(path: CurvePath, toleranceMm: number): Point[] {
  const points: Point[] = path.length > 0 ? [path[0].from] : [];
  for (const curve of path) {
    if (curve.kind !== 'line') {
      for (const piece of monotonePieces(curve)) points.push(...division(piece, toleranceMm, chordDeviation).points.slice(1));
      points.pop();
    }
    points.push(curve.to);
  }
  return points;
}

interface Vertex extends Point {
  /** A point of the curve where a tangent begins or ends. */
  joint: boolean;
}

interface Chain {
  readonly vertices: Vertex[];
  deviation: number;
}

/** Adds the vertices of a piece after its first, which stands at the chain's end already. */
function addPiece(chain: Chain, piece: Piece, tolerance: number, side: Flattening['side']): void {
  const bulgesOut = cross(piece.direction(0), piece.direction(1)) > 0;
  const tangents = side === 'near' ? false : bulgesOut === (side === 'outside');
  const { marks, points, deviation } = division(piece, tolerance, tangents ? tangentDeviation : chordDeviation);
  chain.deviation = Math.max(chain.deviation, deviation);
  if (tangents) {
    chain.vertices[chain.vertices.length - 1].joint = true;
    for (let i = 1; i < marks.length; i++) chain.vertices.push({ ...apexOf(piece, marks[i - 1], marks[i]), joint: false });
  } else {
    for (const point of points.slice(1, -1)) chain.vertices.push({ ...point, joint: false });
  }
  chain.vertices.push({ ...points[points.length - 1], joint: tangents });
}

interface Division {
  readonly marks: readonly number[];
  readonly points: readonly Point[];
  readonly deviation: number;
}

type DeviationOf = (piece: Piece, from: number, to: number) => number;

/** Enough for any drawing (2 × 10⁻⁷ of a quarter circle's radius); beyond it the deviation is returned as it is. */
const MOST_STEPS = 2000;

/** The fewest evenly deviating steps that keep the tolerance. */
function division(piece: Piece, tolerance: number, deviationOf: DeviationOf): Division {
  const places = evenPlaces(piece);
  // The rule κs²/8 is right for small steps, so that counting up from it ends soon.
  let count = Math.max(1, Math.min(MOST_STEPS, Math.ceil(places.total / Math.sqrt(8 * tolerance))));
  for (;;) {
    const marks = places.marks(count);
    let deviation = 0;
    for (let i = 0; i < count && deviation <= tolerance; i++) {
      deviation = Math.max(deviation, deviationOf(piece, marks[i], marks[i + 1]));
    }
    if (deviation <= tolerance || count >= MOST_STEPS) return { marks, points: marks.map((u) => piece.point(u)), deviation };
    count += Math.ceil(count / 32);
  }
}

const SAMPLES = 32;

/** Places of equal shares of the piece's density integral, from its trapezium sums. */
function evenPlaces(piece: Piece) {
  const sums = [0];
  let last = piece.density(0);
  for (let i = 1; i <= SAMPLES; i++) {
    const next = piece.density(i / SAMPLES);
    sums.push(sums[i - 1] + (last + next) / 2 / SAMPLES);
    last = next;
  }
  const total = sums[SAMPLES];
  const marks = (count: number) => {
    if (total === 0) return Array.from({ length: count + 1 }, (_, i) => i / count);
    const result = [0];
    let cell = 1;
    for (let i = 1; i < count; i++) {
      const share = (total * i) / count;
      while (cell < SAMPLES && sums[cell] < share) cell++;
      const inCell = (share - sums[cell - 1]) / (sums[cell] - sums[cell - 1]);
      result.push((cell - 1 + inCell) / SAMPLES);
    }
    return [...result, 1];
  };
  return { total, marks };
}

/** Where the tangents at both ends cross. It lies in the box of the two ends, which also settles nearly parallel ones. */
function apexOf(piece: Piece, from: number, to: number): Point {
  const a = piece.point(from);
  const b = piece.point(to);
  const aWay = piece.direction(from);
  const bWay = piece.direction(to);
  const turning = cross(aWay, bWay);
  const t = turning === 0 ? 0 : cross(minus(b, a), bWay) / turning;
  return { x: clamp(a.x + t * aWay.x, a.x, b.x), y: clamp(a.y + t * aWay.y, a.y, b.y) };
}

function clamp(value: number, end: number, otherEnd: number): number {
  return Math.max(Math.min(end, otherEnd), Math.min(Math.max(end, otherEnd), value));
}

/** Both distances are flat where they are looked for: the place to 2⁻¹³ of a step gives them to 10⁻⁷ of themselves. */
const BISECTIONS = 12;
const BISECTION_ALLOWANCE = 1 + 2 ** -20;

/** Farthest point of the piece from its chord: where the tangent is parallel to it. */
function chordDeviation(piece: Piece, from: number, to: number): number {
  const a = piece.point(from);
  const chord = minus(piece.point(to), a);
  const length = lengthOf(chord);
  if (length === 0) return 0;
  const side = Math.sign(cross(piece.direction(from), chord));
  const u = bisect(from, to, (v) => Math.sign(cross(piece.direction(v), chord)) === side);
  return (Math.abs(cross(chord, minus(piece.point(u), a))) / length) * BISECTION_ALLOWANCE;
}

/** Distance of the apex, the farthest point of both tangents, from the curve. Any point of the curve bounds it from above. */
function tangentDeviation(piece: Piece, from: number, to: number): number {
  const apex = apexOf(piece, from, to);
  const u = bisect(from, to, (v) => dot(minus(piece.point(v), apex), piece.direction(v)) < 0);
  return distanceBetween(apex, piece.point(u));
}

function bisect(low: number, high: number, isBefore: (u: number) => boolean): number {
  for (let i = 0; i < BISECTIONS; i++) {
    const middle = (low + high) / 2;
    if (isBefore(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Curves share end points; the shared vertex stands once. */
function startAt(vertices: Vertex[], from: Point): void {
  const last = vertices[vertices.length - 1];
  if (!last || !samePoint(last, from)) vertices.push({ ...from, joint: false });
}

function closeUp(vertices: Vertex[]): void {
  const last = vertices[vertices.length - 1];
  if (vertices.length < 2 || !samePoint(last, vertices[0])) return;
  vertices[0].joint ||= last.joint;
  vertices.pop();
}

/** Leaves out joints as long as what neighbouring ones add up to stays within SMOOTH_JOINT_MM. */
function withoutSmoothJoints(vertices: readonly Vertex[]): { kept: Point[]; offset: number } {
  const start = Math.max(0, vertices.findIndex((vertex) => !vertex.joint));
  const kept: Point[] = [];
  let offset = 0;
  let run = 0;
  for (let i = 0; i < vertices.length; i++) {
    const vertex = vertices[(start + i) % vertices.length];
    const after = vertices[(start + i + 1) % vertices.length];
    const added = vertex.joint && kept.length > 0 ? jointOffset(kept[kept.length - 1], vertex, after) : Infinity;
    if (run + added > SMOOTH_JOINT_MM) {
      kept.push(vertex);
      run = 0;
    } else {
      run += added;
      offset = Math.max(offset, run);
    }
  }
  return { kept, offset };
}

/** Rounds to whole µm, and leaves out repeated points and straight-through vertices. */
function snapped(vertices: readonly Point[], deviationMm: number): FlattenedLoop {
  let rounded = 0;
  const ring = vertices.map((vertex) => {
    const point = { x: toMicrons(vertex.x) + 0, y: toMicrons(vertex.y) + 0 };
    rounded = Math.max(rounded, distanceBetween(point, { x: vertex.x * MICRONS_PER_MM, y: vertex.y * MICRONS_PER_MM }));
    return point;
  });
  return { ring: withoutStraights(ring), deviationMicrons: deviationMm * MICRONS_PER_MM + rounded };
}

/** Distance of a joint from the line of its neighbours; infinite unless it lies between them. */
function jointOffset(before: Point, joint: Point, after: Point): number {
  const along = minus(after, before);
  const length = lengthOf(along);
  if (dot(minus(joint, before), along) <= 0 || dot(minus(after, joint), along) <= 0) return Infinity;
  return Math.abs(cross(along, minus(joint, before))) / length;
}
