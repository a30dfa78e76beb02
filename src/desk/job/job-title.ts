import type { Words } from '../words/words.ts';
import { upsOf } from './layouts.ts';
import type { Job } from './job.ts';
import { nameOfDrawing } from './name-of-drawing.ts';

/** What a list calls a job: its name, else that of its drawing. */
export function jobTitle(job: Job, { say }: Pick<Words, 'say'>): string {
  return job.name || nameOfDrawing(job) || say('unnamed');
}

/** What tells jobs of one name apart: ups and sheet of the layout that is shown. Nothing where none is. */
export function jobSummary({ layouts, chosen }: Job, { say, format }: Pick<Words, 'say' | 'format'>): string {
  const shown = layouts.find(({ id }) => id === chosen);
  return shown ? `${say('ups', { ups: upsOf(shown) })}, ${format.size(shown.file.sheet.width, shown.file.sheet.height)}` : '';
}
