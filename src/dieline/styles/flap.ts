import { arcBetween } from '../../geometry/arc.ts';
import { compose, mapCurve, mapPath, reverseCurve, translation, type Affine } from '../../geometry/affine.ts';
import type { Curve, CurvePath } from '../../geometry/curve.ts';
import type { Point } from '../../geometry/point.ts';
import { between, cross, distanceBetween, dot, lengthOf, minus, samePoint } from '../../geometry/vector.ts';

/**
 * The one idea behind all styles: a blank is a panel with flaps on its edges, which are panels with flaps on theirs.
 * A flap hangs down from its hinge: in its own frame the hinge runs from (0, 0) to (length, 0) and the board lies below.
 * Its free edge is walked from the hinge's left end to its right end, board to the left. Millimetres throughout.
 */
export interface Flap {
  /** Unique within a blank. */
  readonly id: string;
  /** The free edge; of the first panel, which hangs on nothing, the whole closed outline. */
  readonly side: Side;
  readonly inner?: Inner;
}

export type Side = readonly Piece[];

/** A piece of an edge: cut, or, where a flap hangs on it, the hinge of that flap. */
export interface Piece {
  readonly curve: Curve;
  readonly flap?: Flap;
  /** Length at each end of the hinge that is slit and not creased. */
  readonly slit?: number;
  /** What lies inside the panel but is placed from this piece, in the piece's axes. */
  readonly inner?: Inner;
}

/** Line work inside a panel. */
export interface Inner {
  readonly creases?: readonly CurvePath[];
  /** Closed; cut out. */
  readonly openings?: readonly CurvePath[];
  /** Closed areas for glue, each with the panel that they stick to. */
  readonly gluing?: readonly { readonly area: CurvePath; readonly onto: string }[];
}

/** What an edge of a given length is like, in the frame of a flap that would hang on it. */
export type Edge = (length: number) => Side;

/** A corner of an edge: its place and what the straight line that arrives there, or the corner itself, is like. */
export type Corner = readonly [x: number, y: number, detail?: { readonly radius?: number; readonly flap?: Flap; readonly slit?: number; readonly inner?: Inner }];

/** Straight lines through the corners, rounded where a radius is given (less where the lines are too short for it). */
export function side(corners: readonly Corner[]): Side {
  const points = corners.map(([x, y]): Point => ({ x, y }));
  const pieces: Piece[] = [];
  let from = points[0];
  const draw = (curve: Curve, detail: Omit<Piece, 'curve'> = {}) => {
    if (!samePoint(curve.from, curve.to)) pieces.push({ curve, ...detail });
    from = curve.to;
  };
  for (let i = 1; i < points.length; i++) {
    const { radius = 0, ...detail } = corners[i][2] ?? {};
    const rounding = i + 1 < points.length ? roundCorner(points[i - 1], points[i], points[i + 1], radius) : undefined;
    draw({ kind: 'line', from, to: rounding?.from ?? points[i] }, detail);
    if (rounding) draw(rounding);
  }
  return pieces;
}

/** The arc of the given radius that touches both lines; no more than half of either line is used. */
function roundCorner(before: Point, corner: Point, after: Point, radius: number): Curve | undefined {
  const u = minus(before, corner);
  const v = minus(after, corner);
  const turning = cross(u, v);
  if (radius === 0 || turning === 0) return undefined;
  // tan(half the turn) = |u × v| / (|u||v| − u·v), the turn being the angle by which the direction changes.
  const perRadius = (lengthOf(u) * lengthOf(v) + dot(u, v)) / Math.abs(turning);
  const reach = Math.min(radius * perRadius, lengthOf(u) / 2, lengthOf(v) / 2);
  const r = reach / perRadius;
  const from = between(corner, before, reach / lengthOf(u));
  const to = between(corner, after, reach / lengthOf(v));
  return arcBetween({ from, to, radiusX: r, radiusY: r, tilt: 0, large: false, positive: turning < 0 });
}

/** A closed loop of straight lines, rounded likewise. */
export function loop(corners: readonly Corner[]): CurvePath {
  // Starting in the middle of a line lets every corner be rounded.
  const [ax, ay] = corners[corners.length - 1];
  const [bx, by] = corners[0];
  const middle: Corner = [(ax + bx) / 2, (ay + by) / 2];
  return side([middle, ...corners, middle]).map(({ curve }) => curve);
}

