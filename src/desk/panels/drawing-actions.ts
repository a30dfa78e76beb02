import { lengthOf } from '../job/laying.ts';
import type { Desk } from '../desk.ts';
import type { DrawingOptions } from '../engine/protocol.ts';

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
