import type { SheetView } from '../../../render/sheet-view.ts';
import { registerMarks } from '../../../render/register-marks.ts';
import { svg } from './elements.ts';

/** The sheet under the blanks: its edge, margins, bar, marks, gripper and side lay. Millimetres, y up. */
export function sheetDrawing(view: SheetView): SVGGElement {
  const { width, height } = view.sheet;
  const rectangle = (name: string, { x, y, width: wide, height: high }: SheetView['usable']) => svg('rect', { class: name, x, y, width: wide, height: high });
  return svg('g', { class: 'hand-paper', 'aria-hidden': 'true' }, [
    rectangle('hand-sheet-edge', { x: 0, y: 0, width, height }),
    svg('g', { class: 'hand-marks' }, [
      svg('rect', { class: 'hand-gripper-margin', x: 0, y: 0, width, height: view.usable.y }),
      rectangle('hand-ink-limit', view.printable),
      rectangle('hand-knife-limit', view.usable),
      ...view.keepOuts.map(({ kind, ring }) => svg('polygon', { class: 'hand-keep-out', 'data-kind': kind, points: ring.map(({ x, y }) => `${x},${y}`).join(' ') })),
      ...registerMarks(view).map(({ at, size }) => svg('path', { class: 'hand-register', d: cross(at.x, at.y, size / 2) })),
    ]),
    svg('path', { class: 'hand-gripper', d: `M0 0H${width}` }),
    svg('path', { class: 'hand-side-lay', d: sideLay(view) }),
  ]);
}

function cross(x: number, y: number, half: number): string {
  return `M${x - half} ${y}H${x + half}M${x} ${y - half}V${y + half}`;
}

/** A wedge against the edge that the sheet is pushed to, near the gripper. */
function sideLay({ sheet, lay }: SheetView): string {
  const [edge, out] = lay === 'left' ? [0, -1] : [sheet.width, 1];
  const y = sheet.height * 0.22;
  const size = sheet.width * 0.012;
  return `M${edge} ${y}L${edge + out * size} ${y + size * 0.6}V${y - size * 0.6}Z`;
}
