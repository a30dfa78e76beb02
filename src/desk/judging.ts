import { whenChanged, type Desk } from './desk.ts';
import { answered } from './reading.ts';

/** A layout that came back unjudged (the page was closed too early) is judged as soon as it is looked at. */
export function keepJudging(desk: Desk): void {
  whenChanged(desk.chosen, PATIENCE_MS, async (layout) => {
    if (!layout || layout.state !== 'not judged' || layout.file.placements.length === 0) return;
    const judged = await answered(() => desk.engine.ask('judge', layout.file));
    if (judged.kind !== 'answer') return;
    const { state } = judged.answer;
    desk.note((job) => ({ ...job, layouts: job.layouts.map((one) => (one.file === layout.file ? { ...one, state } : one)) }));
  });
}

/** Who changes a layout by hand has it judged at once; this only picks up what was left, milliseconds. */
const PATIENCE_MS = 400;
