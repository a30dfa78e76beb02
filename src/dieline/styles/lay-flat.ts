import { toMicrons, toMillimetres } from '../../base/units.ts';
import { arcBetween } from '../../geometry/arc.ts';
import { compose, IDENTITY, mapCurve, mapPoint, reversePath, type Affine } from '../../geometry/affine.ts';
import type { Curve, CurvePath } from '../../geometry/curve.ts';
import { loopArea } from '../../geometry/loop-area.ts';
import type { Point } from '../../geometry/point.ts';
import { distanceBetween, samePoint } from '../../geometry/vector.ts';
import { frame, mapInner, type Flap, type Inner, type Piece } from './flap.ts';

/** A straight line about which a panel folds. */
export interface Hinge {
  readonly from: Point;
  readonly to: Point;
}

/** One panel or flap of the flat blank. */
export interface FlatPanel {
  readonly id: string;
  /** Closed, counter-clockwise, hinges included. */
  readonly outline: CurvePath;
  /** The panel that it hangs on, by its place in the list, and where. The first panel has none. */
  readonly hangsOn?: { readonly panel: number; readonly hinge: Hinge };
}

export interface GlueArea {
  readonly area: CurvePath;
  /** Ids of the panel that carries the glue and of the one that it sticks to. */
  readonly on: string;
  readonly onto: string;
}

/** A blank as it lies on the sheet: whole micrometres, written as millimetres, y up. */
export interface FlatBlank {
  readonly panels: readonly FlatPanel[];
  /** Closed, counter-clockwise. */
  readonly outline: CurvePath;
  readonly creases: readonly CurvePath[];
  /** Cuts that begin at the outline and end within the blank. */
  readonly slits: readonly CurvePath[];
  /** Closed, clockwise. */
  readonly openings: readonly CurvePath[];
  readonly gluing: readonly GlueArea[];
}

/** Lays the first panel and all that hangs on it into one plane. */
export function layFlat(first: Flap): FlatBlank {
  const panels: FlatPanel[] = [];
  const creases: CurvePath[] = [];
  const slits: CurvePath[] = [];
  const openings: CurvePath[] = [];
  const gluing: GlueArea[] = [];

  const addInner = (id: string, map: Affine, inner: Inner = {}) => {
    const placed = mapInner(map, inner);
    creases.push(...placed.creases.map(wholeMicrons));
    openings.push(...placed.openings.map((path) => clockwise(wholeMicrons(path))));
    gluing.push(...placed.gluing.map(({ area, onto }) => ({ area: wholeMicrons(area), on: id, onto })));
  };

  /** Returns the free edge with everything that hangs on it. */
  const lay = (flap: Flap, map: Affine, hangsOn?: FlatPanel['hangsOn']): Curve[] => {
    const place = panels.length;
    const own = flap.side.map(({ curve }) => mapCurve(map, curve));
    const closing: Curve[] = hangsOn ? [{ kind: 'line', from: hangsOn.hinge.to, to: hangsOn.hinge.from }] : [];
    panels.push({ id: flap.id, outline: wholeMicrons([...own, ...closing]), ...(hangsOn ? { hangsOn } : {}) });
    addInner(flap.id, map, flap.inner);
    return flap.side.flatMap((piece, i) => {
      addInner(flap.id, map, piece.inner);
      if (!piece.flap) return [own[i]];
      const hinge: Hinge = { from: wholePoint(own[i].from), to: wholePoint(own[i].to) };
      addHinge(piece, map);
      return lay(piece.flap, compose(map, frame(piece.curve.from, piece.curve.to)), { panel: place, hinge });
    });
  };
  const addHinge = ({ curve: { from, to }, slit = 0 }: Piece, map: Affine) => {
    const inside = frame(from, to);
    const length = distanceBetween(from, to);
    const at = (x: number) => mapPoint(compose(map, inside), { x, y: 0 });
    const line = (a: number, b: number) => wholeMicrons([{ kind: 'line', from: at(a), to: at(b) }]);
    creases.push(line(slit, length - slit));
    if (slit > 0) slits.push(line(0, slit), line(length, length - slit));
  };

  return { outline: wholeMicrons(lay(first, IDENTITY)), panels, creases, slits, openings, gluing };
}

/** Ends on whole micrometres, each curve beginning where the one before it ends. */
function wholeMicrons(path: CurvePath): CurvePath {
  const curves: Curve[] = [];
  for (const curve of path) {
    const from = curves.length > 0 ? curves[curves.length - 1].to : wholePoint(curve.from);
    const to = wholePoint(curve.to);
    if (!samePoint(from, to)) curves.push(between(curve, from, to));
  }
  return curves;
}

/** An arc is made anew from its ends and whole radii, so that a file with three decimals holds exactly this one. */
function between(curve: Curve, from: Point, to: Point): Curve {
  if (curve.kind !== 'arc') return { ...curve, from, to };
  const { tilt, sweep } = curve;
  return arcBetween({ from, to, radiusX: whole(curve.radiusX), radiusY: whole(curve.radiusY), tilt, large: Math.abs(sweep) > Math.PI, positive: sweep > 0 })!;
}

/** A ten-thousandth of a micrometre is taken off first, so that 0.5 µm with and without the noise of a rotation round the same way. */
function whole(mm: number): number {
  return toMillimetres(toMicrons(Math.round(mm * 1e7) / 1e7)) + 0;
}

function wholePoint({ x, y }: Point): Point {
  return { x: whole(x), y: whole(y) };
}

function clockwise(path: CurvePath): CurvePath {
  return loopArea(path) < 0 ? path : reversePath(path);
}
