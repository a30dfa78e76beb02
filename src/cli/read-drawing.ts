import { InputError } from '../base/issue.ts';
import type { Dieline } from '../dieline/dieline.ts';
import type { ReadOptions } from '../dieline/options.ts';
import { readDrawing as readBytes } from '../dieline/read-drawing.ts';
import { readInput } from './files.ts';

/** Reads a drawing file. Throws InputError, each reason naming the file. */
export async function readDrawing(path: string, options: ReadOptions): Promise<Dieline> {
  const bytes = readInput(path);
  try {
    return await readBytes(bytes, options);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.issues.map((issue) => ({ ...issue, where: issue.where === undefined ? path : `${path}, ${issue.where}` })));
  }
}
