import type { Desk } from './desk.ts';
import type { Files } from './files/files.ts';
import { joinRecords, kindOfRecord, type Records } from './job/records.ts';
import { takeDrawing } from './panels/drawing-actions.ts';

/** The invented records that come with the desk, then what it was opened with: records to choose from, a drawing to begin with. */
export async function openFirst(desk: Desk, files: Files): Promise<void> {
  desk.records.value = (await (await fetch('records.json')).json()) as Records;
  const names = await files.list();
  for (const name of names.filter((one) => one.endsWith('.json'))) await takeRecord(desk, files, name);
  const drawings = names.filter((name) => /\.(svg|dxf|pdf)$/i.test(name));
  if (drawings.length !== 1 || desk.job.value.drawing) return;
  const bytes = await files.read(drawings[0]!);
  if (bytes) takeDrawing(desk, drawings[0]!, bytes);
}

async function takeRecord(desk: Desk, files: Files, name: string): Promise<void> {
  const bytes = await files.read(name);
  if (!bytes) return;
  try {
    const record = JSON.parse(new TextDecoder().decode(bytes)) as Record<string, unknown>;
    const kind = kindOfRecord(record);
    if (kind) desk.records.value = joinRecords(desk.records.value, { [kind]: [{ id: name.replace(/\.json$/i, ''), record }] });
  } catch {
    // A folder may hold other JSON than ours.
  }
}
