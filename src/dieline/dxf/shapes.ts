import { arcOfBulge, ellipseArc } from '../../geometry/arc.ts';
import type { Curve, CurvePath } from '../../geometry/curve.ts';
import type { Point } from '../../geometry/point.ts';
import { lengthOf, samePoint } from '../../geometry/vector.ts';
import { oval } from '../shape.ts';
import { numberOf, numbersOf, type DxfRecord } from './groups.ts';
import { fitCurves } from './fit-spline.ts';
import { isSpline, splineCurves } from './spline.ts';

/**
 * The curves of an entity in its own plane, drawing units; undefined where it cannot be read. `rest` is what follows a
 * heavy polyline, its vertices among it. `tolerance` is for splines that no cubic can follow exactly.
 */
export function curvesOf(record: DxfRecord, rest: readonly DxfRecord[], tolerance: number): Iterable<Curve> | undefined {
  switch (record.type) {
    case 'LINE':
      return lineOf(record);
    case 'ARC':
      return arcOf(record);
    case 'CIRCLE':
      return circleOf(record);
    case 'ELLIPSE':
      return ellipseOf(record);
    case 'LWPOLYLINE':
      return lightPolyline(record);
    case 'POLYLINE':
      return heavyPolyline(record, rest);
    case 'SPLINE':
      return splineOf(record, tolerance);
    default:
      return undefined;
  }
}

export const LINE_ENTITIES: ReadonlySet<string> = new Set(['LINE', 'ARC', 'CIRCLE', 'ELLIPSE', 'LWPOLYLINE', 'POLYLINE', 'SPLINE']);

/** Entities whose points are in a plane of their own; the others are in the drawing's. */
export const OWN_PLANE: ReadonlySet<string> = new Set(['ARC', 'CIRCLE', 'LWPOLYLINE', 'POLYLINE', 'INSERT', 'SOLID', 'TRACE', 'TEXT', 'ATTRIB']);

/** The point whose x has this code, and y the code 10 more. */
export function pointOf(record: DxfRecord, code: number): Point | undefined {
  const [x, y] = [numberOf(record, code), numberOf(record, code + 10)];
  return x !== undefined && y !== undefined && Number.isFinite(x + y) ? { x, y } : undefined;
}

function lineOf(record: DxfRecord): CurvePath | undefined {
  const [from, to] = [pointOf(record, 10), pointOf(record, 11)];
  return from && to && [{ kind: 'line', from, to }];
}

function arcOf(record: DxfRecord): CurvePath | undefined {
  const circle = circleAt(record);
  const [first, last] = [numberOf(record, 50), numberOf(record, 51)];
  if (!circle || first === undefined || last === undefined || !Number.isFinite(first + last)) return undefined;
  const degrees = (((last - first) % 360) + 360) % 360;
  return degrees === 0 ? circleOf(record) : [ellipseArc(circle, (first * Math.PI) / 180, (degrees * Math.PI) / 180)];
}

function circleOf(record: DxfRecord): CurvePath | undefined {
  const circle = circleAt(record);
  return circle && oval(circle.centre.x, circle.centre.y, circle.radiusX, circle.radiusX)[0]?.curves;
}

function circleAt(record: DxfRecord) {
  const centre = pointOf(record, 10);
  const radius = numberOf(record, 40) ?? 0;
  return centre && radius > 0 && Number.isFinite(radius) ? { centre, radiusX: radius, radiusY: radius, tilt: 0 } : undefined;
}

