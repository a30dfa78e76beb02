import { inFields, InputError, type Issue } from '../base/issue.ts';
import { chooseBlank } from '../dieline/choose-blank.ts';
import type { Blank, Dieline } from '../dieline/dieline.ts';
import { mirrorBlank } from '../dieline/mirror-blank.ts';
import { DEFAULT_READ_OPTIONS } from '../dieline/options.ts';
import { dielineOfStyle } from '../dieline/styles/dieline-of-style.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import { nest } from '../pipeline/nest.ts';
import type { QuoteDesign } from '../pipeline/quote-design.ts';
import { nameOf } from './files.ts';
import { readDrawing } from './read-drawing.ts';
import { createStopSignal } from './stop-signal.ts';
import { createWorkerPool, defaultWorkers } from './worker-pool.ts';

/** Lays out what a quote names by a drawing or by dimensions, as `nest` does. `resolve` finds files beside the job. */
export async function layoutOfQuote(design: QuoteDesign, where: string, resolve: (file: string) => string): Promise<{ layout: LayoutFile; issues: readonly Issue[] }> {
  const { dieline, blank, id } = await designOf(design, where, resolve);
  const stop = createStopSignal(undefined);
  const pool = createWorkerPool(defaultWorkers());
  try {
    const printed = design.drawnFrom === 'inside' ? mirrorBlank(blank) : blank;
    const outcome = await nest({ ...design.laying, id, blank: printed, drawing: dieline, layouts: 1 }, { effort: design.effort, seed: design.seed, runner: pool, stop: stop.reason });
    return { layout: outcome.layouts[0]!.file, issues: dieline.issues.filter(({ severity }) => severity !== 'note') };
  } finally {
    stop.dispose();
    await pool.close();
  }
}

async function designOf({ source }: QuoteDesign, where: string, resolve: (file: string) => string): Promise<{ dieline: Dieline; blank: Blank; id: string }> {
  if (source.kind === 'drawing') {
    const file = resolve(source.file);
    const dieline = await readDrawing(file, DEFAULT_READ_OPTIONS);
    return { dieline, blank: await inFields(where, () => chooseBlank(dieline, source.blank)), id: nameOf(file) };
  }
  try {
    const dieline = dielineOfStyle(source.style, source.values, source.grain);
    return { dieline, blank: dieline.blanks[0]!, id: source.style };
  } catch (error) {
    // The place is a field of the job, not an option.
    if (error instanceof InputError) throw new InputError(error.issues.map((issue) => ({ ...issue, where: `${where}: blank.${issue.where ?? ''}` })));
    throw error;
  }
}
