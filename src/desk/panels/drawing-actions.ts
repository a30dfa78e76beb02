import { useState } from 'preact/hooks';
import { lengthOf } from '../job/laying.ts';
import type { Desk } from '../desk.ts';
import type { DrawingOptions } from '../engine/protocol.ts';

/** What is said about a drawing from a file. */
export function useDrawingOptions(desk: Desk) {
  const [typed, setTyped] = useState({ text: '', over: undefined as number | undefined });
  const { drawing } = desk.job.value;
  const file = drawing?.kind === 'file' ? drawing.options : undefined;
  const set = (options: Partial<DrawingOptions>) =>
    desk.change((job) => (job.drawing?.kind === 'file' ? { ...job, drawing: { ...job.drawing, options: { ...job.drawing.options, ...options } } } : job), 'drawing options');
  return {
    file,
    set,
    // What cannot be read stays in view, over the width that holds.
    widthText: typed.over === file?.widthIs && !isWidth(typed.text) ? typed.text : textOf(file?.widthIs),
    setWidth: (text: string) => {
      setTyped({ text, over: file?.widthIs });
      if (isWidth(text)) set({ widthIs: lengthOf(text) as number | undefined });
    },
  };
}

export function isWidth(text: string): boolean {
  const mm = lengthOf(text);
  return mm !== 'fault' && mm !== 0;
}

function textOf(mm: number | undefined): string {
  return mm === undefined ? '' : String(mm);
}
