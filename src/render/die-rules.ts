import { isKnife, knifeRank } from '../dieline/knife-roles.ts';
import { curvePart, curvePoint } from '../dieline/curve-part.ts';
import type { Role } from '../dieline/dieline.ts';
import { compose, mapPath, rotation, translation, type Affine } from '../geometry/affine.ts';
import { indexBoxes } from '../geometry/box-index.ts';
import type { Curve, CurvePath, LineCurve } from '../geometry/curve.ts';
import { boxOf, type Box, type Point } from '../geometry/point.ts';
import { degreesOf } from '../geometry/turn.ts';
import { cross, distanceBetween, dot, minus, samePoint } from '../geometry/vector.ts';
import type { SheetView } from './sheet-view.ts';

/** A rule of the die, or the edge of an area, where it stands on the sheet. Millimetres, seen from the printed side. */
export interface DieRule {
  readonly role: Role;
  /** Counts from 0, in station order. A rule that two stations share belongs to the first. */
  readonly station: number;
  readonly curves: CurvePath;
}

/** Rules so near to one another are one piece of steel, mm: layout files hold curves to 0.0001, and a knife is 0.71 thick. */
const SAME_RULE_MM = 0.005;

/**
 * Every rule of the form once: outlines and openings are cut, the other rules keep their roles. Where two run on one
 * another (a common knife, a line drawn twice) the stronger stays, then that of the lower station. Areas such as glue
 * flaps are handed on as they are.
 */
export function dieRules(view: SheetView): DieRule[] {
  const placed = placedRules(view);
  const knives = placed.filter(({ role }) => isKnife(role)).toSorted((a, b) => knifeRank(a.role) - knifeRank(b.role) || a.station - b.station);
  const areas = placed.filter(({ role }) => !isKnife(role));
  return [...withoutDoubles(knives), ...areas];
}

function placedRules({ designs, placements }: SheetView): DieRule[] {
  return placements.flatMap((placement, station) => {
    const { outline, openings, rules } = designs[placement.design]!;
    const map = placementMap(placement);
    const lines = [...[outline, ...openings].map((curves) => ({ role: 'Cutting' as Role, curves })), ...rules];
    return lines.map(({ role, curves }) => ({ role, station, curves: mapPath(map, curves) }));
  });
}

/** A design's axes to the sheet's. */
function placementMap({ turn, x, y }: SheetView['placements'][number]): Affine {
  return compose(translation(x, y), rotation(degreesOf(turn)));
}

function withoutDoubles(rules: readonly DieRule[]): DieRule[] {
  const curves = rules.flatMap((rule) => rule.curves);
  const boxes = curves.map(boxOfCurve);
  const index = indexBoxes(boxes);
  let number = 0;
  return rules.flatMap((rule) => {
    const kept = rule.curves.map((curve) => {
      const own = number++;
      const earlier = index.search(grown(boxes[own]!)).filter((other) => other < own);
      return leftOver(curve, earlier.map((other) => curves[other]!));
    });
    if (kept.every((parts, i) => parts.length === 1 && parts[0] === rule.curves[i])) return [rule];
    return joined(kept.flat()).map((path) => ({ ...rule, curves: path }));
  });
}

/** What of the curve lies on none of the others. */
function leftOver(curve: Curve, others: readonly Curve[]): readonly Curve[] {
  if (curve.kind !== 'line') return others.some((other) => coincide(curve, other)) ? [] : [curve];
  const length = distanceBetween(curve.from, curve.to);
  const covered = others.flatMap((other) => (other.kind === 'line' ? coveredPart(curve, other, length) : [])).toSorted(([a], [b]) => a - b);
  if (covered.length === 0) return [curve];
  const free: Curve[] = [];
  let at = 0;
  for (const [from, to] of [...covered, [1, 1] as const]) {
    if ((from - at) * length > SAME_RULE_MM) free.push(curvePart(curve, at, from));
    at = Math.max(at, to);
  }
  return free;
}

/** The stretch of the line, as parameters 0 … 1, that runs on the other one. */
function coveredPart(line: LineCurve, other: LineCurve, length: number): (readonly [number, number])[] {
  const long = distanceBetween(other.from, other.to) > length ? other : line;
  const short = long === line ? other : line;
  if (![short.from, short.to].every((point) => distanceToLine(point, long) <= SAME_RULE_MM)) return [];
  const along = minus(line.to, line.from);
  const places = [other.from, other.to].map((point) => dot(minus(point, line.from), along) / (length * length));
  const [from, to] = [Math.max(0, Math.min(...places)), Math.min(1, Math.max(...places))];
  return (to - from) * length > SAME_RULE_MM ? [[from, to]] : [];
}

function distanceToLine(point: Point, { from, to }: LineCurve): number {
  return Math.abs(cross(minus(to, from), minus(point, from))) / distanceBetween(from, to);
}

/** Arcs and free curves count as one only when they run on one another from end to end. */
function coincide(a: Curve, b: Curve): boolean {
  const near = (p: Point, q: Point) => distanceBetween(p, q) <= SAME_RULE_MM;
  const along = [0.25, 0.5, 0.75];
  const forwards = near(a.from, b.from) && near(a.to, b.to) && along.every((t) => near(curvePoint(a, t), curvePoint(b, t)));
  return a.kind === b.kind && (forwards || (near(a.from, b.to) && near(a.to, b.from) && along.every((t) => near(curvePoint(a, t), curvePoint(b, 1 - t)))));
}

function joined(curves: readonly Curve[]): CurvePath[] {
  const paths: Curve[][] = [];
  for (const curve of curves) {
    const last = paths.at(-1);
    if (last && samePoint(last.at(-1)!.to, curve.from)) last.push(curve);
    else paths.push([curve]);
  }
  return paths;
}

function boxOfCurve(curve: Curve): Box {
  if (curve.kind === 'arc') {
    const reach = Math.max(curve.radiusX, curve.radiusY);
    const { x, y } = curve.centre;
    return { minX: x - reach, minY: y - reach, maxX: x + reach, maxY: y + reach };
  }
  return boxOf(curve.kind === 'line' ? [curve.from, curve.to] : [curve.from, curve.control1, curve.control2, curve.to]);
}

function grown({ minX, minY, maxX, maxY }: Box): Box {
  return { minX: minX - SAME_RULE_MM, minY: minY - SAME_RULE_MM, maxX: maxX + SAME_RULE_MM, maxY: maxY + SAME_RULE_MM };
}
