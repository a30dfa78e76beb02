import { z } from 'zod';
import { LAYOUT_FORMAT, LAYOUT_VERSION, layoutFileSchema } from '../layout/layout-file.ts';
import { issueReply } from './issue.ts';

/** What other programs ask of `open` and what they are told; over the functions of `api`. Lengths are millimetres. */
const MOST_DRAWING_CHARACTERS = 8_000_000;
export const MOST_SECONDS = 600;
export const USUAL_SECONDS = 60;

const drawing = z.union([
  z.string().min(1).max(MOST_DRAWING_CHARACTERS).describe('an SVG or DXF drawing as text'),
  z.strictObject({ base64: z.base64().max(MOST_DRAWING_CHARACTERS) }).describe('the bytes of an SVG, DXF or PDF drawing'),
], { error: 'a drawing as text is wanted, or {"base64": "…"}' });
const reading = {
  drawing,
  scale: z.number().positive().max(1000).optional().describe('millimetres of one user unit'),
  widthIs: z.number().positive().max(16_000).optional().describe('known width of the blank'),
  blank: z.int().positive().optional().describe('which of several blanks, from 1'),
  roles: z.array(z.string().max(300)).max(1000).optional().describe('rules such as "Cutting=layer:knife", first match wins'),
};
const record = z.record(z.string(), z.unknown());
const grainAxis = z.enum(['x', 'y', 'long', 'short']);
const laying = {
  ...reading,
  name: z.string().min(1).max(200).optional().describe('name of the design'),
  settings: record.optional().describe('gap, bleed, margins and bar by the names of a press record: {"gap": 5, "bar": "tail:6"}'),
  press: record.optional(),
  cutter: record.optional(),
  board: record.optional(),
  bleedMeeting: z.enum(['apart', 'cut']).optional(),
  rotations: z.array(z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)])).min(1).max(4).optional(),
  grain: z.enum(['x', 'y', 'any']).optional(),
  drawnFrom: z.enum(['printed', 'inside']).optional(),
  effort: z.enum(['quick', 'normal', 'thorough']).default('quick'),
  seed: z.int().min(0).max(2 ** 31 - 1).default(1),
  seconds: z.number().positive().max(MOST_SECONDS).default(USUAL_SECONDS).describe('a search ends then with the best so far'),
};
const size = z.union([z.string().max(60), z.strictObject({ width: z.number(), height: z.number() })]).describe('"1020x720" or mm, the first side along the gripper edge');
const mmSize = { width: z.number(), height: z.number() };
const figure = z.number().nullable();

export const layoutFile = layoutFileSchema.extend({ format: z.literal(LAYOUT_FORMAT), version: z.literal(LAYOUT_VERSION) });

export const readAsk = z.strictObject(reading);
export const readReply = z.looseObject({
  format: z.literal('blankwright-drawing'),
  version: z.literal(1),
  fingerprint: z.string(),
  areaMm2: figure,
  widthMm: figure,
  heightMm: figure,
  ruleLengthMm: z.record(z.string(), z.number()).nullable().describe('by role'),
  blanks: z.array(z.looseObject({ number: z.int(), areaMm2: z.number(), widthMm: z.number(), heightMm: z.number(), outline: z.string().describe('SVG path data, mm') })),
  issues: z.array(issueReply),
});

export const nestAsk = z.strictObject({ ...laying, sheet: size, sheetGrain: grainAxis.optional(), layouts: z.int().min(1).max(10).default(1), svg: z.boolean().default(false).describe('with a picture of the best layout') });
export const nestReply = z.object({
  ups: z.int(),
  upperBound: z.int().describe('no layout of this design on this sheet has more'),
  boundBy: z.string(),
  optimal: z.boolean(),
  stopped: z.enum(['limit-met', 'effort', 'seconds', 'interrupted']),
  layouts: z.array(layoutFile).min(1).describe('judged and found sound, best first'),
  svg: z.string().optional(),
  issues: z.array(issueReply),
});

export const judgeAsk = z.strictObject({ layout: layoutFile });
export const judgeReply = z.object({
  state: z.enum(['sound', 'faulty']),
  faults: z.array(z.object({ kind: z.string(), blanks: z.array(z.int()), place: z.tuple([z.number(), z.number()]), byMm: z.number() })),
  cutShort: z.boolean(),
});

const compared = z.strictObject({ sheet: size, grain: grainAxis.optional(), pricePerTonne: z.number().nonnegative().optional() });
export const compareAsk = z.strictObject({ ...laying, sheets: z.array(z.union([z.string().max(60), compared])).min(1).max(40).describe('the first is the one usually bought') });
export const compareReply = z.looseObject({
  format: z.literal('blankwright-comparison'),
  version: z.literal(1),
  candidates: z.array(z.looseObject({ sheet: z.object({ ...mmSize, grain: z.enum(['x', 'y']).nullable() }), ups: z.int(), upperBound: z.int(), boardM2PerThousand: z.number() })),
  leastBoard: z.int().describe('index of the candidate that takes the least board'),
  sentence: z.string(),
});

export const quoteAsk = z.strictObject({ job: record.describe('a quote’s job as its file holds it; records inline, since files cannot be named here') });
export const quoteReply = z.looseObject({
  format: z.literal('blankwright-quote'),
  version: z.literal(1),
  quantities: z.array(z.looseObject({ quantity: z.int(), sheets: z.int(), boardKg: figure, boardCostPerThousand: figure, pressHours: figure, costPerThousand: figure })),
  missing: z.array(z.string()).describe('rates that nobody gave; their figures are null, never invented'),
});
