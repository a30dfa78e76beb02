import { z } from 'zod';
import { layoutFile } from './questions.ts';

/** What the library of the shop tells over HTTP. All answers are bounded: lists come in pages. */
export const PAGE = 24;
export const BATCH_PAGE = 50;
export const MOST_POINTS_ASKED = 20_000;
/** Of a thumbnail. */
export const MOST_POINTS_DRAWN = 4_000;

const KIND_NAMES = ['press', 'cutter', 'board', 'sheets', 'customer', 'carton', 'die', 'job', 'layout', 'quote', 'batch'] as const;
const kind = z.enum(KIND_NAMES);
const id = z.string().min(1).max(300);
const page = z.coerce.number().int().min(1).max(100_000).default(1);
const within = z.coerce.number().min(0).max(50).default(1).describe('tolerance of sizes and shapes, mm');
const ring = z.array(z.tuple([z.number(), z.number()]));
const figure = z.number().nullable();
const size = z.object({ width: z.number(), height: z.number(), grain: z.enum(['x', 'y']).nullable() });

export const emptyAsk = z.strictObject({});
export const libraryReply = z.object({ name: z.string(), kinds: z.array(z.object({ kind, count: z.int() })) });

const picture = z.object({ width: z.number(), height: z.number(), sheet: z.boolean().describe('the outermost box is a sheet'), rings: z.array(ring) }).describe('outlines to draw small, mm, y up');
const entryLine = z.object({
  kind,
  id,
  revision: z.int(),
  at: z.string().describe('ISO 8601, UTC'),
  told: z.array(z.tuple([z.string(), z.union([z.string(), z.number()])])).describe('fields that tell entries apart'),
  by: z.object({ how: z.enum(['words', 'dimensions', 'creases', 'shape']), offMm: z.number().optional(), rotation: z.number().optional(), mirrored: z.boolean().optional() }).optional().describe('why it was found'),
  picture: picture.optional(),
});
export const entriesAsk = z.strictObject({ text: z.string().max(400).default('').describe('words, a number, or dimensions: 62 x 31 x 118'), kind: kind.optional(), within, page });
export const entriesReply = z.object({ total: z.int(), page: z.int(), pages: z.int(), entries: z.array(entryLine) });

export const likeAsk = z.strictObject({ outline: z.array(z.tuple([z.number(), z.number()])).min(3).max(MOST_POINTS_ASKED).describe('outline of a blank, mm, not closed'), kind: kind.optional(), within, page });

export const entryAsk = z.strictObject({ kind, id });
const cell = z.union([z.string(), z.number(), z.boolean()]);
export const entryReply = entryLine.extend({
  facts: z.array(z.tuple([z.string(), cell])),
  tables: z.array(z.object({ field: z.string(), head: z.array(z.string()), rows: z.array(z.array(cell)), more: z.int() })),
  history: z.array(z.object({ revision: z.int(), at: z.string(), removed: z.boolean(), changes: z.array(z.object({ field: z.string(), from: z.string().nullable(), to: z.string().nullable() })) })).describe('the latest first'),
  moreRevisions: z.int(),
  file: z.string().nullable().describe('name of the file that /library/file gives; null where there is none'),
  reading: z.object({ scale: z.number().optional(), widthIs: z.number().optional(), blank: z.int().optional(), page: z.int().optional(), drawnFrom: z.enum(['printed', 'inside']).optional(), roles: z.array(z.string()) }).describe('how its drawing is to be read'),
});

const saving = z.object({ boardM2: z.number(), boardKg: figure, money: figure });
const on = z.object({ sheet: size, ups: figure, upperBound: figure, boardM2PerThousand: figure, answer: z.string().nullable() });
export const batchAsk = z.strictObject({ id, page });
export const batchReply = z.object({
  name: z.string(),
  complete: z.boolean(),
  currency: z.string(),
  total: saving,
  sheets: z.array(z.object({ sheet: size, bestFor: z.int(), savingPerYear: saving })),
  cartons: z.array(z.object({ id: z.string(), name: z.string().nullable(), yearly: figure, usual: on.nullable(), best: on.nullable(), savingPerYear: saving.nullable() })).describe('those that save most first'),
  cartonCount: z.int(),
  refused: z.int(),
  doubtful: z.int(),
  page: z.int(),
  pages: z.int(),
});

export const answerAsk = z.strictObject({ key: z.string().regex(/^[0-9a-f]{64}$/).describe('the answer of a carton on a sheet, as a batch names it'), name: z.string().min(1).max(200).default('carton').describe('name of the design') });
export const answerReply = z.object({ layout: layoutFile, engine: z.string(), at: z.string(), ups: z.int(), upperBound: z.int() });

export const keepJobAsk = z.strictObject({ id, content: z.record(z.string(), z.unknown()) });
export const keepJobReply = z.object({ kept: z.enum(['new', 'changed', 'unchanged']), revision: z.int() });

export type EntryLine = z.output<typeof entryLine>;
export type EntriesReply = z.output<typeof entriesReply>;
export type EntryReply = z.output<typeof entryReply>;
export type BatchReply = z.output<typeof batchReply>;
export type AnswerReply = z.output<typeof answerReply>;
export type LibraryReply = z.output<typeof libraryReply>;
export type LibraryPicture = z.output<typeof picture>;
