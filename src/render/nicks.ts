import type { LineCurve } from '../geometry/curve.ts';
import { boxOf, type Point } from '../geometry/point.ts';
import { turnPoint } from '../geometry/turn.ts';
import { between, distanceBetween } from '../geometry/vector.ts';
import type { DesignView, SheetView } from './sheet-view.ts';

/** Sides of a blank as its drawing shows it. */
export const BLANK_SIDES = ['left', 'right', 'upper', 'lower'] as const;
export type BlankSide = (typeof BLANK_SIDES)[number];

/** Small breaks in the knife that hold a blank in the sheet until it is stripped. */
export interface Nicks {
  readonly count: number;
  readonly widthMm: number;
  /** Sides whose outermost edges get none, such as lid fronts and glue flaps. */
  readonly clearOf: readonly BlankSide[];
}

/** A nick on the sheet and the direction of its knife (unit vector). */
export interface PlacedNick {
  readonly at: Point;
  readonly along: Point;
}

/** Shorter edges get no nick, mm: the knife's ends need their hold. */
const SHORTEST_EDGE_MM = 12;
/** An edge lies on a side of the blank when both its ends are this near to it, mm. */
const ON_SIDE_MM = 0.1;

/** So many nicks on every blank, spread over its straight edges so that the longest unheld stretch is short. */
export function placedNicks({ designs, placements }: SheetView, nicks: Nicks): PlacedNick[] {
  const own = designs.map((design) => nicksOf(design, nicks));
  return placements.flatMap(({ design, turn, x, y }) =>
    own[design]!.map(({ at, along }) => {
      const turned = turnPoint(at, turn);
      return { at: { x: turned.x + x, y: turned.y + y }, along: turnPoint(along, turn) };
    }),
  );
}

function nicksOf(design: DesignView, { count, clearOf }: Nicks): PlacedNick[] {
  const edges = design.outline
    .filter((curve): curve is LineCurve => curve.kind === 'line')
    .map((curve) => ({ curve, length: distanceBetween(curve.from, curve.to), nicks: 0 }))
    .filter(({ curve, length }) => length >= SHORTEST_EDGE_MM && !clearOf.some((side) => isOnSide(curve, side, design)));
  for (let i = 0; i < count && edges.length > 0; i++) {
    const longest = edges.reduce((best, edge) => (edge.length / (edge.nicks + 1) > best.length / (best.nicks + 1) ? edge : best));
    longest.nicks++;
  }
  return edges.flatMap(({ curve: { from, to }, length, nicks }) =>
    Array.from({ length: nicks }, (_, i) => ({ at: between(from, to, (i + 1) / (nicks + 1)), along: { x: (to.x - from.x) / length, y: (to.y - from.y) / length } })),
  );
}

function isOnSide({ from, to }: LineCurve, side: BlankSide, { ring }: DesignView): boolean {
  const { minX, minY, maxX, maxY } = boxOf(ring);
  const away = { left: (p: Point) => p.x - minX, right: (p: Point) => maxX - p.x, lower: (p: Point) => p.y - minY, upper: (p: Point) => maxY - p.y }[side];
  return away(from) <= ON_SIDE_MM && away(to) <= ON_SIDE_MM;
}
