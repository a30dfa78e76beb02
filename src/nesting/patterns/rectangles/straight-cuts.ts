import { FiveBlocks, type PackedBox } from './five-blocks.ts';
import { createRaster, rasterIndex } from './raster.ts';

export interface StraightCuts {
  readonly boxes: readonly PackedBox[];
  /** No pattern of straight cuts holds more; known, not hoped. */
  readonly exact: boolean;
}

/** Tried divisions, some seconds. */
const MOST_WORK = 4e7;
/** More lengths than this make too large a table. */
const MOST_LENGTHS = 2400;

/**
 * The most boxes a × b, turned where allowed, that cuts from edge to edge get out of a rectangle: dynamic programming over
 * the lengths that matter (`raster.ts`). Boxes that may not be turned lie in a grid, and none of them could lie better.
 */
export function straightCuts(width: number, height: number, a: number, b: number, mayTurn: boolean): StraightCuts {
  if (!mayTurn || a === b) return { boxes: grid(width, height, a, b), exact: true };
  const most = Math.floor((width * height) / (a * b));
  const grids = [grid(width, height, a, b), grid(width, height, b, a).map((box) => ({ ...box, turned: true }))];
  const plain = grids[1].length > grids[0].length ? grids[1] : grids[0];
  if (plain.length === most) return { boxes: plain, exact: true };
  const longest = Math.max(width, height);
  if (((longest / a + 1) * (longest / b + 1)) / 2 > MOST_LENGTHS) return { boxes: plain, exact: false };
  const raster = createRaster(a, b, longest);
  const blocks = new FiveBlocks(raster, MOST_WORK, false);
  const [w, h] = [rasterIndex(raster, width), rasterIndex(raster, height)];
  const count = blocks.solve(w, h);
  return { boxes: count > plain.length ? blocks.boxes(w, h) : plain, exact: blocks.work < MOST_WORK };
}

function grid(width: number, height: number, a: number, b: number): PackedBox[] {
  const columns = Math.floor(width / a);
  return Array.from({ length: columns * Math.floor(height / b) }, (_, i) => ({ x: (i % columns) * a, y: Math.floor(i / columns) * b, turned: false }));
}
