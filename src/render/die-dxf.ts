import { Colors, DxfWriter, point3d, TextHorizontalAlignment, Units } from '@tarikjabiri/dxf';
import { IDENTITY, mapPath, mapPoint, type Affine } from '../geometry/affine.ts';
import type { ArcCurve, Curve, CurvePath } from '../geometry/curve.ts';
import { flattenPath } from '../geometry/flatten.ts';
import type { Point } from '../geometry/point.ts';
import { samePoint } from '../geometry/vector.ts';
import type { DieRule } from './die-rules.ts';
import type { DieSide, HandoverWords } from './messages/english-handover.ts';
import { placedNicks, type Nicks, type PlacedNick } from './nicks.ts';
import { isArea } from './processing-steps.ts';
import type { SheetView } from './sheet-view.ts';
import { PRODUCTION_SCALE, STATION_UNIT_MM } from './production-scale.ts';
import { stationNumbers } from './stations.ts';
import { textWidth } from './text-width.ts';

/** Free curves and elliptical arcs become chains of chords that leave them by at most this, mm. Lines and arcs of circles stay what they are. */
export const DXF_TOLERANCE_MM = 0.005;

const COLOUR_OF: Readonly<Record<string, number>> = { Cutting: Colors.Red, Creasing: Colors.Blue, ReverseCreasing: Colors.Cyan, Perforating: Colors.Magenta, CuttingCreasing: Colors.Yellow };

/** Decimals of lengths in the file, mm: 1 nm, so that ends that meet still meet. */
const round = (value: number) => Math.round(value * 1e6) / 1e6 + 0;

/**
 * The die as DXF (millimetres, sheet coordinates, y away from the gripper edge): one layer a role, named as in
 * ISO 19593-1, and layers for sheet, station numbers and marks. `rule` mirrors the sheet left to right.
 */
export function dieDxf(view: SheetView, rules: readonly DieRule[], { side, notice, words, nicks }: { readonly side: DieSide; readonly notice: string; readonly words: HandoverWords; readonly nicks?: Nicks | undefined }): string {
  const { width, height } = view.sheet;
  const map: Affine = side === 'printed' ? IDENTITY : { a: -1, b: 0, c: 0, d: 1, e: width, f: 0 };
  const writer = new DxfWriter();
  writer.setUnits(Units.Millimeters);
  for (const role of [...new Set(rules.map((rule) => rule.role))].toSorted()) writer.addLayer(role, COLOUR_OF[role] ?? Colors.Green, 'CONTINUOUS');
  for (const name of ['Sheet', 'Stations', 'Marks', ...(nicks ? ['Nicks'] : [])]) writer.addLayer(name, Colors.White, 'CONTINUOUS');

  for (const { role, curves } of rules) {
    if (isArea(role) && isLoopOfLines(curves)) addLoop(writer, mapPath(map, curves), role);
    else for (const curve of mapPath(map, curves)) addCurve(writer, curve, role);
  }
  const corners = [[0, 0], [width, 0], [width, height], [0, height]] as const;
  writer.addLWPolyline(corners.map(([x, y]) => ({ point: { x, y } })), { flags: 1, layerName: 'Sheet' });
  stationNumbers(view, { ...PRODUCTION_SCALE, unit: STATION_UNIT_MM }).forEach(({ at, size }, station) => {
    const { x, y } = mapPoint(map, at);
    text(writer, String(station + 1), { x, y: y - size / 2 }, size, 'Stations');
  });
  if (nicks) addNicks(writer, placedNicks(view, nicks), map);
  addMarks(writer, view, map, side, notice, words);
  return writer.stringify();
}

function isLoopOfLines(curves: CurvePath): boolean {
  return curves.length > 2 && curves.every(({ kind }) => kind === 'line') && samePoint(curves[0]!.from, curves.at(-1)!.to);
}

/** Areas are cut out of a blanket whole: one closed line each. */
function addLoop(writer: DxfWriter, curves: CurvePath, layerName: string): void {
  writer.addLWPolyline(curves.map(({ from: { x, y } }) => ({ point: { x: round(x), y: round(y) } })), { flags: 1, layerName });
}

