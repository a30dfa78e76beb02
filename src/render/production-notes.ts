import { boxOf } from '../geometry/point.ts';
import { mapPath, translation, compose, rotation } from '../geometry/affine.ts';
import { degreesOf } from '../geometry/turn.ts';
import { dimensionChain } from './dimension.ts';
import type { Format } from './format.ts';
import type { HandoverWords } from './messages/english-handover.ts';
import { PRODUCTION_SCALE, STATION_UNIT_MM } from './production-scale.ts';
import type { PathItem, SceneItem, TextItem } from './scene.ts';
import { drawn, label, line, polyline } from './shapes.ts';
import type { SheetView } from './sheet-view.ts';
import { stations } from './stations.ts';
import { placedBoxes, stepRuns } from './step-runs.ts';

type Note = PathItem | TextItem;

const { unit, thin, heavy } = PRODUCTION_SCALE;

/** Station numbers, gripper edge, lay, centre line, areas kept free and one line of words; all within the sheet. */
export function legendNotes(view: SheetView, notice: string, words: HandoverWords): Note[] {
  const { sheet, usable, lay } = view;
  const middle = sheet.width / 2;
  const edge = lay === 'left' ? 0 : sheet.width;
  const inward = lay === 'left' ? 1 : -1;
  const layHeight = sheet.height * 0.22;
  const size = Math.min(unit, Math.max(LEAST_TEXT_MM, usable.y * 0.3));
  // The side margin up to the bleed is all the room that wedge and word have.
  const margin = lay === 'left' ? usable.x : sheet.width - usable.x - usable.width;
  const wedge = Math.min(4, Math.max(1.5, (margin - view.bleed) * 0.8));
  const laySize = Math.min(size, Math.max(LEAST_TEXT_MM * 0.8, wedge * 0.8));
  return [
    ...stationNotes(view),
    drawn([polyline([{ x: edge + inward * 0.2, y: layHeight }, { x: edge + inward * wedge, y: layHeight + wedge / 2 }, { x: edge + inward * wedge, y: layHeight - wedge / 2 }], true)], { fill: 'ink' }),
    drawn([line({ x: middle, y: 0 }, { x: middle, y: CENTRE_TICK_MM }), line({ x: middle, y: sheet.height }, { x: middle, y: sheet.height - CENTRE_TICK_MM })], { stroke: 'ink', width: thin }),
    drawn([line({ x: 0, y: heavy / 2 }, { x: sheet.width, y: heavy / 2 })], { stroke: 'ink', width: heavy }),
    drawn(view.keepOuts.map(({ ring }) => polyline(ring, true)), { stroke: 'ink', width: thin, dash: [1.2, 0.8] }),
    ...view.keepOuts.map(({ kind, ring }) => {
      const { minX, minY, maxY } = boxOf(ring);
      return label(words.keepOut(kind), { x: minX + 2, y: (minY + maxY) / 2 - 1 }, Math.min(unit, (maxY - minY) * 0.6));
    }),
    label(notice, { x: 6, y: size * 0.7 }, size),
    label(words.gripperEdge, { x: middle + 2, y: size * 2 }, size, { bold: true }),
    label(words.lay, { x: edge + inward * wedge * 0.5 + laySize * 0.36, y: layHeight + wedge / 2 + 1 }, laySize, { turn: 1, bold: true }),
  ];
}

/** Smaller letters are not read on a plate or a die, mm. */
const LEAST_TEXT_MM = 2;
const CENTRE_TICK_MM = 8;

/** Margins and steps along two edges of the sheet. */
export function dimensionNotes(view: SheetView, format: Format): SceneItem[] {
  const boxes = placedBoxes(view);
  const upper = Math.max(...boxes.map(({ maxY }) => maxY));
  const chains = [
    { axis: 'x', at: chainHeight(view, upper), edge: upper },
    { axis: 'y', at: view.sheet.width - 1.5, edge: Math.max(...boxes.map(({ maxX }) => maxX)) },
  ] as const;
  return chains.flatMap(({ axis, at, edge }) => dimensionChain({ axis, at, edge: Math.min(edge, at - 0.1), runs: stepRuns(view, axis, format, PRODUCTION_SCALE) }, format, PRODUCTION_SCALE));
}

/**
 * Above the blanks near the tail, below a colour bar or other area kept free that stands there; where that has no room, rather
 * over the bar than over a blank.
 */
function chainHeight({ sheet, keepOuts }: SheetView, blanks: number): number {
  const top = sheet.height - 5;
  const there = keepOuts.map(({ ring }) => boxOf(ring)).filter(({ maxY }) => maxY > top - 1);
  const below = Math.min(top, ...there.map(({ minY }) => minY - unit * 1.4));
  return below > blanks ? below : Math.max(top, Math.min(blanks + CLEAR_MM, sheet.height - CLEAR_MM));
}

/** Ticks reach down by a little less. */
const CLEAR_MM = unit * 0.3;

/** The stations' numbers and the noses that tell which way the drawing's upper edge lies, as paths and texts on the sheet. */
function stationNotes(view: SheetView): Note[] {
  const { symbols, items } = stations(view, { ...PRODUCTION_SCALE, unit: STATION_UNIT_MM });
  const byId = new Map(symbols.map((symbol) => [symbol.id, symbol]));
  return items.flatMap((item): Note[] => {
    if (item.kind !== 'use') return [item];
    const map = compose(translation(item.at.x, item.at.y), rotation(degreesOf(item.turn)));
    return byId.get(item.symbol)!.items.map(({ paths, look }) => ({ kind: 'path', paths: paths.map((path) => mapPath(map, path)), look: look.stroke ? { stroke: 'ink', width: thin } : look }));
  });
}
