import { MM_PER_INCH } from '../../../base/units.ts';
import type { LengthUnit } from '../../../render/format.ts';

/** One mark of a ruler or line of the grid. */
export interface Tick {
  /** mm. */
  readonly at: number;
  /** 0 for those with a figure, then ever smaller ones. */
  readonly rank: 0 | 1 | 2;
}

/** How far apart marks with figures are at least, pixels. */
const FIGURES_PX = 64;
/** The smallest marks are no nearer than this, pixels. */
const LEAST_PX = 5;

/** Marks with round figures over a stretch of the sheet, in millimetres or inches, as close as can be read. */
export function ticks(fromMm: number, toMm: number, pixelsPerMm: number, unit: LengthUnit): Tick[] {
  const scale = unit === 'mm' ? 1 : MM_PER_INCH;
  const steps = unit === 'mm' || FIGURES_PX / (pixelsPerMm * scale) > 1 ? decimalSteps(FIGURES_PX / (pixelsPerMm * scale)) : inchSteps(FIGURES_PX / (pixelsPerMm * scale));
  const [figure, middle, small] = steps;
  const finest = small * scale * pixelsPerMm >= LEAST_PX ? small : middle;
  const result: Tick[] = [];
  for (let k = Math.ceil(fromMm / scale / finest); k * finest * scale <= toMm; k++) {
    const rank = isMultiple(k, figure / finest) ? 0 : isMultiple(k, middle / finest) ? 1 : 2;
    result.push({ at: k * finest * scale, rank });
  }
  return result;
}

/** Distance between figures, middle and small marks: 1, 2 or 5 times a power of ten. */
function decimalSteps(least: number): readonly [number, number, number] {
  const power = 10 ** Math.floor(Math.log10(least));
  const times = least / power;
  if (times <= 1) return [power, power / 2, power / 10];
  if (times <= 2) return [2 * power, power, power / 5];
  if (times <= 5) return [5 * power, power, power / 2];
  return [10 * power, 5 * power, power];
}

/** Halves, quarters, eighths … of an inch, down to 1/64; then decimals. */
function inchSteps(least: number): readonly [number, number, number] {
  let figure = 1;
  while (figure / 2 >= least && figure > 1 / 8) figure /= 2;
  if (figure / 2 >= least) return decimalSteps(least);
  return [figure, figure / 2, figure / 8];
}

function isMultiple(k: number, of: number): boolean {
  const times = Math.round(of);
  return times <= 1 || k % times === 0;
}
