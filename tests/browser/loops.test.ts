import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { openFiles } from '../../src/cli/desk-files.ts';
import { serveDesk, type DeskServer } from '../../src/cli/desk-server.ts';
import { PATIENCE_MS } from '../../src/desk/engine/watch.ts';
import { browserIsHere, goTo, picture, root, sample } from './browser.ts';
import { withDesk } from './with-desk.ts';

/** What is put before a thread's own script: on a message that fits, it never comes back. */
const loopOn = (condition: string) => `addEventListener("message", (event) => { const { data } = event; if (!(${condition})) return; event.stopImmediatePropagation(); setTimeout(() => { for (;;); }, 200); });\n`;
/** The same, but only in the first thread that hears of a task. */
const LOOP_IN_ONE = `const others = new BroadcastChannel('caught'); let isCaught = false; others.onmessage = () => (isCaught = true);
${loopOn('data.order && !isCaught')}`.replace('event.stop', 'others.postMessage(0); event.stop');
/** Threads for a search on any machine. */
const FOUR_CORES = "Object.defineProperty(navigator, 'hardwareConcurrency', { value: 4 });\n";

/** Threads that are caught in a loop: told, stopped by the person, started anew; nothing is lost. A copy of the page is served, one script of it changed. */
describe.skipIf(!browserIsHere())('threads caught in a loop', { timeout: 175_000 }, () => {
  const desk = withDesk();
  let folder: string;
  let server: DeskServer;
  let page: Page;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'desk-loops-'));
    cpSync(join(root, 'dist', 'desk'), folder, { recursive: true });
    server = await serveDesk(folder, openFiles([sample('reverse-tuck-small.svg')]), { must: 0 });
  });
  afterAll(async () => {
    await server.close();
    rmSync(folder, { recursive: true });
  });
  beforeEach(async () => {
    page = await desk.open();
    await page.clock.install();
  });

  const script = (name: string, before = '') => writeFileSync(join(folder, name), before + readFileSync(join(root, 'dist', 'desk', name), 'utf8'));
  const mended = () => ['engine-worker.js', 'lane-worker.js'].forEach((name) => script(name));
  /** The page's clock runs ahead until the page tells, and a thread that is alive has had the time to show it; how long it waits by itself is `watch.test.ts`'s. */
  const told = async (what: string) => {
    const alert = page.getByRole('alert').filter({ hasText: what });
    const isTold = async () => {
      await page.clock.runFor(PATIENCE_MS);
      await page.waitForTimeout(1500);
      return alert.isVisible();
    };
    await expect.poll(isTold, { timeout: 60_000, interval: 500 }).toBe(true);
    return alert;
  };
  const searched = () => page.locator('.ticket .search-line', { hasText: 'found in' }).waitFor({ timeout: 60_000 });
  const open = async () => {
    await page.goto(server.url);
    await goTo(page, 'Layouts found');
    await page.getByLabel('Effort').selectOption('quick');
  };

  test('the thread that answers: told, stopped; the drawing and the layouts stay, the question is asked again', async () => {
    script('engine-worker.js', loopOn("data.kind === 'explain'"));
    await open();
    await page.getByRole('textbox', { name: 'Name of the job' }).fill('mint tea');
    await searched();
    mended();
    await goTo(page, 'Why this many');
    const alert = await told('The thread that reads, judges and draws has shown no sign of life for 30 s');
    await picture(page, 'silent-thread');
    expect(await alert.innerText()).toContain('the drawing, the layouts found and all that you typed stay');
    // Questions behind it are asked of the new thread.
    await goTo(page, 'Hand over');
    await alert.getByRole('button', { name: 'Stop it and start anew' }).click();
    await page.locator('ul.files').waitFor();
    expect(await page.locator('.ticket').innerText()).toMatch(/reverse-tuck-small[\s\S]*\d+ ups/);
    expect(await page.getByRole('textbox', { name: 'Name of the job' }).inputValue()).toBe('mint tea');
    await goTo(page, 'Why this many');
    await page.getByText('Where the board goes').waitFor();
  });

  test('the thread that searches: what was found stays, and the question is asked again by a button', async () => {
    mended();
    await open();
    await searched();
    script('engine-worker.js', loopOn("data.kind === 'search'"));
    // Ended as by a breakdown, so that the next one has the changed script.
    for (const worker of page.workers().filter((one) => one.url().endsWith('engine-worker.js'))) await worker.evaluate(() => (globalThis as unknown as { close(): void }).close()).catch(() => undefined);
    await page.waitForTimeout(1000);
    await page.locator('main').getByRole('button', { name: 'Search', exact: true }).click();
    const alert = await told('The search has shown no sign of life');
    mended();
    await alert.getByRole('button', { name: 'Stop it and start anew' }).click();
    await page.locator('main').getByText('You had the thread stopped that was at work on this.').waitFor();
    await picture(page, 'stopped-search');
    expect(await page.locator('.card').count()).toBeGreaterThan(0);
    await page.locator('main').getByRole('button', { name: 'Ask again' }).click();
    await searched();
    expect(await page.locator('.ticket .state-sound').count()).toBe(1);
  });

  test('one thread of a search among others that go on: told all the same', async () => {
    script('lane-worker.js', LOOP_IN_ONE);
    script('engine-worker.js', FOUR_CORES);
    await open();
    const alert = await told('The search has shown no sign of life');
    mended();
    await alert.getByRole('button', { name: 'Stop it and start anew' }).click();
    await page.locator('main').getByRole('button', { name: 'Ask again' }).click();
    await searched();
  });
});
