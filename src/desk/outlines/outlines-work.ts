import { InputError, type Issue } from '../../base/issue.ts';
import type { Desk } from '../desk.ts';
import { EngineLost } from '../engine/client.ts';
import type { DrawingSource } from '../engine/protocol.ts';
import { fetched, type FileContent } from '../fetched.ts';
import type { Job } from '../job/job.ts';
import { layoutOfForm } from '../job/layouts.ts';
import { MOST_OUTLINES, outlinesJobOf, type Outlines, type OutlinesPlan } from '../job/outlines.ts';
import { nameOfDrawing, stem } from '../job/name-of-drawing.ts';
import { newId } from '../new-id.ts';

/** A step of the person; `kind` joins quick changes of one kind. */
export function changeOutlines(desk: Desk, edit: (outlines: Outlines) => Outlines, kind = ''): void {
  desk.change((job) => ({ ...job, outlines: edit(job.outlines) }), kind);
}

/** The drawing that lies on the desk, as it is read there. */
export function addFromDesk(desk: Desk): void {
  const { drawing, drawnFrom } = desk.job.value;
  if (drawing) addOutline(desk, nameOfDrawing(desk.job.value), drawing, drawnFrom);
}

export async function addFile(desk: Desk, name: string, content: FileContent): Promise<void> {
  const bytes = await fetched(desk, name, content);
  if (bytes) addOutline(desk, stem(name), { kind: 'file', name, bytes, options: { roles: [] } }, 'printed');
}

function addOutline(desk: Desk, name: string, source: DrawingSource, drawnFrom: Job['drawnFrom']): void {
  changeOutlines(desk, (now) => ({ ...now, list: [...now.list, { id: newId(), name, quantity: '', source, drawnFrom }].slice(0, MOST_OUTLINES) }));
}

/** What is asked as the desk stands; undefined while sheet or limits cannot be read. */
export function outlinesJob(desk: Desk) {
  const laying = desk.laying.value;
  return 'faults' in laying ? undefined : { ...outlinesJobOf(desk.job.value.outlines, laying.laying, desk.job.value.effort), sheet: laying.laying.sheet };
}

/** Has forms sought; they come onto the desk unless another job lies there by then. */
export async function seekForms(desk: Desk): Promise<void> {
  const job = outlinesJob(desk);
  if (!job || 'faults' in job) return;
  const drawings = drawingsOf(desk);
  desk.outlinesRun.value = { phase: 'running', issues: [] };
  desk.planner.tell('begin');
  let issues: readonly Issue[] = [];
  try {
    const found = await desk.planner.ask('outlines', { ...job.ask, remembered: desk.remembered.value });
    const { designs } = job.ask;
    const plan: OutlinesPlan = { ...found, asked: job.asked, names: designs.map(({ id }) => id), quantities: designs.map(({ quantity }) => quantity) };
    if (drawingsOf(desk) === drawings) changeOutlines(desk, (now) => ({ ...now, plan }));
  } catch (error) {
    if (error instanceof InputError) issues = error.issues;
    // Called off, or the thread broke down; either way what was there stays.
    else if (!(error instanceof EngineLost)) throw error;
  } finally {
    desk.outlinesRun.value = { phase: 'idle', issues };
  }
}

/** The first time the best forms so far are asked for; the second time the search is given up. */
export function stopSeeking(desk: Desk): void {
  if (desk.outlinesRun.value.phase === 'stopping') desk.planner.restart();
  else {
    desk.planner.tell('stop');
    desk.outlinesRun.value = { phase: 'stopping', issues: [] };
  }
}

/** A form becomes one of the layouts on the desk, and is shown. */
export function takeForm(desk: Desk, { file }: OutlinesPlan['forms'][number]): void {
  const layout = layoutOfForm(file, String(file.result?.['source'] ?? ''));
  desk.change((job) => ({ ...job, layouts: [...job.layouts, layout], chosen: layout.id }));
  desk.face.value = 'layouts';
}

function drawingsOf({ job }: Desk): string {
  return job.value.outlines.list.map(({ id }) => id).join();
}
