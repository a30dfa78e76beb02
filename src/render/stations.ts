import { turnPoint } from '../geometry/turn.ts';
import { labelPlace, type Segment } from './label-place.ts';
import type { Scale } from './scale.ts';
import type { SceneItem, SceneSymbol } from './scene.ts';
import { filled, circle, label, polyline } from './shapes.ts';
import type { DesignView, SheetView } from './sheet-view.ts';
import { textWidth } from './text-width.ts';

/** Height of a station's number, in units of the body text, where there is room for it. */
const NUMBER_SIZE = 1.25;
/** Room that the badge leaves free around it, as a part of the clearance. */
const FREE = 0.9;

export interface Stations {
  readonly symbols: readonly SceneSymbol[];
  readonly items: readonly SceneItem[];
}

/**
 * The numbers of the stations, each on a round badge. A point on the badge's rim shows which way the drawing's upper
 * edge lies, so that turned blanks are told from upright ones by shape.
 */
export function stations(view: SheetView, scale: Scale): Stations {
  const wanted = badgeRadius(view.placements.length, scale.unit * NUMBER_SIZE);
  const badges = view.designs.map((design, index) => {
    const place = roomiest(design, wanted);
    const radius = Math.min(wanted, place.clearance * FREE);
    return { id: `design${index + 1}-badge`, at: place.at, radius, size: (scale.unit * NUMBER_SIZE * radius) / wanted };
  });
  const symbols = badges.map(({ id, at, radius }): SceneSymbol => {
    const nose = polyline([{ x: at.x - radius * 0.5, y: at.y + radius * 0.82 }, { x: at.x, y: at.y + radius * 1.45 }, { x: at.x + radius * 0.5, y: at.y + radius * 0.82 }], true);
    return { id, items: [filled([nose], { fill: 'ink' }), filled([circle(at, radius)], { fill: 'paper', stroke: 'ink', width: radius * 0.09 })] };
  });
  const items = view.placements.flatMap(({ design, turn, x, y }, i): SceneItem[] => {
    const badge = badges[design]!;
    const at = turnPoint(badge.at, turn);
    return [
      { kind: 'use', symbol: badge.id, at: { x, y }, turn },
      label(String(i + 1), { x: x + at.x, y: y + at.y - badge.size * 0.36 }, badge.size, { anchor: 'middle', bold: true }),
    ];
  });
  return { symbols, items };
}

/** Clear of creases where that leaves room for a badge of the wanted size, else clear of the knives only. */
function roomiest(design: DesignView, wanted: number) {
  const rings = [design.ring, ...design.openingRings];
  const creases = design.rules.flatMap(({ curves }) => curves.map(({ from, to }): Segment => [from, to]));
  const clear = labelPlace(rings, creases, wanted / FREE);
  return clear.clearance >= wanted / FREE ? clear : labelPlace(rings, [], wanted / FREE);
}

function badgeRadius(highest: number, size: number): number {
  const halfWidth = textWidth('0'.repeat(String(highest).length), size, true) / 2;
  return Math.sqrt(halfWidth ** 2 + (size * 0.36) ** 2) * 1.18;
}
