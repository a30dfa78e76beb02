import { z } from 'zod';
import { parseSizeMm } from '../base/units.ts';
import type { Size } from './sheet-areas.ts';

const size = z.string().transform((text, context): Size => {
  const mm = parseSizeMm(text);
  if (mm && mm.width > 0 && mm.height > 0 && mm.width <= 16_000 && mm.height <= 16_000) return mm;
  context.addIssue({ code: 'custom', message: 'a size is wanted, such as "1020x720" or "28x40in", sides up to 16 000 mm' });
  return z.NEVER;
});

const amount = z.number().min(0).max(1e9);

/** A sheet that can be bought. The first side runs along the gripper edge; `grain` is the fibre direction as fed. */
export const sheetSchema = z.looseObject({
  sheet: size,
  grain: z.enum(['x', 'y']).optional(),
  pricePerTonne: amount.optional(),
  pricePerThousand: amount.optional(),
  /** Sheets a packet and a pallet. */
  packet: z.int().positive().max(100_000).optional(),
  pallet: z.int().positive().max(1_000_000).optional(),
  minimumTonnes: amount.optional(),
  leadDays: amount.optional(),
  /** How far a delivered sheet may be off, ± mm. */
  toleranceMm: amount.optional(),
});
export type SheetRecord = z.infer<typeof sheetSchema>;

export const stockSchema = z.looseObject({ name: z.string().optional(), sheets: z.array(sheetSchema).min(1) });
export type Stock = z.infer<typeof stockSchema>;
