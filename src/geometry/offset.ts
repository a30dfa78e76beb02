import { subtract } from './boolean.ts';
import { combine, toPath } from './clipper-paths.ts';
import { boxOf, reverseRing, type Box, type Point, type Polygon, type Ring } from './point.ts';
import { orient } from './predicates.ts';
import { dot, lengthOf, minus } from './vector.ts';
import { withoutStraights } from './without-straights.ts';

/**
 * Growing and shrinking by a distance with round corners, always to the safe side. The library's own round joins are
 * inscribed, so that its outlines fall short by the arc tolerance, or stand out by it on every straight edge when that is
 * added. Here corners are tangent polygons around the true arcs: straight edges and boxes come out as they are, and only
 * the arcs stand out. The library then unites the raw outline: Chen and McMains, "Polygon offsetting by computing winding
 * numbers" (ASME DETC 2005).
 */

export interface Grown {
  readonly polygon: Polygon;
  /** Upper bound of how far the polygon stands out of the true offset, µm. */
  readonly deviationMicrons: number;
}

export interface Shrunk {
  /** Shrinking may part a polygon or leave nothing. */
  readonly polygons: readonly Polygon[];
  /** Upper bound of how far the true inset stands out of the polygons, µm. */
  readonly deviationMicrons: number;
}

/** Vertices are rounded outward in both axes, and where two edges of the raw outline cross once more. */
const ROUNDING = Math.SQRT2 + Math.SQRT1_2;

/**
 * The polygon and everything within `by` of it (whole µm, not negative). Holds the true offset, but for the rounding of at
 * most 0.71 µm where edges meet in an inner corner. Rings must be simple, outer counter-clockwise, holes clockwise.
 */
export function growPolygon(polygon: Polygon, by: number, arcTolerance: number): Grown {
  if (by === 0) return { polygon, deviationMicrons: 0 };
  const { polygons, deviationMicrons } = growAll([polygon], by, arcTolerance);
  // A connected area stays in one piece.
  return { polygon: polygons[0], deviationMicrons };
}

/** What of the polygon is at least `by` from its outline: the rest of a frame when all around the polygon is grown. Lies within the true inset, rounding as above. */
export function shrinkPolygon(polygon: Polygon, by: number, arcTolerance: number): Shrunk {
  if (by === 0) return { polygons: [polygon], deviationMicrons: 0 };
  const frame = frameAround(boxOf(polygon.outer), by + 1);
  const around: Polygon[] = [
    { outer: frame, holes: [reverseRing(polygon.outer)] },
    ...polygon.holes.map((hole) => ({ outer: reverseRing(hole), holes: [] })),
  ];
  const { polygons, deviationMicrons } = growAll(around, by, arcTolerance);
  return { polygons: subtract([{ outer: frame, holes: [] }], polygons), deviationMicrons };
}

function frameAround(box: Box, by: number): Ring {
  const [left, bottom, right, top] = [box.minX - by, box.minY - by, box.maxX + by, box.maxY + by];
  return [{ x: left, y: bottom }, { x: right, y: bottom }, { x: right, y: top }, { x: left, y: top }];
}

function growAll(polygons: readonly Polygon[], by: number, arcTolerance: number): Shrunk {
  const raw = polygons.flatMap(({ outer, holes }) => [outer, ...holes]).map((ring) => rawOffset(ring, by, arcTolerance));
  const deviation = Math.max(...raw.map((outline) => outline.deviation));
  return { polygons: combine('union', raw.map(({ points }) => toPath(points)), [], 'positive'), deviationMicrons: deviation + ROUNDING };
}

interface RawOffset {
  readonly points: Point[];
  deviation: number;
}

