import { z } from 'zod';

const share = z.number('a share from 0 to 1 is wanted').min(0, 'a share from 0 to 1 is wanted').max(1, 'a share from 0 to 1 is wanted');
const MOST_CELLS = 60;

/**
 * How much of a blank one ink covers, 0 … 1: over the whole outline, or by equal cells of its box, the top row first as
 * the drawing is looked at.
 */
const coverage = z.union([
  share,
  z.array(z.array(share).min(1).max(MOST_CELLS)).min(1).max(MOST_CELLS).refine((rows) => rows.every(({ length }) => length === rows[0]!.length), 'every row wants as many cells as the first'),
]);
export type Coverage = z.infer<typeof coverage>;

/** An ink of a job. What is not said of it is that of the rates. */
export const inkSchema = z.strictObject({
  name: z.string().min(1).max(100),
  coverage,
  /** Of a solid. */
  gramsPerM2: z.number().min(0).max(1000).optional(),
  pricePerKg: z.number().min(0).max(1e9).optional(),
});
export type InkRecord = z.infer<typeof inkSchema>;

/** Width of an ink zone where the press record says nothing, mm: common practice, no source. */
export const USUAL_INK_ZONE_MM = 32.5;
