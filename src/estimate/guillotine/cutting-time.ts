import type { Guillotine } from '../../press/guillotine.ts';
import type { CutSequence } from './cut-sequence.ts';

export interface CuttingTime {
  /** Sheets cut at one go. Undefined where the thickness is not known. */
  readonly sheetsPerLift: number | undefined;
  readonly minutesPerLift: number;
  /** Set-up left out. */
  readonly minutesPerThousandSheets: number | undefined;
}

/** A lift is jogged and loaded once; every stroke and every turned pile takes its time. */
export function cuttingTime({ strokes, turns }: Pick<CutSequence, 'strokes' | 'turns'>, machine: Guillotine, caliperMm: number | undefined): CuttingTime {
  const minutesPerLift = (machine.secondsPerLift + strokes * machine.secondsPerCut + turns * machine.secondsPerTurn) / 60;
  // A lift of 100 mm at 0.1 mm is 1000 sheets, whatever the division of doubles says.
  const sheetsPerLift = caliperMm === undefined ? undefined : Math.max(1, Math.floor(machine.liftHeight / caliperMm + 1e-9));
  return { sheetsPerLift, minutesPerLift, minutesPerThousandSheets: sheetsPerLift && (minutesPerLift / sheetsPerLift) * 1000 };
}

/** Minutes for so many sheets in whole lifts, set-up included. Undefined where the thickness is not known. */
export function cuttingMinutes({ sheetsPerLift, minutesPerLift }: CuttingTime, sheets: number, { setUpMinutes }: Guillotine): number | undefined {
  return sheetsPerLift && setUpMinutes + Math.ceil(sheets / sheetsPerLift) * minutesPerLift;
}
