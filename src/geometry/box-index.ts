import Flatbush from 'flatbush';
import type { Box } from './point.ts';

/** Finds which of many boxes meet a given one. Fixed once built. */
export interface BoxIndex {
  /** Positions of the boxes that share at least a point with this one, ascending. */
  search(box: Box): number[];
}

export function indexBoxes(boxes: readonly Box[]): BoxIndex {
  if (boxes.length === 0) return { search: () => [] };
  const tree = new Flatbush(boxes.length);
  for (const box of boxes) tree.add(box.minX, box.minY, box.maxX, box.maxY);
  tree.finish();
  return { search: (box) => tree.search(box.minX, box.minY, box.maxX, box.maxY).toSorted((a, b) => a - b) };
}
