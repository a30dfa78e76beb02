import { effect, untracked } from '@preact/signals';
import type { NearMiss } from '../render/near-miss-facts.ts';
import type { Desk } from './desk.ts';
import type { Job, KeptLayout } from './job/job.ts';
import { FROM_FILE, layoutFromFile, samePlacements } from './job/layouts.ts';
import { besideFields, withChange } from './job/with-change.ts';
import { wordsIn } from './words/words.ts';

/** The layout of a near miss as it is kept; `of`: the inputs that it is one change away from. The same one is kept once. */
export function layoutOfMiss({ job }: Desk, { thing, from, to, layout }: NearMiss, of: string): KeptLayout {
  const known = job.value.layouts.find(({ file, changed }) => changed?.thing === thing && changed.of === of && samePlacements(file, layout));
  return known ?? { ...layoutFromFile(layout, 'sound', ''), changed: { thing, of, ...(from !== undefined && to !== undefined && { from, to }) } };
}

/** Puts a layout on the desk, to be looked at: the job's fields stay as they are. */
export function showChange(desk: Desk, kept: KeptLayout): void {
  desk.change((job) => withLayout(job, kept));
  desk.panel.value = 'layouts';
}

/** Whether the change that a layout shows can be put into the fields as they lie now. */
export function canTake({ inputs }: Desk, { changed, inputs: own }: KeptLayout): boolean {
  return changed !== undefined && own === FROM_FILE && changed.of === inputs.value && besideFields(changed.thing) === undefined;
}

/** One step: the change goes into the job's fields, and the layout that shows it is then a layout of this job. */
export function takeChange(desk: Desk, kept: KeptLayout): void {
  if (!canTake(desk, kept)) return;
  const { say, changeOf } = wordsIn(desk.locale.value, desk.unit.value);
  const changed = kept.changed!;
  desk.change((job) => withLayout(withChange(job, changed, kept.file), kept));
  counts(desk, kept, changed.of);
  desk.panel.value = 'layouts';
  desk.notice.value = say('change-taken', { change: changeOf(kept) });
}

function withLayout(job: Job, kept: KeptLayout): Job {
  return { ...job, layouts: [...job.layouts.filter(({ id }) => id !== kept.id), kept], chosen: kept.id };
}

/** The layout counts for the job as soon as its new inputs are known: at once, or when the changed blank is drawn; never when the fields were changed meanwhile. */
function counts(desk: Desk, { id }: KeptLayout, before: string | undefined): void {
  const { drawing, sheet, limits } = desk.job.value;
  const isSame = (job: Job) => job.drawing === drawing && job.sheet === sheet && job.limits === limits;
  const note = (inputs: string) => desk.note((job) => ({ ...job, layouts: job.layouts.map((layout) => (layout.id === id ? ofThisJob(desk, layout, inputs) : layout)) }));
  effect(function (this: { dispose(): void }) {
    const inputs = desk.inputs.value;
    const isStill = isSame(desk.job.value);
    if (isStill && (inputs === undefined || inputs === before)) return;
    this.dispose();
    if (isStill) untracked(() => note(inputs!));
  });
}

/** A blank of other dimensions has another name. */
function ofThisJob({ reading }: Desk, layout: KeptLayout, inputs: string): KeptLayout {
  const { designs, placements } = layout.file;
  const name = reading.value.kind === 'answer' ? reading.value.answer.name : designs[0]!.id;
  const file = { ...layout.file, designs: designs.map((design) => ({ ...design, id: name })), placements: placements.map((placed) => ({ ...placed, design: name })) };
  return { ...layout, file, inputs };
}
