import type { CurvePath } from '../geometry/curve.ts';
import { flattenPath } from '../geometry/flatten.ts';
import type { Point } from '../geometry/point.ts';
import { turnPoint } from '../geometry/turn.ts';
import { labelPlace, type Segment } from './label-place.ts';
import type { Scale } from './scale.ts';
import type { SceneItem, SceneSymbol } from './scene.ts';
import { circle, drawn, label, polyline } from './shapes.ts';
import type { DesignView, SheetView } from './sheet-view.ts';
import { textWidth } from './text-width.ts';

/** Heights of a station's number, in units of the body text: the least where there is room, and the most on large blanks. */
const LEAST_NUMBER = 1;
const MOST_NUMBER = 1.6;
/** The badge takes at most this part of the room around its place; on smaller blanks the number stands alone. */
const BADGE_PART = 0.5;
/** How far chords may leave a curve that a number keeps clear of, mm. */
const CHORD_TOLERANCE_MM = 0.5;
/** A number alone takes at most this part … */
const NUMBER_PART = 0.85;
/** … but is never smaller than this part of the least height: on a sliver it may cross the knives. */
const SMALLEST = 0.45;

export interface Stations {
  readonly symbols: readonly SceneSymbol[];
  readonly items: readonly SceneItem[];
}

/**
 * The numbers of the stations, each on a round badge. A point on the badge's rim shows which way the drawing's upper
 * edge lies, so that turned blanks are told from upright ones by shape.
 */
export function stations(view: SheetView, scale: Scale): Stations {
  const badges = view.designs.map((design, index) => ({ id: `design${index + 1}-badge`, ...badgeFor(design, view.placements.length, scale) }));
  const symbols = badges.map(({ id, at, radius, size, alone }): SceneSymbol => {
    const foot = alone ? size * 0.58 : radius * 0.82;
    const half = alone ? size * 0.22 : radius * 0.5;
    const nose = drawn([polyline([{ x: at.x - half, y: at.y + foot }, { x: at.x, y: at.y + foot + half * 1.2 }, { x: at.x + half, y: at.y + foot }], true)], { fill: 'ink' });
    return { id, items: alone ? [nose] : [nose, drawn([circle(at, radius)], { fill: 'paper', stroke: 'ink', width: radius * 0.09 })] };
  });
  const items = view.placements.flatMap((placement, i): SceneItem[] => {
    const badge = badges[placement.design]!;
    const { x, y } = onSheet(badge.at, placement);
    return [
      { kind: 'use', symbol: badge.id, at: { x: placement.x, y: placement.y }, turn: placement.turn },
      label(String(i + 1), { x, y: y - badge.size * 0.36 }, badge.size, { anchor: 'middle', bold: true }),
    ];
  });
  return { symbols, items };
}

/** The middle of each station's number, where it lies clear of rules, and the height that it may have there. */
export function stationNumbers(view: SheetView, scale: Scale): { readonly at: Point; readonly size: number }[] {
  const badges = view.designs.map((design) => badgeFor(design, view.placements.length, scale));
  return view.placements.map((placement) => ({ at: onSheet(badges[placement.design]!.at, placement), size: badges[placement.design]!.size }));
}

function onSheet(at: Point, { turn, x, y }: SheetView['placements'][number]): Point {
  const turned = turnPoint(at, turn);
  return { x: x + turned.x, y: y + turned.y };
}

interface Badge {
  readonly at: Point;
  readonly radius: number;
  /** Height of the number. */
  readonly size: number;
  /** Too little room for the round: only the number and the point. */
  readonly alone: boolean;
}

/** Chords that follow the curves closely enough for a label. */
function segmentsOf(curves: CurvePath): Segment[] {
  const points = flattenPath(curves, CHORD_TOLERANCE_MM);
  return points.slice(1).map((to, i) => [points[i]!, to]);
}

/** Clear of creases where that leaves room for a badge of the least size, else clear of the knives only. */
function badgeFor(design: DesignView, highest: number, { unit }: Scale): Badge {
  const rings = [design.ring, ...design.openingRings];
  const creases = design.rules.flatMap(({ curves }) => segmentsOf(curves));
  const radiusOf = (size: number) => {
    const halfWidth = textWidth('0'.repeat(String(highest).length), size, true) / 2;
    return Math.sqrt(halfWidth ** 2 + (size * 0.36) ** 2) * 1.18;
  };
  const least = radiusOf(unit * LEAST_NUMBER);
  const clear = labelPlace(rings, creases, least / BADGE_PART);
  const { at, clearance } = clear.clearance >= least / BADGE_PART ? clear : labelPlace(rings, [], least / BADGE_PART);
  const alone = least > clearance * BADGE_PART;
  const radius = alone ? Math.max(least * SMALLEST, Math.min(least, clearance * NUMBER_PART)) : Math.min(radiusOf(unit * MOST_NUMBER), clearance * BADGE_PART);
  return { at, radius, size: (unit * LEAST_NUMBER * radius) / least, alone };
}
