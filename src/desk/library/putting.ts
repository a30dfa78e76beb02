import type { DeskParts } from '../desk-context.ts';
import { takeFile } from '../taking.ts';
import type { EntryReply } from '../../wire/library.ts';
import type { ServedLibrary } from './served-library.ts';

/** Records of machines join the job that lies on the desk; everything else begins a job of its own. */
const JOINS: ReadonlySet<string> = new Set(['press', 'cutter', 'board']);

/** What can be put on the desk: drawings, layouts, jobs of the desk, records of machines and boards. */
export function canBePut({ kind, file, facts }: EntryReply): boolean {
  if (file === null) return false;
  if (kind === 'job') return facts.some(([field, value]) => field === 'format' && value === 'blankwright-job');
  return kind === 'carton' || kind === 'die' || kind === 'layout' || JOINS.has(kind);
}

/** A drawing is read as its record says. */
export async function putOnDesk({ desk, saving }: DeskParts, library: ServedLibrary, { kind, id, file, reading }: EntryReply): Promise<void> {
  const bytes = await library.file(kind, id);
  if (!JOINS.has(kind) && kind !== 'job') await saving.open();
  await takeFile(desk, file!, bytes);
  if (kind !== 'carton' && kind !== 'die') return;
  const { drawnFrom = 'printed', ...options } = reading;
  desk.change((job) => (job.drawing?.kind === 'file' ? { ...job, drawnFrom, drawing: { ...job.drawing, options } } : job));
}

/** A kept layout as a file of its own. */
export async function putLayout({ desk, saving }: DeskParts, name: string, layout: object): Promise<void> {
  await saving.open();
  await takeFile(desk, `${name}.json`, new TextEncoder().encode(JSON.stringify(layout)));
}
