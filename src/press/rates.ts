import { z } from 'zod';
import { AMOUNT, SHARE } from './figure-ranges.ts';

const amount = z.number().min(AMOUNT.least).max(AMOUNT.most);
const positive = z.number().positive().max(AMOUNT.most);

/** A machine as planning counts with it. Any of the three may be open. A press or die-cutter record will do. */
const machine = z.looseObject({
  name: z.string().optional(),
  /** Sheets (cartons for gluer and packing) an hour in planning, not the rated maximum. */
  speed: positive.optional(),
  makereadyMinutes: amount.optional(),
  hourlyRate: amount.optional(),
});
export type MachineRates = z.infer<typeof machine>;

/** What things cost in one shop, in the job's currency. Everything may be open: what is open is listed, never invented. */
export const ratesSchema = z.strictObject({
  name: z.string().optional(),
  press: machine.optional(),
  coater: machine.optional(),
  foilPress: machine.optional(),
  embosser: machine.optional(),
  cutter: machine.optional(),
  stripper: machine.optional(),
  gluer: machine.optional(),
  packer: machine.optional(),
  platePrice: amount.optional(),
  diePrice: amount.optional(),
  inkPricePerKg: amount.optional(),
  /** Of a solid, one colour. */
  inkGramsPerM2: amount.optional(),
  /** Share of the sheet that a colour covers, 0 … 1. */
  inkCoverage: z.number().min(SHARE.least).max(SHARE.most).optional(),
  coatingPricePerKg: amount.optional(),
  coatingGramsPerM2: amount.optional(),
  packingPerThousand: amount.optional(),
  /** Of one case and one pallet, where the job says how it is packed. */
  casePrice: amount.optional(),
  palletPrice: amount.optional(),
  freightPerTonne: amount.optional(),
  freightPerPallet: amount.optional(),
  /** On top of cost, percent of cost. */
  marginPercent: amount.optional(),
  /** kg CO2e a tonne of board, the shop's own factor. */
  carbonPerTonne: amount.optional(),
});
export type Rates = z.infer<typeof ratesSchema>;

/** Whether anything costs something: machines known only by their speed and makeready do not. */
export function holdsRates(rates: Rates): boolean {
  return Object.values(rates).some((rate) => typeof rate === 'number' || (typeof rate === 'object' && rate.hourlyRate !== undefined));
}

/** Where a rate comes from; a record by its name. */
export type RateSource = { readonly kind: 'typed' | 'invented' } | { readonly kind: 'record'; readonly name: string };
