import { inFields, InputError, type Issue } from '../../base/issue.ts';
import { chooseBlank } from '../../dieline/choose-blank.ts';
import { mirrorBlank } from '../../dieline/mirror-blank.ts';
import { readDrawing } from '../../dieline/read-drawing.ts';
import { parseSizeMm } from '../../base/units.ts';
import { prepareNest } from '../../pipeline/nest.ts';
import type { NestTask } from '../../pipeline/nest-task.ts';
import { squareMetres, type SheetCandidate } from '../../press/sheet-candidates.ts';
import { readRecord } from '../../press/records.ts';
import type { Design } from '../../layout/layout-file.ts';
import type { Size } from '../../press/sheet-areas.ts';
import { bareTask, taskFingerprint } from '../answers/task-fingerprint.ts';
import { cartonSchema } from '../library/kinds.ts';
import { readingOf } from '../library/reading.ts';
import type { Library } from '../library/open-library.ts';
import type { Offered } from '../library/sources.ts';
import { doubtsOf } from '../library/take-in.ts';
import type { BatchJob } from './batch-job.ts';

/** One carton on one sheet: a task, or why there is none. */
export type Cell =
  | { readonly candidate: SheetCandidate; readonly key: string; readonly task: NestTask; readonly design: Design }
  | { readonly candidate: SheetCandidate; readonly issues: readonly Issue[] };

export interface CartonPlan {
  readonly id: string;
  readonly name: string | undefined;
  readonly yearly: number | undefined;
  /** The job's sheets in their order; where the usual sheet is none of them, it comes last. */
  readonly cells: readonly Cell[];
  /** Index of the sheet that is bought now. */
  readonly usual: number;
  /** What is doubtful about the drawing. */
  readonly doubts: readonly Issue[];
}

/** Reads one carton and prepares it on every sheet. Throws an InputError where its record or drawing cannot be used. */
export async function planCarton(library: Library, offer: Offered, job: BatchJob): Promise<CartonPlan> {
  if ('error' in offer) throw offer.error;
  const { id, where } = offer;
  const content = readRecord(cartonSchema, offer.content, where);
  const reading = readingOf(library, content);
  const { drawing, chosen } = await inFields(undefined, async () => {
    const read = await readDrawing(offer.drawing!(), reading);
    return { drawing: read, chosen: chooseBlank(read, reading.blank) };
  });
  const blank = content.drawnFrom === 'inside' ? mirrorBlank(chosen) : chosen;
  const { candidates, usual } = withUsual(job, content.sheet === undefined ? job.usualSheet : parseSizeMm(content.sheet));
  const { effort, seed, laying } = job;
  const cells = candidates.map((candidate): Cell => {
    try {
      const { problem, design, stripping } = prepareNest({ ...laying, ...grainOn(candidate, job, content.grain ?? laying.grain ?? drawing.grain), sheet: candidate.sheet, id, blank, drawing, layouts: 1 });
      const task = bareTask({ problem, design, layouts: 1, effort, seed, ...(stripping && { stripping }) });
      return { candidate, key: taskFingerprint(task), task, design };
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      return { candidate, issues: error.issues };
    }
  });
  return { id, name: content.name, yearly: content.yearly ?? job.yearly, cells, usual, doubts: doubtsOf(drawing.issues, reading.blank !== undefined) };
}

function withUsual({ candidates }: BatchJob, usual: Size | undefined): { candidates: readonly SheetCandidate[]; usual: number } {
  if (!usual) return { candidates, usual: 0 };
  const found = candidates.findIndex(({ sheet }) => sheet.width === usual.width && sheet.height === usual.height);
  if (found >= 0) return { candidates, usual: found };
  return { candidates: [...candidates, { sheet: usual, grain: undefined, origin: { kind: 'stock' }, boughtM2: squareMetres(usual) }], usual: candidates.length };
}

/** The fibres decide the rotations only where both the carton's wish and the sheet's direction are known. */
function grainOn({ grain }: SheetCandidate, { laying }: BatchJob, wish: 'x' | 'y' | 'any' | undefined): { grain?: 'x' | 'y' | 'any'; sheetGrain?: 'x' | 'y' } | { grain: undefined } {
  if (wish === undefined || laying.rotations) return { grain: undefined };
  if (wish === 'any' || (grain === undefined && laying.machines.board?.sheetGrain !== undefined)) return { grain: wish };
  return grain === undefined ? { grain: undefined } : { grain: wish, sheetGrain: grain };
}
