import { toMillimetres } from '../base/units.ts';
import { intersect, unite } from '../geometry/boolean.ts';
import { boxOf, type Box, type Point, type Polygon } from '../geometry/point.ts';
import { distanceBetween } from '../geometry/vector.ts';

/** A stretch of the outline where the print ends before the bleed does. Millimetres, the design's axes. */
export interface BleedPiece {
  /** The side that the stretch faces. */
  readonly edge: 'left' | 'right' | 'lower' | 'upper';
  readonly from: Point;
  readonly to: Point;
  readonly lengthMm: number;
  /** How much of the bleed is missing; more than the bleed where the print ends within the blank. */
  readonly missingMm: number;
}

/** Less is rounding, and the deviation of flattened curves, µm. */
const SHORT_BY_MICRONS = 50;
/** Places along the outline at which the print is looked at, µm apart at most. */
const STEP_MICRONS = 250;
/** Where the end of the print runs away from the outline more steeply than this, the print ends there and wants no bleed. */
const STEEPEST = 0.5;
/** Shorter stretches are corners of what is drawn, mm. */
const LEAST_STRETCH_MM = 1;

/**
 * Where bleed is missing, stretch by stretch round the whole outline, flaps and concave corners as well. A place wants
 * bleed where there is print within `reach` inside of it; what lies in the blank itself, beyond a concave corner, is no bleed.
 * All in whole µm of the design's axes; `outline` counter-clockwise, `printed` the areas that print goes beyond the outline
 * with.
 */
export function missingBleed(outline: readonly Point[], printed: readonly Polygon[], { bleed, reach }: { readonly bleed: number; readonly reach: number }): BleedPiece[] {
  const blank: Polygon = { outer: outline, holes: [] };
  const boxes = printed.map(({ outer }) => boxOf(outer));
  const pieces = outline.flatMap((from, i): BleedPiece[] => {
    const to = outline[(i + 1) % outline.length]!;
    const axes = axesOf(from, to);
    const near = printedNear(printed, boxes, boxOf([axes.at(0, -reach), axes.at(axes.length, -reach), axes.at(0, bleed), axes.at(axes.length, bleed)]));
    return near.length === 0 || axes.length === 0 ? [] : stretches(axes, near, blank, { bleed, reach });
  });
  return joined(pieces).filter(({ lengthMm }) => lengthMm >= LEAST_STRETCH_MM);
}

/** Along an edge and outward from it. */
interface Axes {
  readonly length: number;
  readonly at: (along: number, outward: number) => Point;
  readonly along: (point: Point) => number;
  readonly outward: (point: Point) => number;
  readonly edge: BleedPiece['edge'];
}

function axesOf(from: Point, to: Point): Axes {
  const length = distanceBetween(from, to);
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  // The blank lies to the left of its outline.
  const [nx, ny] = [uy, -ux];
  return {
    length,
    at: (along, outward) => ({ x: Math.round(from.x + along * ux + outward * nx), y: Math.round(from.y + along * uy + outward * ny) }),
    along: ({ x, y }) => (x - from.x) * ux + (y - from.y) * uy,
    outward: ({ x, y }) => (x - from.x) * nx + (y - from.y) * ny,
    edge: Math.abs(nx) > Math.abs(ny) ? (nx < 0 ? 'left' : 'right') : ny < 0 ? 'lower' : 'upper',
  };
}

function printedNear(printed: readonly Polygon[], boxes: readonly Box[], { minX, minY, maxX, maxY }: Box): Polygon[] {
  return printed.filter((_, i) => boxes[i]!.minX <= maxX && boxes[i]!.maxX >= minX && boxes[i]!.minY <= maxY && boxes[i]!.maxY >= minY);
}

function strip({ at, length }: Axes, inner: number, outer: number): Polygon {
  return { outer: [at(-1, inner), at(length + 1, inner), at(length + 1, outer), at(-1, outer)].toReversed(), holes: [] };
}

