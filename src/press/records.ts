import { z } from 'zod';
import { camelCase } from '../base/camel-case.ts';
import { InputError, type Issue } from '../base/issue.ts';
import { parseCaliperMm, parseLengthMm, parseSizeMm } from '../base/units.ts';
import { BASIC_SIZES, parseGrammage, parseTonnePrice } from './basis-weights.ts';
import { AMOUNT, GRAMMAGE } from './figure-ranges.ts';
import { plainReason } from './plain-reason.ts';
import type { Bar } from './sheet-areas.ts';
import { MOST_LEAST_STRIP_MM, STRIPPING_MODES, STRIPPING_RULES } from './stripping.ts';

/**
 * The shop's records as JSON. A press or die-cutter record holds the settings of `nest` by name (camelCase or with
 * hyphens); lengths are millimetres, as a number or with a unit (`"0.5in"`).
 */
export const length = measure(parseLengthMm, [0, Infinity], 'a length in mm from 0 up is wanted, such as 12 or "0.5in"');

/** What the trade calls paper or board is well below. */
const THICKEST_MM = 50;

/** Thickness of board, mm; `"18pt"` are points of caliper, thousandths of an inch. */
export const caliper = measure(parseCaliperMm, [0, THICKEST_MM], `a thickness from 0 to ${THICKEST_MM} mm is wanted, such as 0.45, "18pt" (0.018 in) or "450um"`);

/** g/m². */
export const grammage = measure(parseGrammage, [GRAMMAGE.least, GRAMMAGE.most], `a grammage from ${GRAMMAGE.least} to ${GRAMMAGE.most} g/m² is wanted, such as 300, "80lb cover" or "65lb/1000ft2"; basic sizes are ${Object.keys(BASIC_SIZES).join(', ')}`);

/** Of a tonne; `"45/cwt"` is a price of 100 lb. */
export const tonnePrice = measure(parseTonnePrice, [AMOUNT.least, AMOUNT.most], `a price of a tonne from ${AMOUNT.least} to ${AMOUNT.most} is wanted, such as 900, or of 100 lb, such as "45/cwt"`);

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
  caliperMin: caliper.optional(),
  caliperMax: caliper.optional(),
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
  /** Of one ink zone, across the sheet. */
  inkZoneWidth: length.optional(),
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
  grammage: grammage.optional(),
  caliper: caliper.optional(),
  pricePerTonne: tonnePrice.optional(),
  sheetGrain: z.enum(['x', 'y', 'long', 'short']).optional(),
  /** Sheets in a packet, and on a pallet. */
  packet: z.int().positive().max(100_000).optional(),
  pallet: z.int().positive().max(1_000_000).optional(),
  /** The mill makes no less. */
  minimumTonnes: amount.optional(),
  /** Of the sheet's size. */
  toleranceMm: amount.optional(),
  /** mm; the sheets are cut from a reel of this width. */
  reelWidth: length.optional(),
  /** Basic size that its basis weight goes by, where inches are wanted. */
  basis: z.enum(['bond', 'book', 'cover', 'tag', 'index', 'bristol']).optional(),
  /** Working days from order to delivery. */
  leadDays: amount.optional(),
  delivery: z.string().max(500).optional(),
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

/** A number in the record's own unit, or text with another. */
function measure(parse: (text: string) => number | undefined, [least, most]: readonly [number, number], wanted: string) {
  return z.union([z.number(), z.string()]).transform((value, context) => {
    const read = typeof value === 'number' ? value : parse(value);
    if (read !== undefined && Number.isFinite(read) && read >= least && read <= most) return read;
    context.addIssue({ code: 'custom', message: wanted });
    return z.NEVER;
  });
}

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
