import { computed } from '@preact/signals';
import type { Design } from '../layout/layout-file.ts';
import { whenChanged, type Desk } from './desk.ts';
import type { KeptLayout } from './job/job.ts';
import { isForeign, NO_KIN } from './job/layouts.ts';
import { answered } from './reading.ts';
import { chosenBlank } from './searching.ts';
import { wordsIn } from './words/words.ts';

/** Holds every layout that came as a file against the drawing on the desk, as soon as either changes. */
export function keepKin(desk: Desk): void {
  let asked = 0;
  const given = computed(() => desk.job.value.layouts.filter(isForeign).map(({ id }) => id).join());
  const held = computed(() => ({ ids: given.value, reading: desk.reading.value, drawnFrom: desk.job.value.drawnFrom, drawing: desk.job.value.drawing }));
  whenChanged(held, 0, async ({ reading }) => {
    const number = ++asked;
    const blank = chosenBlank(desk);
    const layouts = desk.job.value.layouts.filter(isForeign);
    if (!blank || reading.kind !== 'answer' || layouts.length === 0) {
      desk.kin.value = { ...NO_KIN, drawn: desk.job.value.drawing !== undefined };
      return;
    }
    desk.kin.value = { ...desk.kin.value, drawn: true };
    const { name, dieline: { fingerprint } } = reading.answer;
    const found = await answered(() => desk.engine.ask('kinship', { designs: layouts.map(({ file }) => file.designs), drawing: { blank, name, fingerprint } }));
    if (number !== asked || found.kind !== 'answer') return;
    desk.kin.value = { drawn: true, known: new Map(layouts.map(({ id }, i) => [id, found.answer[i]!])) };
  });
}

/** The layout's own blank becomes the drawing on the desk; a layout of several designs stands for itself. */
export async function layOutItsOwn(desk: Desk, layout: KeptLayout): Promise<void> {
  const [design, ...others] = layout.file.designs;
  const drawing = design && others.length === 0 ? await drawingOf(desk, design) : undefined;
  desk.change((job) => ({ ...job, drawing, drawnFrom: 'printed', chosen: layout.id }));
}

async function drawingOf(desk: Desk, design: Design) {
  const svg = await desk.engine.ask('ownDrawing', design);
  return { kind: 'file', name: `${design.id}.svg`, bytes: new TextEncoder().encode(svg), options: { roles: [] } } as const;
}

/** The drawing stays; undo brings the layout back. */
export function putAside(desk: Desk, { id }: KeptLayout): void {
  desk.change((job) => ({ ...job, layouts: job.layouts.filter((one) => one.id !== id), chosen: undefined }));
  desk.notice.value = wordsIn(desk.locale.value).say('layout-put-aside');
}
