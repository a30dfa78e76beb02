import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { loopArea } from '../../src/geometry/loop-area.ts';
import { readSvgDrawing } from '../../src/dieline/read-svg.ts';
import type { Blank, Dieline } from '../../src/dieline/dieline.ts';
import { ruleLengths } from '../../src/dieline/rule-lengths.ts';
import { inlineRunner } from '../../src/nesting/tasks.ts';
import { nest } from '../../src/pipeline/nest.ts';

export const SAMPLES = join(import.meta.dirname, '..', '..', 'samples');

/** What reading must find in a sample drawing. Millimetres to three decimals. */
export interface ReadFigures {
  readonly blanks: readonly {
    readonly widthMm: number;
    readonly heightMm: number;
    readonly areaMm2: number;
    readonly openingsMm2: readonly number[];
    readonly ruleLengthMm: Readonly<Record<string, number>>;
  }[];
  readonly scaleFrom: string;
  readonly grain: string | null;
  /** How often each code comes, notes included. */
  readonly issues: Readonly<Record<string, number>>;
}

/** What laying out the first blank on `SAMPLE_SHEET` at effort quick must reach. */
export interface NestFigures {
  readonly ups: number;
  readonly upperBound: number;
}

/** All else as the command's defaults. */
export const SAMPLE_SHEET = { width: 1020, height: 720 };

export function sampleDrawings(): string[] {
  return readdirSync(join(SAMPLES, 'drawings')).filter((name) => name.endsWith('.svg')).toSorted();
}

export function readSample(name: string): Dieline {
  return readSvgDrawing(readFileSync(join(SAMPLES, 'drawings', name)));
}

export function readFigures({ blanks, scale, grain, issues }: Dieline): ReadFigures {
  const counts: Record<string, number> = {};
  for (const { code } of issues) counts[code] = (counts[code] ?? 0) + 1;
  return { blanks: blanks.map(blankFigures), scaleFrom: scale.from, grain: grain ?? null, issues: sorted(counts) };
}

function blankFigures(blank: Blank): ReadFigures['blanks'][number] {
  const { box, areaMm2, openings } = blank;
  return {
    widthMm: rounded(box.maxX - box.minX),
    heightMm: rounded(box.maxY - box.minY),
    areaMm2: rounded(areaMm2),
    openingsMm2: openings.map((opening) => rounded(Math.abs(loopArea(opening)))),
    ruleLengthMm: sorted(Object.fromEntries(Object.entries(ruleLengths(blank)).map(([role, length]) => [role, rounded(length)]))),
  };
}

export async function nestFigures(name: string): Promise<NestFigures> {
  const drawing = readSample(name);
  const job = { id: name, blank: drawing.blanks[0], drawing, sheet: SAMPLE_SHEET, settings: {}, machines: {}, layouts: 1 };
  const { layouts, limit } = await nest(job, { effort: 'quick', seed: 1, runner: inlineRunner(), stop: () => undefined });
  return { ups: layouts[0].file.placements.length, upperBound: limit.ups };
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000 + 0;
}

function sorted<Value>(record: Readonly<Record<string, Value>>): Record<string, Value> {
  return Object.fromEntries(Object.entries(record).toSorted(([a], [b]) => (a < b ? -1 : 1)));
}
