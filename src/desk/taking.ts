import { batch } from '@preact/signals';
import type { Issue } from '../base/issue.ts';
import type { Desk, Panel } from './desk.ts';
import { fetched, type FileContent } from './fetched.ts';
import type { Files } from './files/files.ts';
import { goingFrom } from './going.ts';
import { layoutFromFile } from './job/layouts.ts';
import { stem } from './job/name-of-drawing.ts';
import { jobFromFile } from './job/job-file.ts';
import { joinRecords, kindOfRecord, type Records } from './job/records.ts';
import { putDrawing } from './putting-drawings.ts';
import { answered, readOf } from './reading.ts';
import { takeJob } from './restoring.ts';
import { takeRecordFile } from './taking-records.ts';
import { wordsIn } from './words/words.ts';

/** Takes in any file that the desk knows, by what is in it: a drawing, a layout, a record, a job. What it does not know leaves the desk as it is. */
export async function takeFile(desk: Desk, name: string, fileContent: FileContent): Promise<void> {
  const go = goingFrom(desk);
  desk.refused.value = undefined;
  const bytes = await fetched(desk, name, fileContent);
  if (!bytes) return;
  if (/\.csv$/i.test(name)) {
    await takeRecordFile(desk, name, bytes);
    return;
  }
  if (!/\.json$/i.test(name)) {
    await takeDrawing(desk, name, bytes, go);
    return;
  }
  const content = jsonOf(bytes);
  const job = content && jobFromFile(content);
  if (job) await takeJob(desk, job, content);
  else if (content?.['format'] === 'blankwright-layout') await takeLayout(desk, name, bytes, go);
  else if (content && kindOfRecord(content)) await takeRecordFile(desk, name, bytes);
  else desk.notice.value = wordsIn(desk.locale.value).say(content ? 'file-not-known' : 'json-not-readable', { name });
}

/** Read before it lies on the desk, so that what is no drawing leaves there what was there. */
async function takeDrawing(desk: Desk, name: string, bytes: Uint8Array, go: (to: Panel) => void): Promise<void> {
  const { say } = wordsIn(desk.locale.value);
  const drawing = { kind: 'file', name, bytes, options: { roles: [] } } as const;
  const underWay = say('reading-file', { name });
  desk.notice.value = underWay;
  const read = await readOf(desk, drawing);
  const issues = whyNoDrawing(read);
  if (issues) {
    desk.refused.value = { name, issues: issues.map((issue) => ({ where: name, ...issue })) };
    desk.notice.value = '';
    return;
  }
  if (desk.notice.value === underWay) desk.notice.value = '';
  batch(() => {
    putDrawing(desk, drawing);
    go('drawing');
    if (desk.job.value.drawing === drawing) desk.reading.value = { ...read, of: drawing };
  });
}

/** A file that holds no line at all is no drawing; one with faults is, and shows them. */
function whyNoDrawing(read: Awaited<ReturnType<typeof readOf>>): readonly Issue[] | undefined {
  if (read.kind === 'issues') return read.issues;
  const { issues } = read.answer.dieline;
  return issues.some(({ code }) => code === 'no-lines') ? issues.filter(({ severity }) => severity === 'error') : undefined;
}

async function takeLayout(desk: Desk, name: string, bytes: Uint8Array, go: (to: Panel) => void): Promise<void> {
  const words = wordsIn(desk.locale.value);
  const found = await answered(() => desk.engine.ask('layout', { name, bytes }));
  if (found.kind === 'issues') {
    desk.notice.value = found.issues.map(words.issue).join(' ');
    return;
  }
  const { file, state } = found.answer;
  const layout = layoutFromFile(file, state, String(file.result?.['source'] ?? name));
  desk.change((job) => ({ ...job, name: job.name || stem(name), layouts: [...job.layouts, layout], chosen: layout.id }));
  go('layouts');
}

function jsonOf(bytes: Uint8Array): Record<string, unknown> | undefined {
  try {
    const content: unknown = JSON.parse(new TextDecoder().decode(bytes));
    return typeof content === 'object' && content !== null && !Array.isArray(content) ? (content as Record<string, unknown>) : undefined;
  } catch {
    return undefined;
  }
}

/** The invented records that come with the desk, then what it was opened with: records to choose from, one drawing or layout to begin with. */
export async function takeOpened(desk: Desk, files: Files): Promise<void> {
  const go = goingFrom(desk);
  desk.records.value = joinRecords((await (await fetch('records.json')).json()) as Records, desk.records.value);
  const names = await files.list();
  const opened: { name: string; bytes: Uint8Array; content: Record<string, unknown> | undefined }[] = [];
  for (const name of names.filter((one) => /\.(json|csv)$/i.test(one))) {
    const bytes = await files.read(name);
    if (bytes) opened.push({ name, bytes, content: jsonOf(bytes) });
  }
  for (const { name, bytes, content } of opened) if (content ? kindOfRecord(content) : /\.csv$/i.test(name)) await takeRecordFile(desk, name, bytes, 'opened');
  if (desk.job.value.drawing || desk.job.value.layouts.length > 0) return;
  const layouts = opened.filter(({ content }) => content?.['format'] === 'blankwright-layout');
  const drawings = names.filter((name) => !/\.(json|csv)$/i.test(name));
  const [first] = drawings.length === 1 ? drawings : [];
  const bytes = first === undefined ? undefined : await files.read(first);
  if (first !== undefined && bytes) await takeDrawing(desk, first, bytes, go);
  if (layouts.length === 1) await takeLayout(desk, layouts[0]!.name, layouts[0]!.bytes, go);
}
