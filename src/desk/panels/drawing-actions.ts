import { lengthOf } from '../job/laying.ts';
import type { Desk } from '../desk.ts';
import type { DrawingOptions } from '../engine/protocol.ts';

/** A new drawing on the desk; the job takes its name unless it has one of its own. */
export function takeDrawing(desk: Desk, name: string, bytes: Uint8Array): void {
  desk.change((job) => ({ ...job, name: job.drawing ? job.name : job.name || stem(name), drawing: { kind: 'file', name, bytes, options: { roles: [] } } }));
}

function stem(name: string): string {
  return name.replace(/\.[^.]*$/, '');
}

/** What is said about a drawing from a file. */
export function useDrawingOptions(desk: Desk) {
  const { drawing } = desk.job.value;
  const file = drawing?.kind === 'file' ? drawing.options : undefined;
  const set = (options: Partial<DrawingOptions>) =>
    desk.change((job) => (job.drawing?.kind === 'file' ? { ...job, drawing: { ...job.drawing, options: { ...job.drawing.options, ...options } } } : job), 'drawing options');
  return {
    file,
    set,
    widthText: file?.widthIs === undefined ? '' : String(file.widthIs),
    setWidth: (text: string) => {
      const mm = lengthOf(text);
      if (mm !== 'fault') set({ widthIs: mm === 0 ? undefined : mm });
    },
  };
}
