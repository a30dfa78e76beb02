import type { Desk } from './desk.ts';
import type { Files } from './files/files.ts';
import type { Job } from './job/job.ts';
import { layoutFromFile } from './job/layouts.ts';
import { nameOfDrawing, stem } from './job/name-of-drawing.ts';
import { jobFromFile } from './job/job-file.ts';
import { joinRecords, kindOfRecord, type RecordKind, type Records } from './job/records.ts';
import { answered } from './reading.ts';
import { takeJob } from './restoring.ts';
import { wordsIn } from './words/words.ts';

/** Takes in any file that the desk knows, by what is in it: a drawing, a layout, a record, a job. */
export async function takeFile(desk: Desk, name: string, bytes: Uint8Array): Promise<void> {
  if (!/\.json$/i.test(name)) {
    takeDrawing(desk, name, bytes);
    return;
  }
  const content = jsonOf(bytes);
  const job = content && jobFromFile(content);
  const kind = content && kindOfRecord(content);
  if (job) await takeJob(desk, job, content);
  else if (content?.['format'] === 'blankwright-layout') await takeLayout(desk, name, bytes);
  else if (content && kind) takeRecord(desk, stem(name), kind, content);
  else desk.notice.value = wordsIn(desk.locale.value).say('file-not-known', { name });
}

/** A new drawing on the desk; the job takes its name unless it has one of its own. */
function takeDrawing(desk: Desk, name: string, bytes: Uint8Array): void {
  const named = (job: Job) => (job.name === '' || job.name === nameOfDrawing(job) ? stem(name) : job.name);
  desk.change((job) => ({ ...job, name: named(job), drawing: { kind: 'file', name, bytes, options: { roles: [] } } }));
  desk.panel.value = 'drawing';
}

const FIELD_OF: Readonly<Record<RecordKind, 'press' | 'cutter' | 'board'>> = { presses: 'press', cutters: 'cutter', boards: 'board' };

function takeRecord(desk: Desk, id: string, kind: RecordKind, record: Readonly<Record<string, unknown>>): void {
  desk.records.value = joinRecords(desk.records.value, { [kind]: [{ id, record }] });
  desk.change((job) => ({ ...job, sheet: { ...job.sheet, [FIELD_OF[kind]]: id } }));
}

async function takeLayout(desk: Desk, name: string, bytes: Uint8Array): Promise<void> {
  const words = wordsIn(desk.locale.value);
  const found = await answered(() => desk.engine.ask('layout', { name, bytes }));
  if (found.kind === 'issues') {
    desk.notice.value = found.issues.map(words.issue).join(' ');
    return;
  }
  const { file, state } = found.answer;
  const layout = layoutFromFile(file, state, String(file.result?.['source'] ?? name));
  desk.change((job) => ({ ...job, name: job.name || stem(name), layouts: [...job.layouts, layout], chosen: layout.id }));
  desk.panel.value = 'layouts';
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
  desk.records.value = (await (await fetch('records.json')).json()) as Records;
  const names = await files.list();
  const opened: { name: string; bytes: Uint8Array; content: Record<string, unknown> | undefined }[] = [];
  for (const name of names.filter((one) => /\.json$/i.test(one))) {
    const bytes = await files.read(name);
    if (bytes) opened.push({ name, bytes, content: jsonOf(bytes) });
  }
  for (const { name, content } of opened) {
    const kind = content && kindOfRecord(content);
    if (content && kind) desk.records.value = joinRecords(desk.records.value, { [kind]: [{ id: stem(name), record: content }] });
  }
  if (desk.job.value.drawing || desk.job.value.layouts.length > 0) return;
  const layouts = opened.filter(({ content }) => content?.['format'] === 'blankwright-layout');
  const drawings = names.filter((name) => !/\.json$/i.test(name));
  const [first] = drawings.length === 1 ? drawings : [];
  const bytes = first === undefined ? undefined : await files.read(first);
  if (first !== undefined && bytes) takeDrawing(desk, first, bytes);
  if (layouts.length === 1) await takeLayout(desk, layouts[0]!.name, layouts[0]!.bytes);
}