/** Stretches of one edge that lack bleed. */
function stretches(axes: Axes, printed: readonly Polygon[], blank: Polygon, { bleed, reach }: { readonly bleed: number; readonly reach: number }): BleedPiece[] {
  const inked = edgesIn(axes, unite(intersect([strip(axes, -reach, bleed)], printed)));
  const beyond = edgesIn(axes, intersect([strip(axes, 0, bleed)], [blank]));
  const count = Math.ceil(axes.length / STEP_MICRONS);
  const step = axes.length / count;
  /** How far print goes and how far it should, from the middle of each step; undefined where there is none. */
  const samples = Array.from({ length: count }, (_, i) => {
    const along = (i + 0.5) * step;
    const ends = spansAt(inked, along).filter(([start, end]) => start <= 0 && end >= -reach).at(-1)?.[1];
    const [entered] = spansAt(beyond, along).map(([start]) => start).filter((start) => start > SHORT_BY_MICRONS);
    return ends === undefined ? undefined : { ends, wanted: Math.min(bleed, entered ?? bleed) };
  });
  const beside = (i: number) => [i - 1, i + 1].filter((other) => samples[other] !== undefined);
  // A step of the print, steep on one side only, is no slope.
  const isSteep = (i: number) => beside(i).length > 0 && beside(i).every((other) => Math.abs(samples[other]!.ends - samples[i]!.ends) > STEEPEST * step + 1);
  const pieces: BleedPiece[] = [];
  samples.forEach((sample, i) => {
    const missing = sample ? sample.wanted - sample.ends : 0;
    if (missing <= SHORT_BY_MICRONS || isSteep(i)) return;
    const [from, to] = [axes.at(i * step, 0), axes.at((i + 1) * step, 0)].map(millimetres) as [Point, Point];
    pieces.push({ edge: axes.edge, from, to, lengthMm: step / 1000, missingMm: toMillimetres(Math.round(missing)) });
  });
  return joined(pieces);
}

/** An edge of a polygon in the axes of a strip: along and outward. */
interface StripEdge {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

function edgesIn({ along, outward }: Axes, polygons: readonly Polygon[]): StripEdge[] {
  return polygons.flatMap(({ outer, holes }) => [outer, ...holes]).flatMap((ring) => {
    const points = ring.map((point): [number, number] => [along(point), outward(point)]);
    return points.map((from, i): StripEdge => ({ from, to: points[(i + 1) % points.length]! }));
  });
}

/** What polygons cover on the ray outward from a place of the edge, from the innermost on. */
function spansAt(edges: readonly StripEdge[], place: number): [number, number][] {
  const crossed = edges
    .filter(({ from, to }) => from[0] <= place !== to[0] <= place)
    .map(({ from, to }) => from[1] + ((place - from[0]) / (to[0] - from[0])) * (to[1] - from[1]))
    .toSorted((a, b) => a - b);
  return Array.from({ length: Math.floor(crossed.length / 2) }, (_, i) => [crossed[2 * i]!, crossed[2 * i + 1]!]);
}

/** Stretches that follow one another on one side and lack the same are one. */
function joined(pieces: readonly BleedPiece[]): BleedPiece[] {
  const isOne = (a: BleedPiece, b: BleedPiece) =>
    a.edge === b.edge && Math.abs(a.missingMm - b.missingMm) * 1000 <= SHORT_BY_MICRONS && Math.hypot(a.to.x - b.from.x, a.to.y - b.from.y) <= JOIN_MM;
  const join = (a: BleedPiece, b: BleedPiece): BleedPiece => ({ ...a, to: b.to, lengthMm: a.lengthMm + b.lengthMm, missingMm: Math.max(a.missingMm, b.missingMm) });
  const merged: BleedPiece[] = [];
  for (const piece of pieces) {
    const last = merged.at(-1);
    if (last && isOne(last, piece)) merged[merged.length - 1] = join(last, piece);
    else merged.push(piece);
  }
  const [first, last] = [merged[0], merged.at(-1)];
  if (merged.length > 1 && isOne(last!, first!)) return [join(last!, first!), ...merged.slice(1, -1)];
  return merged;
}

const JOIN_MM = 0.5;

function millimetres({ x, y }: Point): Point {
  return { x: toMillimetres(x), y: toMillimetres(y) };
}
