import { toMicrons, toMillimetres } from '../base/units.ts';
import type { SheetCandidate, SheetRange } from '../press/sheet-candidates.ts';
import type { Size } from '../press/sheet-areas.ts';

/** What a look at a sheet of a range tells: how many blanks, and how little of the sheet they need. */
export interface RangeLook {
  readonly ups: number;
  readonly leastSheet: Size;
}

/** Sizes looked at along each side, and sizes kept. */
const MOST_WIDTHS = 4;
const MOST_DEPTHS = 4;
const KEPT = 3;
/** Looks that one range may cost. */
export const LOOKS_PER_RANGE = MOST_WIDTHS * MOST_DEPTHS;

/**
 * Sizes at which one more row or column just fits. From the greatest width down: a look tells what width its layout needs;
 * a step less, and another layout must be found, which needs less again. The same with the depth for each of those widths.
 * A sheet may come short by the tolerance and must hold its layout all the same; every size is rounded up to the mill's step.
 * Those with least board a blank are kept.
 */
export async function sizesThatJustFit(range: SheetRange, toleranceMm: number, look: (candidate: SheetCandidate) => Promise<RangeLook | undefined>): Promise<SheetCandidate[]> {
  const found = new Map<string, { sheet: Size; ups: number }>();
  let width: number | undefined = range.greatest.width;
  for (let w = 0; w < MOST_WIDTHS && width !== undefined; w++) {
    let nextWidth: number | undefined;
    let height: number | undefined = range.greatest.height;
    for (let h = 0; h < MOST_DEPTHS && height !== undefined; h++) {
      const seen = await look(range.candidateOf({ width: width - toleranceMm, height: height - toleranceMm }));
      if (!seen) break;
      const sheet = {
        width: raised(seen.leastSheet.width + toleranceMm, range.step, range.least.width, width),
        height: raised(seen.leastSheet.height + toleranceMm, range.step, range.least.height, height),
      };
      const key = `${sheet.width}x${sheet.height}`;
      if ((found.get(key)?.ups ?? 0) < seen.ups) found.set(key, { sheet, ups: seen.ups });
      if (h === 0) nextWidth = oneStepLess(sheet.width, range.step, range.least.width);
      height = oneStepLess(sheet.height, range.step, range.least.height);
    }
    width = nextWidth;
  }
  const boardPerUp = ({ sheet, ups }: { sheet: Size; ups: number }) => (sheet.width * sheet.height) / ups;
  return [...found.values()].toSorted((a, b) => boardPerUp(a) - boardPerUp(b)).slice(0, KEPT).map(({ sheet }) => range.candidateOf(sheet));
}

/** In whole micrometres, so that a size that is a multiple of the step already is not raised by rounding noise. */
function raised(value: number, step: number, least: number, most: number): number {
  const unit = toMicrons(step);
  return Math.min(most, Math.max(least, toMillimetres(Math.ceil(toMicrons(value) / unit) * unit)));
}

function oneStepLess(value: number, step: number, least: number): number | undefined {
  const less = value - step;
  return less >= least ? less : undefined;
}
