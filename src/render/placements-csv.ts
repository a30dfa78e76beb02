import { backUpPlace, backUpRotation, type WorkStyle } from '../layout/back-up.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import { plain } from './plain.ts';
import type { SheetView } from './sheet-view.ts';
import { placedBoxes } from './step-runs.ts';

/**
 * Every station as a row of comma-separated values (RFC 4180), millimetres in sheet coordinates: the place as the layout
 * file has it, the blank's box, with a work style the place and rotation on the back, with versions what the station prints.
 */
export function placementsCsv(layout: LayoutFile, view: SheetView, style?: WorkStyle, versions?: readonly string[]): string {
  const header = ['station', 'design', 'rotation', 'x_mm', 'y_mm', 'left_mm', 'bottom_mm', 'right_mm', 'top_mm', ...(style ? ['back_x_mm', 'back_y_mm', 'back_rotation'] : []), ...(versions ? ['version'] : [])];
  const boxes = placedBoxes(view);
  const rows = layout.placements.map(({ design, rotation, x, y }, station) => {
    const { minX, minY, maxX, maxY } = boxes[station]!;
    const numbers = [x, y, minX, minY, maxX, maxY].map(plain);
    return [String(station + 1), field(design), String(rotation), ...numbers, ...(style ? back({ x, y }, rotation, layout, style) : []), ...(versions ? [field(versions[station]!)] : [])];
  });
  return [header, ...rows].map((row) => `${row.join(',')}\r\n`).join('');
}

function back(at: { x: number; y: number }, rotation: number, { sheet }: LayoutFile, style: WorkStyle): string[] {
  const { x, y } = backUpPlace(at, sheet, style);
  return [plain(x), plain(y), String(backUpRotation(rotation, style))];
}

function field(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
