import { rotation, mapPath } from '../../../geometry/affine.ts';
import type { CurvePath } from '../../../geometry/curve.ts';
import { writePathData } from '../../../geometry/path-data.ts';
import type { Point } from '../../../geometry/point.ts';
import { degreesOf, TURNS, turnPoint, type Turn } from '../../../geometry/turn.ts';
import { labelPlace } from '../../../render/label-place.ts';
import { polyline } from '../../../render/shapes.ts';
import type { DesignView, SheetView } from '../../../render/sheet-view.ts';
import { svg } from './elements.ts';

/** Decimals of path data: finer than a screen shows at the closest look. */
const DECIMALS = 4;
/** Room wanted around a station's number, as a part of the design's shorter side. */
const NUMBER_ROOM = 0.1;

/** Height of a number that can be read while the whole sheet is shown, as a part of the sheet's width. */
const SHEET_PART = 0.015;

/** One design in one rotation, drawn once and used by every blank that stands so. */
export interface DesignDrawing {
  readonly symbol: SVGGElement;
  readonly id: string;
  /** Where the station's number stands, mm in the blank's own coordinates, and its height. */
  readonly number: Point;
  readonly numberSize: number;
}

/** All designs in all rotations. `prefix` keeps ids apart from those of other pictures in the page. */
export function designDrawings({ designs, sheet }: Pick<SheetView, 'designs' | 'sheet'>, prefix: string): DesignDrawing[][] {
  return designs.map((design, index) => {
    const place = numberPlace(design, sheet.width * SHEET_PART);
    return TURNS.map((turn) => drawingOf(design, turn, `${prefix}-design${index}-${degreesOf(turn)}`, place));
  });
}

function drawingOf(design: DesignView, turn: Turn, id: string, { at, size }: { at: Point; size: number }): DesignDrawing {
  const data = (paths: readonly CurvePath[]) => paths.map((path) => writePathData(mapPath(rotation(degreesOf(turn)), path), DECIMALS)).join(' ');
  const path = (name: string, paths: readonly CurvePath[]) => (paths.length === 0 ? [] : [svg('path', { class: name, d: data(paths) })]);
  const others = [...new Set(design.rules.map(({ role }) => role))].filter((role) => role !== 'Bleed');
  const symbol = svg('g', { id }, [
    ...path('hand-bleed', design.bleedOutline ? [polyline(design.bleedOutline, true)] : []),
    ...path('hand-area', [design.outline, ...design.openings]),
    ...others.flatMap((role) => path(`hand-rule hand-rule-${role}`, design.rules.filter((rule) => rule.role === role).map(({ curves }) => curves))),
    ...path('hand-opening', design.openings),
    ...path('hand-cut', [design.outline]),
    ...path('hand-head', [headMark(at, size)]),
  ]);
  return { symbol, id, number: turnPoint(at, turn), numberSize: size };
}

function numberPlace({ ring, openingRings }: DesignView, readable: number): { at: Point; size: number } {
  const xs = ring.map(({ x }) => x);
  const ys = ring.map(({ y }) => y);
  const side = Math.min(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
  const { at, clearance } = labelPlace([ring, ...openingRings], [], side * NUMBER_ROOM);
  return { at, size: Math.max(side * 0.03, Math.min(Math.max(side * 0.12, readable), clearance * 0.8)) };
}

/** A point above the number as drawn: it shows where the drawing's upper edge lies when the blank is turned. */
function headMark({ x, y }: Point, size: number): CurvePath {
  const foot = y + size * 0.62;
  return polyline([{ x: x - size * 0.28, y: foot }, { x, y: foot + size * 0.34 }, { x: x + size * 0.28, y: foot }], true);
}
