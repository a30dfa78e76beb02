import type { Blank, Dieline } from '../dieline/dieline.ts';
import { chooseBlank } from '../dieline/choose-blank.ts';
import { mirrorBlank } from '../dieline/mirror-blank.ts';
import { readDrawingOptions } from './drawing-options.ts';
import { createOptionReader } from './option-reader.ts';
import { readDrawing } from './read-drawing.ts';

/** Reads a drawing with the options of the command and gives the blank that is meant, as seen on the printed side. */
export async function readChosenBlank(path: string, raw: Readonly<Record<string, unknown>>, drawnFrom: 'printed' | 'inside'): Promise<{ dieline: Dieline; blank: Blank }> {
  const reader = createOptionReader(raw);
  const options = readDrawingOptions(raw, reader);
  reader.finish();
  const dieline = await readDrawing(path, options);
  const blank = chooseBlank(dieline, options.blank);
  return { dieline, blank: drawnFrom === 'inside' ? mirrorBlank(blank) : blank };
}
