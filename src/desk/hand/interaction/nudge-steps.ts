import { MICRONS_PER_MM, MM_PER_INCH } from '../../../base/units.ts';
import type { LengthUnit } from '../../../render/format.ts';

/** What an arrow key moves by, as far as the unit of lengths decides it: alone, and with Alt. */
export type NudgeStep = 'plain' | 'fine';

/** In the unit itself. Decimal inches as dies are measured in; a 32nd would be no whole number of µm. */
const STEPS: Readonly<Record<LengthUnit, Readonly<Record<NudgeStep, number>>>> = { mm: { plain: 1, fine: 0.1 }, in: { plain: 0.05, fine: 0.005 } };

/** µm, whole in either unit: keys there and back end where they began. */
export function nudgeStep(step: NudgeStep, unit: LengthUnit): number {
  return Math.round(STEPS[unit][step] * (unit === 'mm' ? 1 : MM_PER_INCH) * MICRONS_PER_MM);
}
