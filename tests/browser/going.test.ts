import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { browserIsHere, goTo, sample } from './browser.ts';
import { withDesk } from './with-desk.ts';

/** A file that takes its time shows itself only to whoever has waited for it. */
describe.skipIf(!browserIsHere())('a drawing that comes slowly', { timeout: 60_000 }, () => {
  const desk = withDesk([sample('reverse-tuck-small.svg'), sample('sleeve.svg')]);
  const current = (page: Page) => page.locator('.ticket [aria-current=page] .panel-name').innerText();
  const FILE = /api\/file\?/;

  test('who went elsewhere before it was there stays there', async () => {
    const page = await desk.open();
    let release = () => {};
    const held = new Promise<void>((resolve) => (release = resolve));
    await page.route(FILE, async (route) => {
      await held;
      await route.continue();
    });
    const asked = page.waitForRequest(FILE);
    await page.getByRole('button', { name: 'sleeve.svg' }).click();
    await asked;
    await goTo(page, 'Money');
    release();
    await page.locator('.ticket').getByText(/^sleeve/).waitFor();
    expect(await current(page)).toBe('Money');
  });

  test('a file that cannot be had is said, and changes nothing', async () => {
    const page = await desk.open();
    await page.route(FILE, (route) => route.fulfill({ status: 404 }));
    await page.getByRole('button', { name: 'sleeve.svg' }).click();
    await page.getByText('sleeve.svg could not be opened').waitFor();
    expect(await current(page)).toBe('Drawing');
    desk.forgive('404');
  });
});
