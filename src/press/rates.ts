import { z } from 'zod';

const amount = z.number().min(0).max(1e9);
const positive = z.number().positive().max(1e9);

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
  inkCoverage: z.number().min(0).max(1).optional(),
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

/** Invented, for trying out; named so in every report. */
export const DEMO_RATES: Rates = {
  name: 'invented demonstration rates',
  press: { speed: 9000, makereadyMinutes: 30, hourlyRate: 140 },
  coater: { speed: 8000, makereadyMinutes: 20, hourlyRate: 90 },
  foilPress: { speed: 4500, makereadyMinutes: 90, hourlyRate: 110 },
  embosser: { speed: 5500, makereadyMinutes: 75, hourlyRate: 95 },
  cutter: { speed: 7000, makereadyMinutes: 60, hourlyRate: 90 },
  stripper: { speed: 7000, makereadyMinutes: 15, hourlyRate: 40 },
  gluer: { speed: 30_000, makereadyMinutes: 45, hourlyRate: 85 },
  packer: { speed: 20_000, makereadyMinutes: 5, hourlyRate: 35 },
  platePrice: 18,
  diePrice: 1200,
  inkPricePerKg: 19,
  inkGramsPerM2: 1.5,
  inkCoverage: 0.3,
  coatingPricePerKg: 7,
  coatingGramsPerM2: 5,
  packingPerThousand: 2.4,
  freightPerTonne: 65,
  marginPercent: 15,
  carbonPerTonne: 1000,
};
