import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { batchJson } from '../../src/render/batch-json.ts';
import { engineVersion } from '../../src/shop/answers/engine.ts';
import { readBatchJob } from '../../src/shop/batch/batch-job.ts';
import { runBatch } from '../../src/shop/batch/run-batch.ts';
import { summaryOf } from '../../src/shop/batch/summary.ts';
import computeTask from '../../src/shop/batch/task-thread.ts';
import { openLibrary, type Library } from '../../src/shop/library/open-library.ts';
import { keepEntry } from '../../src/shop/library/records.ts';
import { takeIn, type Offer } from '../../src/shop/library/take-in.ts';

const drawings = join(import.meta.dirname, '..', '..', 'samples', 'drawings');
export const drawingNamed = (name: string) => readFileSync(join(drawings, `${name}.svg`));

const offer = (kind: Offer['kind'], id: string, content: object, drawing?: string): Offer => ({
  kind, id, where: id, content: { ...content, ...(drawing !== undefined && { drawing }) }, ...(drawing !== undefined && { drawing: () => drawingNamed(drawing) }),
});

/** A small invented shop: cartons, dies, machines, a quote, a layout and what a batch found, with some history. */
export async function shopLibrary(path: string): Promise<Library> {
  const library = openLibrary(path, { create: true });
  const cartons = Array.from({ length: 26 }, (_, i) => offer('carton', `FH-${200 + i}`, { name: `Spice box ${i}`, customer: 'Fernhollow' }, 'pillow'));
  await takeIn(library, [
    offer('carton', 'FH-101', { name: 'Darjeeling 62 × 38 × 94', customer: 'Fernhollow', yearly: 240_000 }, 'reverse-tuck-small'),
    offer('carton', 'FH-102', { name: 'Gift tray', yearly: 120_000, drawnFrom: 'inside', roles: ['Creasing=stroke:#0000ff'] }, 'tray'),
    ...cartons,
    offer('die', '4711', { rack: 'C4', owner: 'Fernhollow', ups: 12, sheet: '1020x720', dimensions: '62x31x118' }),
    offer('die', '4712', { rack: 'C5', ups: 16, sheet: '1020x720' }, 'reverse-tuck-small'),
    offer('press', 'invented-press', { name: 'Invented press', gripper: 14, maxSheet: '1020x720' }),
    offer('quote', 'Q-1', { format: 'blankwright-quote', name: 'mint tea', currency: 'EUR', quantities: [{ quantity: 5000, sheets: 672, boardKg: 148.06 }] }),
  ]);
  await takeIn(library, [offer('carton', 'FH-101', { yearly: 310_000 })]);
  const job = readBatchJob({ name: 'new widths', cartons: 'library', sheets: ['700x330', '640x450'], yearly: 900_000, grammage: 80, boardPricePerTonne: 1400 }, 'job', () => ({}));
  const executor = { width: 1, run: async (_: string, task: Parameters<typeof computeTask>[0]) => computeTask(task), close: async () => {} };
  const labels = ['label-wrap', 'label-rounded'].map((name) => offer('carton', name, {}, name));
  const results = await runBatch(job, labels, { library, executor, signal: new AbortController().signal, onProgress: () => {} });
  keepEntry(library, 'batch', job.name, JSON.parse(batchJson(summaryOf(job, results, true), engineVersion())));
  return library;
}