/** Always in the drawing's plane; seen from below it runs the other way. */
function ellipseOf(record: DxfRecord): CurvePath | undefined {
  const [centre, axis, ratio] = [pointOf(record, 10), pointOf(record, 11), numberOf(record, 40) ?? 0];
  const [first, last] = [numberOf(record, 41) ?? 0, numberOf(record, 42) ?? 2 * Math.PI];
  if (!centre || !axis || !(ratio > 0 && Number.isFinite(ratio + first + last)) || lengthOf(axis) === 0) return undefined;
  const ellipse = { centre, radiusX: lengthOf(axis), radiusY: lengthOf(axis) * ratio, tilt: Math.atan2(axis.y, axis.x) };
  const whole = 2 * Math.PI;
  const swept = (((last - first) % whole) + whole) % whole;
  const way = (numberOf(record, 230) ?? 1) < 0 ? -1 : 1;
  const isWhole = swept < WHOLE_TURN || whole - swept < WHOLE_TURN;
  if (!isWhole) return [ellipseArc(ellipse, way * first, way * swept)];
  const quarters = [0, 1, 2, 3].map((quarter) => ellipseArc(ellipse, (quarter * Math.PI) / 2, Math.PI / 2));
  return quarters.map((quarter, i) => ({ ...quarter, to: quarters[(i + 1) % 4]!.from }));
}

/** Ends so near to one another make a whole ellipse, radians: programs write 2π with 7 to 16 digits. */
const WHOLE_TURN = 1e-6;

function lightPolyline(record: DxfRecord): CurvePath | undefined {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  for (const { code, value } of record.groups) {
    const last = vertices.at(-1);
    if (code === 10) vertices.push({ x: Number(value), y: NaN, bulge: 0 });
    else if (code === 20 && last) last.y = Number(value);
    else if (code === 42 && last) last.bulge = Number(value);
  }
  return polylineOf(vertices, ((numberOf(record, 70) ?? 0) & 1) === 1);
}

/** Frame points of a fitted curve are no part of it; meshes are no lines. */
function heavyPolyline(record: DxfRecord, vertices: readonly DxfRecord[]): CurvePath | undefined {
  const flags = numberOf(record, 70) ?? 0;
  if ((flags & (POLYGON_MESH | POLYFACE_MESH)) !== 0) return undefined;
  const own = vertices.filter((vertex) => vertex.type === 'VERTEX' && ((numberOf(vertex, 70) ?? 0) & FRAME_POINT) === 0);
  return polylineOf(own.map((vertex) => ({ x: NaN, y: NaN, ...pointOf(vertex, 10), bulge: numberOf(vertex, 42) ?? 0 })), (flags & 1) === 1);
}

const POLYGON_MESH = 16;
const POLYFACE_MESH = 64;
const FRAME_POINT = 16;

function polylineOf(vertices: readonly { readonly x: number; readonly y: number; readonly bulge: number }[], closed: boolean): CurvePath | undefined {
  if (vertices.length < 2 || !vertices.every(({ x, y, bulge }) => Number.isFinite(x + y + bulge))) return undefined;
  const points = vertices.map(({ x, y }) => ({ x, y }));
  const ends = closed ? [...points.slice(1), points[0]!] : points.slice(1);
  return ends.flatMap((to, i) => (samePoint(points[i]!, to) ? [] : [arcOfBulge(points[i]!, to, vertices[i]!.bulge)]));
}

/** Whether a spline is given by points that it goes through alone; how it runs between them the file does not say. */
export function isFitOnly(record: DxfRecord): boolean {
  return record.type === 'SPLINE' && numbersOf(record, 10).length === 0 && numbersOf(record, 11).length > 0;
}

function splineOf(record: DxfRecord, tolerance: number): Iterable<Curve> | undefined {
  const [xs, ys, weights] = [numbersOf(record, 10), numbersOf(record, 20), numbersOf(record, 41)];
  if (isFitOnly(record)) {
    const through = pairs(numbersOf(record, 11), numbersOf(record, 21));
    return through.every(({ x, y }) => Number.isFinite(x + y)) ? fitCurves(through, ((numberOf(record, 70) ?? 0) & 1) === 1) : undefined;
  }
  const points = pairs(xs, ys);
  const spline = { degree: numberOf(record, 71) ?? 3, knots: numbersOf(record, 40), points, ...(weights.length > 0 && { weights }) };
  return points.every(({ x, y }) => Number.isFinite(x + y)) && isSpline(spline) ? splineCurves(spline, tolerance) : undefined;
}

function pairs(xs: readonly number[], ys: readonly number[]): Point[] {
  return xs.map((x, i) => ({ x, y: ys[i] ?? NaN }));
}
