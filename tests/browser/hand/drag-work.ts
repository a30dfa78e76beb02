import type { Design } from '../../../src/layout/layout-file.ts';
import { at, layoutWith } from '../../support/layouts.ts';
import type { HandPage } from './hand-page.ts';

/** What one frame of a drag costs the page's main thread, in counted work and (for benchmarks only) in processor time. */
export interface DragWork {
  readonly frames: number;
  readonly restyledPerFrame: number;
  readonly laidOutPerFrame: number;
  readonly changedNodesPerFrame: number;
  /** Of all tasks, between two moves of the pointer: mostly two frames. */
  readonly mainThreadMsPerMove: number;
  readonly mainThreadMsPerFrame: number;
  readonly longestTaskMs: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly tdur?: number;
  readonly dur?: number;
  readonly args: Readonly<Record<string, never>> & { readonly elementCount?: number; readonly beginData?: { readonly dirtyObjects: number }; readonly name?: string };
}

const STEPS = 30;

/** Drags a blank in the middle of a grid of so many columns and rows over its neighbours, one move a frame. */
export async function workWhileDragging({ page, mount }: HandPage, design: Design, columns: number, rows: number): Promise<DragWork> {
  const [width, height] = [Math.max(...design.outline.map(([x]) => x)) + 8, Math.max(...design.outline.map(([, y]) => y)) + 8];
  const placements = Array.from({ length: columns * rows }, (_, i) => at(design.id, 20 + (i % columns) * width, 20 + Math.floor(i / columns) * height));
  const sheet = { width: Math.min(16_000, columns * width + 500), height: Math.min(16_000, rows * height + 500) };
  const whole = { x: 0, y: 0, ...sheet };
  await mount(layoutWith([design], placements, { sheet, usable: whole, printable: whole }));
  // The no-fit polygons are made while the page rests.
  await page.waitForTimeout(800);
  const middle = Math.floor(rows / 2) * columns + Math.floor(columns / 2) + 1;
  const id = await page.evaluate((station) => Number(document.querySelectorAll('.hand-blanks [data-id]')[station - 1]!.getAttribute('data-id')), middle);
  const box = (await page.locator(`.hand-blanks [data-id="${id}"] use`).boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 12, y + 4, { steps: 3 });
  await page.evaluate(() => {
    const counter = window as unknown as { changedNodes: number };
    counter.changedNodes = 0;
    new MutationObserver((records) => (counter.changedNodes += records.reduce((sum, record) => sum + (record.type === 'childList' ? record.addedNodes.length : 1), 0))).observe(document.querySelector('.hand')!, { subtree: true, childList: true, attributes: true, characterData: true });
  });
  const browser = page.context().browser()!;
  await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline', 'disabled-by-default-devtools.timeline'] });
  for (let i = 1; i <= STEPS; i++) {
    await page.mouse.move(x + 12 + i * 2.3, y + 4 + i * 1.1);
    await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(resolve)));
  }
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as { traceEvents: TraceEvent[] };
  const changedNodes = await page.evaluate(() => (window as unknown as { changedNodes: number }).changedNodes);
  await page.mouse.up();
  const main = traceEvents.find(({ name, args, pid, tid }) => name === 'thread_name' && args.name === 'CrRendererMain' && traceEvents.some((event) => event.name === 'FunctionCall' && event.pid === pid && event.tid === tid))!;
  const onMain = traceEvents.filter(({ ph, pid, tid }) => pid === main.pid && tid === main.tid && (ph === 'X' || ph === 'B'));
  const sum = (name: string, of: (event: TraceEvent) => number) => onMain.filter((event) => event.name === name).reduce((total, event) => total + of(event), 0);
  const tasks = onMain.filter(({ name }) => name === 'ThreadControllerImpl::RunTask').map(({ tdur, dur }) => (tdur ?? dur ?? 0) / 1000);
  return {
    frames: STEPS,
    restyledPerFrame: sum('UpdateLayoutTree', ({ args }) => args.elementCount ?? 0) / STEPS,
    laidOutPerFrame: sum('Layout', ({ args }) => args.beginData?.dirtyObjects ?? 0) / STEPS,
    changedNodesPerFrame: changedNodes / STEPS,
    mainThreadMsPerMove: total(tasks) / STEPS,
    mainThreadMsPerFrame: total(tasks) / onMain.filter(({ name }) => name === 'Commit').length,
    longestTaskMs: Math.max(...tasks),
  };
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