/** Every edge moved to its right by `by`, joined around outer corners and through inner ones. Crosses itself at will. */
function rawOffset(ring: Ring, by: number, arcTolerance: number): RawOffset {
  const corners = withoutStraights(ring);
  const result: RawOffset = { points: [], deviation: 0 };
  corners.forEach((corner, i) => {
    const previous = corners[(i + corners.length - 1) % corners.length];
    const next = corners[(i + 1) % corners.length];
    const arriving = rightNormal(previous, corner);
    const leaving = rightNormal(corner, next);
    if (orient(previous, corner, next) > 0) {
      addOuterCorner(result, corner, tangentNormals(arriving, leaving, by, arcTolerance), by);
    } else {
      result.points.push(moved(corner, arriving, by), corner, moved(corner, leaving, by));
    }
  });
  return result;
}

function rightNormal(from: Point, to: Point): Point {
  const along = minus(to, from);
  const length = lengthOf(along);
  return { x: along.y / length, y: -along.x / length };
}

function addOuterCorner(result: RawOffset, corner: Point, normals: readonly Point[], by: number): void {
  for (let i = 1; i < normals.length; i++) {
    const [a, b] = [normals[i - 1], normals[i]];
    const sum = { x: a.x + b.x, y: a.y + b.y };
    result.points.push(moved(corner, sum, by / (1 + dot(a, b))));
    result.deviation = Math.max(result.deviation, by * (apexRatio(a, b) - 1));
  }
}

/** Distance of the crossing of two tangents of the unit circle from its centre: the secant of half the angle between. */
function apexRatio(a: Point, b: Point): number {
  return Math.sqrt(2 / (1 + dot(a, b)));
}

/** Double rounding of a sum, µm: coordinates to 2²⁴ carry 2⁻²⁹; anything nearer to a whole number than this is it. */
const WHOLE = 2 ** -20;

/** Corner plus a multiple of the vector, rounded away from the corner in both axes, so that no tangent is cut. */
function moved(corner: Point, vector: Point, factor: number): Point {
  return { x: corner.x + awayFromZero(vector.x * factor), y: corner.y + awayFromZero(vector.y * factor) };
}

function awayFromZero(value: number): number {
  return (value < 0 ? Math.floor(value + WHOLE) : Math.ceil(value - WHOLE)) + 0;
}

const AXES: readonly Point[] = [{ x: 1, y: 0 }, { x: 0, y: 1 }, { x: -1, y: 0 }, { x: 0, y: -1 }];

/** Normals counter-clockwise from one to the other, less than half a turn: the axes between, and steps that keep the tolerance. */
function tangentNormals(from: Point, to: Point, by: number, arcTolerance: number): Point[] {
  const isBetween = (axis: Point) => from.x * axis.y - from.y * axis.x > 0 && axis.x * to.y - axis.y * to.x > 0;
  const axes = AXES.filter(isBetween).toSorted((a, b) => dot(b, from) - dot(a, from));
  const marks = [from, ...axes, to];
  return [from, ...marks.slice(1).flatMap((end, i) => stepsWithinQuadrant(marks[i], end, by, arcTolerance))];
}

/** The normals after `from` up to `to`. Square roots only, so that every engine gives the same. */
function stepsWithinQuadrant(from: Point, to: Point, by: number, arcTolerance: number): Point[] {
  const keeps = (a: Point, b: Point) => by * (apexRatio(a, b) - 1) <= arcTolerance;
  if (keeps(from, to)) return [to];
  const middle = unitBetween(from, to, 0.5);
  if (dot(from, to) < Math.SQRT1_2) {
    return [...stepsWithinQuadrant(from, middle, by, arcTolerance), ...stepsWithinQuadrant(middle, to, by, arcTolerance)];
  }
  // Up to an eighth of a turn, even steps of the chord are nearly even steps of the angle; the middle ones are widest.
  let count = 2;
  while (!keeps(unitBetween(from, to, 0.5 - 0.5 / count), unitBetween(from, to, 0.5 + 0.5 / count))) count++;
  return Array.from({ length: count }, (_, i) => (i === count - 1 ? to : unitBetween(from, to, (i + 1) / count)));
}

function unitBetween(a: Point, b: Point, t: number): Point {
  const v = { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
  const length = lengthOf(v);
  return { x: v.x / length, y: v.y / length };
}
