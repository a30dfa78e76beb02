import { InputError } from '../base/issue.ts';
import type { Dieline } from '../dieline/dieline.ts';
import type { ReadOptions } from '../dieline/options.ts';
import { readDrawing as readBytes } from '../dieline/read-drawing.ts';
import { readArtwork as readArtworkBytes, type Artwork } from '../pipeline/artwork.ts';
import type { NamedInk } from '../render/svg-pdf/colours.ts';
import { readInput } from './files.ts';

/** Reads a drawing file. Throws InputError, each reason naming the file. */
export function readDrawing(path: string, options: ReadOptions): Promise<Dieline> {
  return readNaming(path, (bytes) => readBytes(bytes, options));
}

/** Reads a page of an artwork file. Throws InputError, each reason naming the file. */
export function readArtwork(path: string, page: number, inks: readonly NamedInk[]): Promise<Artwork> {
  return readNaming(path, (bytes) => readArtworkBytes(bytes, page, path, inks));
}

async function readNaming<Value>(path: string, read: (bytes: Uint8Array) => Promise<Value>): Promise<Value> {
  const bytes = readInput(path);
  try {
    return await read(bytes);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.issues.map((issue) => ({ ...issue, where: issue.where === undefined || issue.where === path ? path : `${path}, ${issue.where}` })));
  }
}
