import type { Page } from 'playwright-core';
import { goTo, launch, sample, serve } from '../tests/browser/browser.ts';
import { printMachine } from './harness.ts';

/**
 * How long the desk takes from a drawing's bytes to the first layout on the page, in the real browser, beside what an
 * empty thread takes to start and answer: a busy machine slows both.
 */
const DRAWINGS = ['reverse-tuck-small.svg', 'label-round.svg', 'tray.svg'];
const ROUNDS = 5;

/** The page has been open for a moment before anybody has chosen a file, milliseconds. */
const SETTLED_MS = 1500;

interface Moments {
  readonly empty: number;
  /** Milliseconds from the drawing: read, search asked for, first layout found, first layout drawn. */
  readonly read: number;
  readonly asked: number;
  readonly found: number;
  readonly drawn: number;
}

printMachine();
const browser = await launch();
const server = await serve();
for (const name of DRAWINGS) {
  const rounds: Moments[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: 'en-GB', bypassCSP: true });
    const page = await context.newPage();
    rounds.push(await moments(page, name));
    await context.close();
  }
  const median = (key: keyof Moments) => rounds.map((one) => one[key]).toSorted((a, b) => a - b)[ROUNDS >> 1]!;
  const text = (['empty', 'read', 'asked', 'found', 'drawn'] as const).map((key) => `${key} ${median(key).toFixed(0)}`).join('  ');
  console.log(`${name.padEnd(26)} ${text} ms   ${(median('drawn') / median('empty')).toFixed(1)} empty threads`);
}
await browser.close();
await server.close();

async function moments(page: Page, name: string): Promise<Moments> {
  // The bundler that runs this file names functions by a helper that the page lacks.
  await page.addInitScript('globalThis.__name = (value) => value');
  await page.addInitScript(noteMessages);
  await page.goto(server.url);
  await goTo(page, 'Drawing');
  await page.getByLabel('Choose a drawing').waitFor();
  await page.waitForTimeout(SETTLED_MS);
  const empty = await page.evaluate(emptyThread);
  await page.getByLabel('Choose a drawing').setInputFiles(sample(name));
  await page.locator('.ticket .state-sound').waitFor();
  const noted = await page.evaluate(() => (globalThis as unknown as { noted: Record<string, number> }).noted);
  const since = (key: string) => noted[key]! - noted['drawing']!;
  return { empty, read: since('read'), asked: since('asked'), found: since('found'), drawn: since('drawn') };
}

/** In the page, before its own script: when what was said between it and its threads, and when the ticket showed a layout. */
function noteMessages(): void {
  const noted: Record<string, number> = {};
  (globalThis as unknown as { noted: typeof noted }).noted = noted;
  const note = (key: string) => (noted[key] ??= performance.now());
  document.addEventListener('change', (event) => (event.target as HTMLInputElement).type === 'file' && note('drawing'), true);
  const { Worker } = window;
  window.Worker = class extends Worker {
    constructor(address: string | URL, options?: WorkerOptions) {
      super(address, options);
      const asked = new Map<number, string>();
      const post = this.postMessage.bind(this);
      this.postMessage = (message: { id: number; kind: string }) => {
        asked.set(message.id, message.kind);
        if (message.kind === 'search') note('asked');
        post(message);
      };
      this.addEventListener('message', ({ data }: MessageEvent<{ id: number; event?: { kind: string } }>) => {
        if (asked.get(data.id) === 'read') note('read');
        if (data.event?.kind === 'layout') note('found');
      });
    }
  };
  const look = () => (document.querySelector('.ticket .state-sound') ? note('drawn') : requestAnimationFrame(look));
  requestAnimationFrame(look);
}

function emptyThread(): Promise<number> {
  const start = performance.now();
  const worker = new Worker(URL.createObjectURL(new Blob(['onmessage = () => postMessage(0)'], { type: 'text/javascript' })));
  return new Promise((resolve) => {
    worker.addEventListener('message', () => resolve(performance.now() - start));
    worker.postMessage({});
  });
}
