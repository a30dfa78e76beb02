import { EllShapes } from './ell-shapes.ts';
import { FiveBlocks, type PackedBox } from './five-blocks.ts';
import { createRaster, rasterIndex } from './raster.ts';

/** A packing and the work it took since the one before. */
export interface PackingStep {
  readonly work: number;
  readonly boxes?: readonly PackedBox[];
}

/** Tried divisions spent on five blocks, and then on L shapes: in steps, and in all. */
const FIVE_BLOCK_WORK = 3_000_000;
const ELL_STEP = 200_000;
const ELL_WORK = 8_000_000;
/** Divisions into L shapes one within another: tried first, and at most. */
const FIRST_DEPTH = 3;
const MOST_DEPTH = 9;
/** What a tried division costs, in table look-ups. */
const FIVE_BLOCK_COST = 0.25;
const ELL_COST = 2;
/** More lengths than this make too large a table; so many boxes are better laid out as plain blocks. */
const MOST_LENGTHS = 1200;

/**
 * Packs boxes a × b, turned or not, into a rectangle: ever better packings until `enough` is met, the area allows no
 * more, or the work is done. Far more than a few hundred boxes: five blocks only as far as their work goes.
 */
export function* packRectangles(width: number, height: number, a: number, b: number, enough: number): Generator<PackingStep> {
  if (Math.min(width, height) < Math.min(a, b)) return;
  if ((width / a + 1) * (width / b + 1) > 2 * MOST_LENGTHS || (height / a + 1) * (height / b + 1) > 2 * MOST_LENGTHS) return;
  const raster = createRaster(a, b, Math.max(width, height));
  const [w, h] = [rasterIndex(raster, width), rasterIndex(raster, height)];
  const fiveBlocks = new FiveBlocks(raster, FIVE_BLOCK_WORK);
  let count = fiveBlocks.solve(w, h);
  yield { work: fiveBlocks.work * FIVE_BLOCK_COST, boxes: fiveBlocks.boxes(w, h) };
  const most = Math.min(enough, fiveBlocks.bound(w, h));
  const whole = { w, h, arm: w, foot: h };
  const ells = new EllShapes(raster, fiveBlocks);
  for (let depth = FIRST_DEPTH; depth <= MOST_DEPTH && ells.work < ELL_WORK && count < most; ) {
    const before = ells.work;
    ells.workLimit = before + ELL_STEP;
    const found = ells.holds(whole, count + 1, depth);
    const work = (ells.work - before) * ELL_COST;
    yield found ? { work, boxes: ells.boxes(whole) } : { work };
    if (found) count++;
    else if (ells.work <= ells.workLimit) depth++;
  }
}
