import { readSvgDrawing } from '../../src/dieline/read-svg.ts';
import { inlineRunner } from '../../src/nesting/tasks.ts';
import type { NestJob } from '../../src/pipeline/nest.ts';

/** A blank of 164.6 × 100 mm. */
export const BAR_SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="164.6mm" height="100mm" viewBox="0 0 164.6 100"><path id="cut" d="M0 0H164.6V100H0Z" fill="none" stroke="#000"/></svg>';

const bar = readSvgDrawing(new TextEncoder().encode(BAR_SVG));

/**
 * Worked: six blanks of 164.6 mm with gap 4 need 1007.6 of 1008 mm; 5 mm apart they need 1012.6, so five; six rows of
 * 100 mm either way: 36 ups, of which 30 keep strips of 5 mm.
 */
export const barJob: NestJob = { id: 'bar', blank: bar.blanks[0]!, drawing: bar, sheet: { width: 1020, height: 720 }, settings: { gap: 4, bleed: 2 }, machines: {}, rotations: [0], layouts: 1 };

export const quickSearch = { effort: 'quick', seed: 1, runner: inlineRunner(), stop: () => undefined } as const;
