import type { Dieline } from './dieline.ts';
import { DEFAULT_READ_OPTIONS, type ReadOptions } from './options.ts';
import { dielineOf } from './read-drawing.ts';
import { readSvg } from './svg-drawing.ts';

/** `readDrawing` for bytes that are known to be SVG, without waiting. */
export function readSvgDrawing(bytes: Uint8Array, options: Partial<ReadOptions> = {}): Dieline {
  return dielineOf((scale) => readSvg(bytes, scale), { ...DEFAULT_READ_OPTIONS, ...options });
}
