import { z } from 'zod';
import { InputError, type Issue } from '../base/issue.ts';
import { parseLengthMm, parseSizeMm } from '../base/units.ts';
import { plainReason } from './plain-reason.ts';
import type { Bar } from './sheet-areas.ts';
import { MOST_LEAST_STRIP_MM, STRIPPING_MODES, STRIPPING_RULES } from './stripping.ts';

/**
 * The shop's records as JSON. A press or die-cutter record holds the settings of `nest` by name (camelCase or with
 * hyphens); lengths are millimetres, as a number or with a unit (`"0.5in"`).
 */
export const length = z.union([z.number(), z.string()]).transform((value, context) => {
  const mm = typeof value === 'number' ? value : parseLengthMm(value);
  if (mm !== undefined && Number.isFinite(mm) && mm >= 0) return mm;
  context.addIssue({ code: 'custom', message: 'a length in mm from 0 up is wanted, such as 12 or "0.5in"' });
  return z.NEVER;
});

export const size = z.string().transform((value, context) => {
  const mm = parseSizeMm(value);
  if (mm && mm.width > 0 && mm.height > 0) return mm;
  context.addIssue({ code: 'custom', message: 'a size is wanted, such as "1020x720" or "28x40in"' });
  return z.NEVER;
});

export const sides = z.union([length, z.tuple([length, length])]).transform((mm): readonly [number, number] => (typeof mm === 'number' ? [mm, mm] : mm));

const bar = z.string().transform((value, context) => {
  const read = parseBar(value);
  if (read !== undefined) return read;
  context.addIssue({ code: 'custom', message: BAR_WANTED });
  return z.NEVER;
});

export const BAR_WANTED = 'tail:6, gripper:6, centre:6 or none is wanted';

/** Reads `tail:6`; `none` is a bar of no height. Undefined when it is neither. */
export function parseBar(text: string): Bar | 'none' | undefined {
  if (text === 'none') return 'none';
  const [place, height, ...rest] = text.split(':');
  const mm = height === undefined ? undefined : parseLengthMm(height);
  if (mm === undefined || mm <= 0 || rest.length > 0) return undefined;
  return place === 'tail' || place === 'gripper' || place === 'centre' ? { place, height: mm } : undefined;
}

const positive = z.number().positive();
const amount = z.number().nonnegative();
const machine = {
  name: z.string().optional(),
  minSheet: size.optional(),
  maxSheet: size.optional(),
  gripper: length.optional(),
  tail: length.optional(),
  sideMargins: sides.optional(),
  gap: length.optional(),
  caliperMin: length.optional(),
  caliperMax: length.optional(),
  /** Sheets an hour that planning counts with, not the rated maximum. */
  speed: positive.optional(),
  makereadyMinutes: amount.optional(),
  hourlyRate: amount.optional(),
};

export const pressSchema = z.looseObject({
  ...machine,
  inkGripper: length.optional(),
  inkTail: length.optional(),
  inkSides: length.optional(),
  bar: bar.optional(),
  lay: z.enum(['left', 'right']).optional(),
  bleed: length.optional(),
  units: z.int().positive().optional(),
  coater: z.boolean().optional(),
});
export type PressRecord = z.infer<typeof pressSchema>;

export const cutterSchema = z.looseObject({
  ...machine,
  /** How its waste is taken off, and whether a layout must suit that. */
  stripping: z.enum(STRIPPING_MODES).optional(),
  strippingRule: z.enum(STRIPPING_RULES).optional(),
  /** Waste between two blanks should be at least so wide, whole mm. */
  leastStrip: z.int().min(1).max(MOST_LEAST_STRIP_MM).optional(),
});
export type CutterRecord = z.infer<typeof cutterSchema>;

export const boardSchema = z.looseObject({
  name: z.string().optional(),
  grade: z.string().optional(),
  /** g/m² */
  grammage: positive.optional(),
  caliper: length.optional(),
  pricePerTonne: amount.optional(),
  sheetGrain: z.enum(['x', 'y', 'long', 'short']).optional(),
});
export type BoardRecord = z.infer<typeof boardSchema>;

/** A die that stands. */
export const dieSchema = z.looseObject({
  number: z.string().optional(),
  rack: z.string().optional(),
  owner: z.string().optional(),
  /** Strokes made so far. */
  strokes: amount.optional(),
  /** Strokes it is good for. */
  mostStrokes: amount.optional(),
  /** Its layout file, relative to the record. */
  layout: z.string().optional(),
  ups: z.int().min(1).max(100_000).optional(),
  sheet: size.optional(),
  /** Sheets on which it can run. */
  minSheet: size.optional(),
  maxSheet: size.optional(),
});
export type DieRecord = z.infer<typeof dieSchema>;

/** Checks one record. Throws an InputError with every field that is wrong; `file` names it. */
export function readRecord<Schema extends z.ZodType>(schema: Schema, json: unknown, file: string): z.output<Schema> {
  const result = schema.safeParse(camelKeys(json));
  if (result.success) return result.data;
  throw new InputError(
    result.error.issues.map(
      (issue): Issue => ({ code: 'field-not-valid', severity: 'error', where: `${file}: ${issue.path.join('.') || 'whole file'}`, facts: { reason: plainReason(issue) } }),
    ),
  );
}

/** `side-margins` and `sideMargins` are the same field. */
function camelKeys(json: unknown): unknown {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) return json;
  return Object.fromEntries(Object.entries(json).map(([key, value]) => [camelCase(key), value]));
}

export function camelCase(key: string): string {
  return key.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
}
