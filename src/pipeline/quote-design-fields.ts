import { z } from 'zod';
import { turnOfDegrees, type Turn } from '../geometry/turn.ts';
import { length, sides } from '../press/records.ts';

const axis = z.enum(['x', 'y', 'any']);
const style = z.object({ style: z.string(), grain: axis.optional() }).catchall(z.number());
const turn = z.number().transform((degrees, context): Turn => {
  const read = turnOfDegrees(degrees);
  if (read !== undefined) return read;
  context.addIssue({ code: 'custom', message: 'quarter turns are wanted: 0, 90, 180, 270' });
  return z.NEVER;
});

/** The fields of a quote's job that say what is laid out, and how: as the options of `nest`. */
export const designFields = {
  drawing: z.string().optional(),
  /** A blank from dimensions, `{"style": "straight-tuck", "length": 60, …}`; or which blank of the drawing. */
  blank: z.union([z.int().positive(), style]).optional(),
  drawnFrom: z.enum(['printed', 'inside']).default('printed'),
  gripper: length.optional(),
  tail: length.optional(),
  sideMargins: sides.optional(),
  inkGripper: length.optional(),
  inkTail: length.optional(),
  inkSides: length.optional(),
  bar: z.string().optional(),
  gap: length.optional(),
  bleed: length.optional(),
  bleedMeeting: z.enum(['apart', 'cut']).optional(),
  rotations: z.array(turn).min(1).max(4).optional(),
  grain: axis.optional(),
  sheetGrain: z.enum(['x', 'y', 'long', 'short']).optional(),
  lay: z.enum(['left', 'right']).optional(),
  effort: z.enum(['quick', 'normal', 'thorough']).default('normal'),
  seed: z.int().min(0).max(2 ** 31 - 1).default(1),
};

export type StyledBlankField = z.output<typeof style>;
