import { z } from 'zod';
import { boardSchema, cutterSchema, pressSchema } from '../../press/records.ts';
import { sheetListSchema } from '../../press/sheet-candidates.ts';
import { parseLengthMm, parseSizeMm } from '../../base/units.ts';

const name = z.string().max(300);
const size = z.string().refine((text) => parseSizeMm(text) !== undefined, 'a size is wanted, such as "1020x720"');

/** `62 x 31 x 118`, `2x1.25x3in`: length, width and depth of a carton, mm. A unit at the end goes for all three. */
export function parseDimensions(text: string): readonly number[] | undefined {
  const parts = text.trim().split(/\s*[x×]\s*/i);
  const unit = /[a-z]+$/i.exec(parts.at(-1)!)?.[0] ?? '';
  const sides = parts.map((part) => parseLengthMm(/[a-z]$/i.test(part) ? part : part + unit));
  return sides.length === 3 && sides.every((mm) => mm !== undefined && mm > 0) ? (sides as number[]) : undefined;
}

/** How a drawing is to be read, as the options of `read` say it. */
const reading = {
  /** Fingerprint of a drawing in the library; a path where a record is taken in. */
  drawing: z.string().optional(),
  blank: z.int().positive().optional(),
  page: z.int().positive().optional(),
  /** Gaps of the outline up to this width are closed, mm. */
  closeGaps: z.number().nonnegative().max(10).optional(),
  scale: z.number().positive().max(1000).optional(),
  widthIs: z.number().positive().max(16_000).optional(),
  drawnFrom: z.enum(['printed', 'inside']).optional(),
  customer: name.optional(),
  dimensions: z.string().refine((text) => parseDimensions(text) !== undefined, 'length, width and depth are wanted, such as "62x31x118"').optional(),
};

export const cartonSchema = z.looseObject({
  ...reading,
  drawing: z.string(),
  name: name.optional(),
  /** The customer's or artist's own mark of the drawing's state. */
  revision: name.optional(),
  /** Cartons made in a year. */
  yearly: z.int().nonnegative().max(1e12).optional(),
  /** The sheet that is usually bought for it. */
  sheet: size.optional(),
  grain: z.enum(['x', 'y', 'any']).optional(),
  /** False for a carton that is no longer made. */
  live: z.boolean().optional(),
});
export type Carton = z.infer<typeof cartonSchema>;

export const dieSchema = z.looseObject({
  ...reading,
  name: name.optional(),
  rack: name.optional(),
  owner: name.optional(),
  ups: z.int().positive().max(100_000).optional(),
  sheet: size.optional(),
  strokes: z.number().nonnegative().optional(),
  tools: name.optional(),
  /** Id of a layout in the library. */
  layout: name.optional(),
});
export type Die = z.infer<typeof dieSchema>;

/** Which lines of a customer's drawings are what, as `--roles` reads it. */
const customerSchema = z.looseObject({ roles: z.array(z.string()).max(1000) });

const anything = z.record(z.string(), z.unknown());

/**
 * What the library holds, each kind with the schema of its content. Names of folders and CSV files are the plurals. A
 * record that grows keeps the fields that are not given when it is taken in again; the others are replaced whole.
 */
export const KINDS = {
  press: { plural: 'presses', schema: pressSchema, grows: true },
  cutter: { plural: 'cutters', schema: cutterSchema, grows: true },
  board: { plural: 'boards', schema: boardSchema, grows: true },
  sheets: { plural: 'sheets', schema: sheetListSchema, grows: false },
  customer: { plural: 'customers', schema: customerSchema, grows: true },
  carton: { plural: 'cartons', schema: cartonSchema, grows: true },
  die: { plural: 'dies', schema: dieSchema, grows: true },
  job: { plural: 'jobs', schema: anything, grows: false },
  layout: { plural: 'layouts', schema: anything, grows: false },
  quote: { plural: 'quotes', schema: anything, grows: false },
  batch: { plural: 'batches', schema: anything, grows: false },
} as const satisfies Record<string, { plural: string; schema: z.ZodType; grows: boolean }>;

export type Kind = keyof typeof KINDS;

/** Kinds whose records in the shop's tables have a name and no number. */
export type NamedKind = 'press' | 'cutter' | 'board';

export function isNamedKind(kind: Kind | undefined): kind is NamedKind {
  return kind === 'press' || kind === 'cutter' || kind === 'board';
}

export function kindOf(word: string): Kind | undefined {
  const wanted = word.toLowerCase();
  return (Object.keys(KINDS) as Kind[]).find((kind) => kind === wanted || KINDS[kind].plural === wanted);
}
