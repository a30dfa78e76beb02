import { z } from 'zod';
import { caliper, length, size } from './records.ts';

const count = z.int().min(1).max(1_000_000);
const kg = z.number().min(0).max(10_000);

/** Height of the flat wooden pallet of 800 × 1200 mm (EN 13698-1), from memory. */
const USUAL_DECK_MM = 144;

/** A way of packing. Lengths in mm; what is not given and cannot be worked out stays open. */
export const packingSchema = z.looseObject({
  name: z.string().optional(),
  /** Of one piece as it lies in the case, measured; else worked out from the caliper. */
  thickness: caliper.optional(),
  seamThickness: caliper.optional(),
  /** Of one piece, weighed; else worked out from the blank. */
  cartonGrams: z.number().positive().max(100_000).optional(),
  perCase: count.optional(),
  /** Inside, along the row in which the pieces stand. */
  caseLength: length.optional(),
  /** Rows side by side in a case. */
  rows: count.default(1),
  /** Outside, as the case stands on the pallet. */
  caseSize: size.optional(),
  caseHeight: length.optional(),
  caseKg: kg.optional(),
  casesPerLayer: count.optional(),
  layers: count.optional(),
  casesPerPallet: count.optional(),
  palletSize: size.optional(),
  /** Greatest, with the pallet itself. */
  palletHeight: length.optional(),
  palletDeck: length.default(USUAL_DECK_MM),
  palletKg: kg.optional(),
});
export type PackingRecord = z.infer<typeof packingSchema>;