function addCurve(writer: DxfWriter, curve: Curve, layerName: string): void {
  if (curve.kind === 'line') {
    writer.addLine(place(curve.from), place(curve.to), { layerName });
  } else if (curve.kind === 'arc' && curve.radiusX === curve.radiusY) {
    addArc(writer, curve, layerName);
  } else {
    writer.addLWPolyline(flattenPath([curve], DXF_TOLERANCE_MM).map(({ x, y }) => ({ point: { x: round(x), y: round(y) } })), { layerName });
  }
}

/** DXF's arcs run counter-clockwise, in degrees. */
function addArc(writer: DxfWriter, { centre, radiusX, tilt, start, sweep }: ArcCurve, layerName: string): void {
  const degrees = (angle: number) => round((((angle * 180) / Math.PI) % 360 + 360) % 360);
  if (Math.abs(sweep) >= 2 * Math.PI) writer.addCircle(place(centre), round(radiusX), { layerName });
  else writer.addArc(place(centre), round(radiusX), degrees(tilt + Math.min(start, start + sweep)), degrees(tilt + Math.max(start, start + sweep)), { layerName });
}

/** A tick across the knife at every nick. */
function addNicks(writer: DxfWriter, nicks: readonly PlacedNick[], map: Affine): void {
  for (const { at, along } of nicks) {
    const tick = (side: number) => place(mapPoint(map, { x: at.x - side * along.y, y: at.y + side * along.x }));
    writer.addLine(tick(-NICK_TICK_MM), tick(NICK_TICK_MM), { layerName: 'Nicks' });
  }
}

/** Half the length of the tick that shows a nick, mm. */
const NICK_TICK_MM = 2;

/** Which side this is, in words; gripper edge, lay and centre line. */
function addMarks(writer: DxfWriter, { sheet: { width, height }, lay }: SheetView, map: Affine, side: DieSide, notice: string, words: HandoverWords): void {
  const layerName = 'Marks';
  const middle = width / 2;
  const line = (from: Point, to: Point) => writer.addLine(place(mapPoint(map, from)), place(mapPoint(map, to)), { layerName });
  const layX = lay === 'left' ? 0 : width;
  const outward = lay === 'left' ? -1 : 1;
  const layY = height * 0.22;
  line({ x: middle, y: -OUT_MM }, { x: middle, y: 0 });
  line({ x: middle, y: height }, { x: middle, y: height + OUT_MM });
  const corners = [{ x: layX, y: layY }, { x: layX + outward * WEDGE_MM, y: layY + WEDGE_MM / 2 }, { x: layX + outward * WEDGE_MM, y: layY - WEDGE_MM / 2 }];
  corners.forEach((corner, i) => line(corner, corners[(i + 1) % 3]!));
  line({ x: 0, y: -2 }, { x: width, y: -2 });
  text(writer, words.gripperEdge, mapPoint(map, { x: middle, y: -OUT_MM - 10 }), 8, layerName);
  text(writer, words.lay, mapPoint(map, { x: layX + outward * (WEDGE_MM + 8 + textWidth(words.lay, 8) / 2), y: layY - 4 }), 8, layerName);
  text(writer, words.sides[side].title, { x: middle, y: height + OUT_MM + 26 }, 16, layerName);
  text(writer, words.sides[side].meaning, { x: middle, y: height + OUT_MM + 12 }, 8, layerName);
  text(writer, notice, { x: middle, y: -OUT_MM - 26 }, 6, layerName);
}

/** Length of the wedge that points at the side lay, mm. */
const WEDGE_MM = 12;

/** How far marks stand out of the sheet, mm. */
const OUT_MM = 15;

function text(writer: DxfWriter, value: string, { x, y }: Point, height: number, layerName: string): void {
  const at = point3d(round(x), round(y));
  writer.addText(at, height, value, { layerName, horizontalAlignment: TextHorizontalAlignment.Center, secondAlignmentPoint: at });
}

function place({ x, y }: Point) {
  return point3d(round(x), round(y));
}
