import type { DeskParts } from './desk-context.ts';
import type { Desk } from './desk.ts';
import type { DrawingSource } from './engine/protocol.ts';
import { nextJob, type Job } from './job/job.ts';
import { nameOfDrawing } from './job/name-of-drawing.ts';

type DrawingDesk = Pick<Desk, 'job' | 'renewed' | 'begun' | 'change'>;

/**
 * A drawing begins a job of its own; the one before stays kept. The job on the desk takes it where it has none yet, where it is
 * a newer state of its own drawing (a file of the same name), or where its dimensions are typed on.
 */
export function putDrawing(desk: DrawingDesk, drawing: DrawingSource, kind = ''): void {
  const { value: before } = desk.job;
  if (belongsTo(before, drawing)) {
    desk.change((job) => ({ ...job, name: job.name === nameOfDrawing(job) ? nameOfDrawing({ ...job, drawing }) : job.name, drawing }), kind);
    desk.renewed.value = isOtherFile(before.drawing, drawing) ? before : undefined;
    return;
  }
  beginJob(desk, before, drawing);
}

function beginJob(desk: DrawingDesk, before: Job, drawing: DrawingSource): void {
  const next = { ...nextJob(before), drawing };
  desk.change(() => ({ ...next, name: nameOfDrawing(next) }));
  desk.begun.value = { id: next.id, before };
}

function belongsTo({ drawing: known }: Job, drawing: DrawingSource): boolean {
  if (!known) return true;
  return known.kind === drawing.kind && (known.kind !== 'file' || drawing.kind !== 'file' || known.name === drawing.name);
}

function isOtherFile(before: DrawingSource | undefined, now: DrawingSource): boolean {
  if (before?.kind !== 'file' || now.kind !== 'file') return false;
  return before.bytes.length !== now.bytes.length || before.bytes.some((byte, i) => byte !== now.bytes[i]);
}

/** The file of the same name is of another carton: it begins a job of its own, and the job before is as it was. */
export function takeAsOwnJob(desk: DrawingDesk): void {
  const { job, renewed } = desk;
  const { drawing } = job.value;
  const { value: before } = renewed;
  renewed.value = undefined;
  if (!drawing || before?.id !== job.value.id) return;
  desk.change(() => before);
  beginJob(desk, before, drawing);
}

/** The drawing that began a job is a newer state of the job before it, and goes there. */
export async function takeAsRevision({ desk, saving }: Pick<DeskParts, 'desk' | 'saving'>): Promise<void> {
  const { begun, job, history } = desk;
  const { drawing, id } = job.value;
  if (!drawing || begun.value?.id !== id) return;
  const { before } = begun.value;
  const latest = history.value.past.findLast((step) => step.id === before.id) ?? before;
  desk.change(() => ({ ...latest, drawing }));
  begun.value = undefined;
  await saving.drop(id);
}