export function circle(x: number, y: number, radius: number): CurvePath {
  return oval(x, y, radius, radius);
}

/** Counter-clockwise in quarters, so that its extremes are ends of curves. */
export function oval(x: number, y: number, radiusX: number, radiusY: number): CurvePath {
  const tips: Point[] = [{ x: x + radiusX, y }, { x, y: y + radiusY }, { x: x - radiusX, y }, { x, y: y - radiusY }];
  return tips.map((from, i) => arcBetween({ from, to: tips[(i + 1) % 4], radiusX, radiusY, tilt: 0, large: false, positive: true })!);
}

export interface Edges {
  readonly start?: Edge;
  readonly far?: Edge;
  readonly end?: Edge;
}

/** A rectangular panel: edges down at the start, along the far side, up at the end. */
export function panel(id: string, length: number, depth: number, { start, far, end }: Edges, inner?: Inner): Flap {
  const [a, b, c, d] = corners(length, depth);
  return { id, side: [...edge(a, b, start), ...edge(b, c, far), ...edge(c, d, end)], ...(inner ? { inner } : {}) };
}

/** The panel that everything else hangs on. */
export function firstPanel(id: string, length: number, depth: number, edges: Edges & { readonly top?: Edge }, inner?: Inner): Flap {
  const [a, , , d] = corners(length, depth);
  const open = panel(id, length, depth, edges, inner);
  return { ...open, side: [...open.side, ...edge(d, a, edges.top)] };
}

function corners(length: number, depth: number): readonly [Point, Point, Point, Point] {
  return [{ x: 0, y: 0 }, { x: 0, y: -depth }, { x: length, y: -depth }, { x: length, y: 0 }];
}

/** An edge put between two points; a plain cut where nothing is said. */
function edge(from: Point, to: Point, make: Edge = (length) => side([[0, 0], [length, 0]])): Side {
  const map = frame(from, to);
  return make(distanceBetween(from, to)).map((piece) => ({
    ...piece,
    curve: mapCurve(map, piece.curve),
    ...(piece.inner ? { inner: mapInner(map, piece.inner) } : {}),
  }));
}

export function mapInner(map: Affine, { creases = [], openings = [], gluing = [] }: Inner): Required<Inner> {
  return {
    creases: creases.map((path) => mapPath(map, path)),
    openings: openings.map((path) => mapPath(map, path)),
    gluing: gluing.map(({ area, onto }) => ({ area: mapPath(map, area), onto })),
  };
}

/** From a frame whose hinge begins at the origin to the one in which it runs between the two points. Exact along the axes. */
export function frame(from: Point, to: Point): Affine {
  const { x, y } = minus(to, from);
  const length = lengthOf({ x, y });
  const turn: Affine = { a: x / length, b: y / length, c: -y / length + 0, d: x / length, e: 0, f: 0 };
  return compose(translation(from.x, from.y), turn);
}

/** The same edge seen in a mirror: what was at its start is at its end. Flaps on it keep their names. */
export function mirrored(make: Edge): Edge {
  return (length) => mirrorSide(make(length), length);
}

function mirrorSide(pieces: Side, length: number): Side {
  const map: Affine = { a: -1, b: 0, c: 0, d: 1, e: length, f: 0 };
  return pieces.toReversed().map((piece) => {
    const { from, to } = piece.curve;
    const curve = mapCurve(map, reverseCurve(piece.curve));
    const { flap, inner } = piece;
    return {
      ...piece,
      curve,
      ...(inner ? { inner: mapInner(map, inner) } : {}),
      ...(flap ? { flap: mirrorFlap(flap, distanceBetween(from, to)) } : {}),
    };
  });
}

function mirrorFlap(flap: Flap, length: number): Flap {
  const map: Affine = { a: -1, b: 0, c: 0, d: 1, e: length, f: 0 };
  return { ...flap, side: mirrorSide(flap.side, length), ...(flap.inner ? { inner: mapInner(map, flap.inner) } : {}) };
}
