import { boxOf, type Box } from '../geometry/point.ts';
import { turnBox } from '../geometry/turn.ts';
import type { Part, Placement } from './problem.ts';

/**
 * Placements in station order: from the gripper, then from the lay. A row is all blanks whose lower edge lies under the
 * middle of the row's first blank, so that blanks a hair apart are counted along the row and not across.
 */
export function stationOrder(placements: readonly Placement[], parts: readonly Part[], lay: 'left' | 'right'): Placement[] {
  const boxes = parts.map((part) => boxOf(part.outline));
  const stations = placements.map((placement) => ({ placement, box: boxOnSheet(boxes[placement.part]!, placement) }));
  stations.sort((a, b) => a.box.minY - b.box.minY || a.box.minX - b.box.minX);
  const ordered: Placement[] = [];
  for (let first = 0; first < stations.length; ) {
    const { box } = stations[first]!;
    const middle = (box.minY + box.maxY) / 2;
    let end = first + 1;
    while (end < stations.length && stations[end]!.box.minY < middle) end++;
    const row = stations.slice(first, end).sort((a, b) => a.box.minX - b.box.minX || a.box.minY - b.box.minY);
    ordered.push(...(lay === 'left' ? row : row.toReversed()).map((station) => station.placement));
    first = end;
  }
  return ordered;
}

function boxOnSheet(box: Box, { turn, x, y }: Placement): Box {
  const turned = turnBox(box, turn);
  return { minX: turned.minX + x, minY: turned.minY + y, maxX: turned.maxX + x, maxY: turned.maxY + y };
}
