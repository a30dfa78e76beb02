import { inputError } from '../../base/issue.ts';
import { collectDrawing } from '../drawing-collector.ts';
import type { Drawing } from '../drawing.ts';
import { fingerprintOf } from '../fingerprint.ts';
import type { ReadOptions } from '../options.ts';
import { openPdf, pageContents, pageMap } from './document.ts';
import { createInterpreter } from './interpreter.ts';
import { createLayers } from './layers.ts';

/**
 * Opens a PDF and reads one of its pages, counted from 1, as often as a scale is tried. Lines come with the names of their
 * layers and spot colours; clipping, images and shadings are passed over. Throws InputError where the file is no PDF that
 * can be read, is encrypted, has no such page or passes a limit.
 */
export async function openPdfDrawing(bytes: Uint8Array, number: number, onWork?: ReadOptions['onWork']): Promise<(scale: number | undefined) => Drawing> {
  const { context, catalog, pages } = await openPdf(bytes);
  const page = pages[number - 1];
  if (!page) throw inputError('no-such-page', { facts: { number, count: pages.length } });
  const contents = pageContents(page);
  const fingerprint = fingerprintOf(bytes);
  return (scale) => {
    const mmPerUnit = scale ?? page.mmPerUnit;
    const { map, size } = pageMap(page, mmPerUnit);
    const collector = collectDrawing(onWork);
    if (pages.length > 1) collector.issues.push({ code: 'several-pages', severity: 'note', facts: { number, count: pages.length } });
    const interpret = createInterpreter(collector, createLayers(catalog, context), context);
    interpret(contents, page.resources, map);
    return collector.finish({ page: size, scale: { mmPerUnit, from: scale === undefined ? 'unit' : 'given scale' }, fingerprint, yAxis: 'down' });
  };
}
