import { z } from 'zod';
import { inputError } from '../base/issue.ts';
import { BAR_WANTED, boardSchema, cutterSchema, parseBar, pressSchema, readRecord } from '../press/records.ts';
import type { LayingSettings } from './laying.ts';
import { designFields, type StyledBlankField } from './quote-design-fields.ts';
import { readSize } from './quote-job.ts';
import { createRecordReader, recordOrFile, type LoadJson } from './record-reader.ts';

/** What a quote lays out by itself, before it counts. */
export interface QuoteDesign {
  readonly source: { readonly kind: 'drawing'; readonly file: string; readonly blank: number | undefined } | { readonly kind: 'style'; readonly style: string; readonly values: Readonly<Record<string, number>>; readonly grain: 'x' | 'y' | 'any' | undefined };
  readonly laying: LayingSettings;
  readonly drawnFrom: 'printed' | 'inside';
  readonly effort: 'quick' | 'normal' | 'thorough';
  readonly seed: number;
}

const designSchema = z.object({ ...designFields, ups: z.unknown().optional(), layout: z.unknown().optional(), sheet: z.string().optional(), press: recordOrFile.optional(), cutter: recordOrFile.optional(), board: recordOrFile.optional() });

/** Undefined where the job brings its ups or its layout along. Throws an InputError that names the field. */
export function readQuoteDesign(json: unknown, where: string, load: LoadJson): QuoteDesign | undefined {
  const job = readRecord(designSchema, json, where);
  const isStyle = typeof job.blank === 'object';
  if (job.drawing === undefined && !isStyle) return undefined;
  const beside = [job.drawing !== undefined && isStyle && 'blank', job.layout !== undefined && 'layout', job.ups !== undefined && 'ups'].find((name) => name !== false);
  if (beside) throw inputError('design-given-twice', { where, facts: { first: job.drawing === undefined ? 'blank' : 'drawing', second: beside } });
  if (job.sheet === undefined) throw inputError('sheet-of-design-missing', { where });
  const record = createRecordReader(where, load).read;
  const { gripper, tail, sideMargins, inkGripper, inkTail, inkSides, gap, bleed, lay, bleedMeeting, rotations, grain, sheetGrain } = job;
  const bar = job.bar === undefined ? undefined : parseBar(job.bar);
  if (job.bar !== undefined && bar === undefined) throw inputError('field-not-valid', { where: `${where}: bar`, facts: { reason: BAR_WANTED } });
  return {
    source: typeof job.blank === 'object' ? styleSource(job.blank) : { kind: 'drawing', file: job.drawing!, blank: job.blank },
    laying: {
      sheet: readSize(job.sheet, `${where}: sheet`),
      settings: { gripper, tail, sideMargins, inkGripper, inkTail, inkSides, bar, gap, bleed, lay },
      machines: { press: record(pressSchema, job.press, 'press'), cutter: record(cutterSchema, job.cutter, 'cutter'), board: record(boardSchema, job.board, 'board') },
      bleedMeeting, rotations, grain, sheetGrain,
    },
    drawnFrom: job.drawnFrom,
    effort: job.effort,
    seed: job.seed,
  };
}

function styleSource({ style: id, grain, ...values }: StyledBlankField): QuoteDesign['source'] {
  return { kind: 'style', style: id, values: values as Record<string, number>, grain };
}
