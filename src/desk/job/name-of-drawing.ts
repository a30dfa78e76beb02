import type { Job } from './job.ts';

/** The name a job takes from its drawing. */
export function nameOfDrawing({ drawing }: Job): string {
  if (!drawing) return '';
  return drawing.kind === 'file' ? stem(drawing.name) : [drawing.style, ...Object.values(drawing.values)].join(' ');
}

/** Without the ending. */
export function stem(name: string): string {
  return name.replace(/\.[^.]*$/, '');
}
