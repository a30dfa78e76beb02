import { M2_PER_FT2, MM_PER_INCH } from '../base/units.ts';
import type { Figure } from '../estimate/figure.ts';
import { tokensOf } from '../estimate/formula.ts';

/** ft² in a m², as formulas write it: to seven figures, as all that goes into them. */
export const FT2_PER_M2 = (1 / M2_PER_FT2).toPrecision(7);

/** What goes into formulas in mm, and in m². */
const LENGTHS: ReadonlySet<string> = new Set([
  'caliper', 'thickness', 'thickness glued flat', 'thickness at the seam', 'thickness measured', 'case length', 'case height', 'pallet height', 'deck',
  'knife height', 'crease rule', 'cutting rule',
]);
const AREAS: ReadonlySet<string> = new Set(['sheet area', 'blank area', 'inked area', 'coated area']);
/** N to the mm. */
const PER_LENGTH = 'force';

/**
 * A figure as somebody reads it who counts in inches: lengths in inches, areas in ft², and the formula such that these give
 * the value. Weights stay in kg and grammages in g/m², as rates and records have them.
 */
export function figureInInches(one: Figure): Figure {
  const { value, unit, formula, inputs } = one;
  return {
    ...one,
    unit: unit === 'mm' ? 'in' : unit,
    value: value !== null && unit === 'mm' ? value / MM_PER_INCH : value,
    formula: WEIGHTS.has(unit) ? withAreasInM2(formula) : formula,
    inputs: Object.fromEntries(Object.entries(inputs).map(([name, input]) => [name, input === null ? null : converted(name, input)])),
  };
}

function converted(name: string, value: number): number {
  if (LENGTHS.has(name)) return value / MM_PER_INCH;
  if (AREAS.has(name)) return value / M2_PER_FT2;
  return name === PER_LENGTH ? value * MM_PER_INCH : value;
}

/** Where an area is weighed, it is brought to m² first. A share of an area in another is the same in any unit. */
const WEIGHTS: ReadonlySet<string> = new Set(['kg', 'g']);

function withAreasInM2(formula: string): string {
  return tokensOf(formula).map((token) => (AREAS.has(token) ? `${token} ÷ ${FT2_PER_M2}` : token)).join(' ');
}
