import type { Page, Worker } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import { browserIsHere, chooseEffort, goTo, sample, searched } from './browser.ts';
import { withDesk } from './with-desk.ts';

/** Threads that end without a word: no message, no error. The page notices, says it, starts others and asks again. */
describe.skipIf(!browserIsHere())('threads that end silently', { timeout: 150_000 }, () => {
  const desk = withDesk([sample('reverse-tuck-small.svg')]);
  let page: Page;

  beforeEach(async () => {
    page = await desk.open();
    await page.locator('.ticket', { hasText: 'ups' }).waitFor();
  });

  const threads = (script: string) => page.workers().filter((one) => one.url().endsWith(script));
  /** The worker's own way to end itself: nothing is heard of it. */
  const vanish = (worker: Worker) => worker.evaluate(() => (globalThis as unknown as { close(): void }).close()).catch(() => undefined);
  const told = () => page.getByRole('status').filter({ hasText: 'A thread of the engine broke down' }).waitFor({ timeout: 25_000 });
  const quick = async () => {
    await chooseEffort(page, 'quick');
    await page.getByRole('button', { name: 'Stop' }).click();
    await searched(page);
  };

  test('the thread that answers and the one that searches: said, started anew, asked again', async () => {
    expect(threads('engine-worker.js').length).toBeGreaterThanOrEqual(2);
    for (const worker of threads('engine-worker.js')) await vanish(worker);
    await told();
    await quick();
    await goTo(page, 'Why this many');
    await page.getByText('Where the board goes').waitFor();
  });

  test('a thread of the search: the search is made anew and ends', async () => {
    await page.waitForFunction(() => document.querySelector('.search-line')?.textContent?.includes('s'), undefined, { timeout: 30_000 });
    const found = async () => {
      for (let tries = 0; tries < 200 && threads('lane-worker.js').length === 0; tries++) await page.waitForTimeout(100);
      return threads('lane-worker.js');
    };
    // A search that is just being replaced by another takes its lanes with it: then one of the next is ended.
    const isTold = async () => await page.getByRole('status').filter({ hasText: 'A thread of the engine broke down' }).isVisible();
    for (let tries = 0; tries < 5 && !(await isTold()); tries++) {
      const [lane] = await found();
      expect(lane, 'a lane of the search').toBeDefined();
      await vanish(lane!);
      await told().catch(() => undefined);
    }
    expect(await isTold()).toBe(true);
    await quick();
    expect(await page.locator('.ticket .state-sound').count()).toBe(1);
  });

  test('long work is not mistaken for an end', async () => {
    // The answering thread is kept busy without a pause; nobody calls it dead.
    const [engine] = threads('engine-worker.js');
    await engine!.evaluate(() => {
      const until = Date.now() + 6_000;
      while (Date.now() < until);
    });
    await goTo(page, 'Why this many');
    await page.getByText('Where the board goes').waitFor();
    expect(await page.getByRole('status').filter({ hasText: 'broke down' }).count()).toBe(0);
  });
});
