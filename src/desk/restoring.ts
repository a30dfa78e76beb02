import type { LayoutFile } from '../layout/layout-file.ts';
import type { Desk } from './desk.ts';
import { foundInFile, type FoundInFile, type UnjudgedLayout } from './job/found-in-file.ts';
import type { Job, KeptLayout } from './job/job.ts';
import { layoutFromFile } from './job/layouts.ts';
import type { OutlinesPlan } from './job/outlines.ts';
import { outlinesJob } from './outlines/outlines-work.ts';
import { answered } from './reading.ts';
import { wordsIn } from './words/words.ts';

/** Puts a job on the desk, then what its file says was found, each of it judged from scratch; what cannot be read is left out and said. */
export async function takeJob(desk: Desk, job: Job, content: Readonly<Record<string, unknown>>): Promise<void> {
  const found = foundInFile(content);
  desk.change(() => job);
  const isStillThere = () => desk.job.value.drawing === job.drawing && desk.job.value.outlines.list === job.outlines.list;
  const layouts = (await Promise.all(found.layouts.map((one) => judged(desk, one)))).filter((one) => one !== undefined);
  if (!isStillThere()) return;
  desk.note((now) => ({ ...now, layouts: [...now.layouts, ...layouts], chosen: layouts.find(({ id }) => id === found.chosen)?.id ?? now.chosen }));
  const plan = found.forms.length > 0 ? await planOf(desk, found) : undefined;
  if (!isStillThere()) return;
  if (plan) desk.note((now) => ({ ...now, outlines: { ...now.outlines, plan } }));
  if (layouts.length < found.layouts.length || (found.forms.length > 0 && !plan)) desk.notice.value = wordsIn(desk.locale.value).say('found-not-usable');
}

async function judged(desk: Desk, { id, layout, source, inputs, byHand, locked }: UnjudgedLayout): Promise<KeptLayout | undefined> {
  const found = await layoutIn(desk, layout);
  return found && { ...layoutFromFile(found.file, found.state, source), id, inputs, fromFile: true, ...(byHand && { byHand }), ...(locked && { locked }) };
}

async function layoutIn(desk: Desk, content: unknown) {
  const found = await answered(() => desk.engine.ask('layout', { name: 'job', bytes: new TextEncoder().encode(JSON.stringify(content)) }));
  return found.kind === 'answer' ? found.answer : undefined;
}

/** Forms whose every layout is sound and of the drawings in the list, weighed anew. What was proved of them is not believed. */
async function planOf(desk: Desk, { forms, asked }: FoundInFile): Promise<OutlinesPlan | undefined> {
  const job = outlinesJob(desk);
  if (!job || 'faults' in job) return undefined;
  const { designs, costs } = job.ask;
  const found = await Promise.all(forms.map((form) => layoutIn(desk, form)));
  const files = found.flatMap((one) => (one?.state === 'sound' ? [one.file] : []));
  if (files.length < forms.length || !(await areOfTheirDrawings(desk, files))) return undefined;
  const names = designs.map(({ id }) => id);
  const quantities = designs.map(({ quantity }) => quantity);
  const counts = files.map(({ placements }) => names.map((name) => placements.filter(({ design }) => design === name).length));
  const limits = designs.some(({ overs }) => overs) ? designs.map(({ overs }) => overs ?? { least: 0 }) : undefined;
  const weighed = await answered(() => desk.engine.ask('weigh', { quantities, counts, limits }));
  if (weighed.kind !== 'answer' || weighed.answer.missing.length > 0) return undefined;
  const { pressings, overs } = weighed.answer;
  const total = pressings.reduce((sum, runs) => sum + runs, 0);
  return {
    forms: files.map((file, form) => ({ file, counts: counts[form]!, pressings: pressings[form]! })),
    overs, names, quantities, asked,
    cost: costs && files.length * costs.form + total * costs.pressing,
    lowerBound: 0,
    separate: undefined,
    doubtful: [],
  };
}

/** Every design of the forms is the blank of the drawing of its name. */
async function areOfTheirDrawings(desk: Desk, files: readonly LayoutFile[]): Promise<boolean> {
  const job = outlinesJob(desk);
  if (!job || 'faults' in job) return false;
  for (const { id, source, drawnFrom } of job.ask.designs) {
    const placed = files.flatMap(({ designs }) => designs.filter((design) => design.id === id)).map((design) => [design]);
    if (placed.length === 0) continue;
    const found = await answered(() => desk.engine.ask('kinship', { designs: placed, drawing: { source, drawnFrom, remembered: desk.remembered.value, name: id } }));
    if (found.kind !== 'answer' || found.answer.some((kind) => kind !== 'same')) return false;
  }
  return files.every(({ designs }) => designs.every((design) => job.ask.designs.some(({ id }) => id === design.id)));
}
