import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { browserIsHere, findings, picture } from './browser.ts';
import { WITH_AXE, withDesk } from './with-desk.ts';

/** What the browser keeps when something goes wrong with it. */
describe.skipIf(!browserIsHere())('the browser’s store', { timeout: 120_000 }, () => {
  const desk = withDesk();
  const name = (page: Page) => page.getByRole('textbox', { name: 'Name of the job' });
  const kept = (page: Page) => page.getByText('kept in this browser').waitFor();
  const settled = (page: Page) => page.waitForTimeout(600);
  const downloaded = async (page: Page, button: RegExp | string) => {
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: button }).first().click();
    return readFileSync(await (await coming).path(), 'utf8');
  };

  test('full: said, the job as a file is offered, and kept again as soon as there is room', async () => {
    // Before anything was written there: a browser remembers for a while that there was room.
    const page = await desk.beside(await desk.open(WITH_AXE, []));
    const browser = await page.context().newCDPSession(page);
    const { origin } = new URL(desk.url);
    await browser.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
    await page.goto(desk.url);
    await name(page).fill('mint tea, revised');
    const alert = page.getByRole('alert').filter({ hasText: 'The browser’s store is full' });
    await alert.waitFor();
    await picture(page, 'store-full');
    expect(await findings(page)).toEqual([]);
    expect(JSON.parse(await downloaded(page, 'Save this job as a file'))).toMatchObject({ format: 'blankwright-job', name: 'mint tea, revised' });
    await browser.send('Storage.overrideQuotaForOrigin', { origin });
    await name(page).fill('mint tea, revised twice');
    await alert.waitFor({ state: 'detached' });
    await kept(page);
    await settled(page);
    await page.reload();
    expect(await name(page).inputValue()).toBe('mint tea, revised twice');
  });

  test('a tab that crashes in the middle of saving leaves the job whole, as it was or as it became', async () => {
    const page = await desk.open();
    await name(page).fill('before');
    await settled(page);
    await kept(page);
    const address = page.url();
    const other = await desk.beside(page);
    for (const [round, wait] of [240, 252, 258, 270, 300].entries()) {
      const tab = await desk.beside(page);
      await tab.goto(address);
      const old = await name(tab).inputValue();
      await name(tab).fill(`round ${round}`);
      await tab.waitForTimeout(wait);
      const session = await tab.context().newCDPSession(tab);
      const crashed = new Promise((resolve) => tab.once('crash', resolve));
      void session.send('Page.crash').catch(() => undefined);
      await crashed;
      await tab.close();
      await other.goto('about:blank');
      await other.goto(address);
      expect([old, `round ${round}`]).toContain(await name(other).inputValue());
    }
  });

  test('a job of a newer desk stays as it is, and can be saved as a file', async () => {
    const page = await desk.open();
    await name(page).fill('mint tea');
    await settled(page);
    const address = page.url();
    const change = async () => {
      const database = await new Promise<IDBDatabase>((resolve) => { const open = indexedDB.open('blankwright-desk'); open.onsuccess = () => resolve(open.result); });
      const jobs = () => database.transaction('jobs', 'readwrite').objectStore('jobs');
      const read = () => new Promise<{ job: Record<string, unknown> }[]>((resolve) => { const asked = jobs().getAll(); asked.onsuccess = () => resolve(asked.result as never); });
      let all = await read();
      for (let tries = 0; tries < 50 && all.length === 0; tries++) {
        await new Promise((resolve) => setTimeout(resolve, 100));
        all = await read();
      }
      const store = jobs();
      for (const one of all) store.put({ ...one, job: { ...one.job, version: 2, drawing: { bytes: Uint8Array.of(1, 2, 3) }, unheardOf: ['something new'] } });
      database.close();
    };
    await page.goto(`${desk.url}icon.svg`);
    await page.evaluate(change);
    await page.goto(address);
    await page.getByRole('status').filter({ hasText: 'made by a newer version of the desk' }).waitFor();
    expect(await name(page).inputValue()).toBe('');
    await name(page).fill('another');
    await settled(page);
    await page.getByRole('button', { name: 'Jobs' }).click();
    const text = await downloaded(page, 'Of a newer desk, save as a file: mint tea');
    expect(JSON.parse(text)).toMatchObject({ name: 'mint tea', version: 2, unheardOf: ['something new'], drawing: { bytes: 'AQID' } });
    await page.goto('about:blank');
    await page.goto(address);
    await page.getByRole('button', { name: 'Jobs' }).click();
    expect(await downloaded(page, 'Of a newer desk, save as a file: mint tea')).toBe(text);
    desk.forgive('404');
  });

  test('a store of a newer desk is not touched: said, and its jobs can be saved as files', async () => {
    const page = await desk.open();
    await name(page).fill('mint tea');
    await settled(page);
    await page.goto(`${desk.url}icon.svg`);
    await page.evaluate(() => new Promise<void>((resolve, reject) => {
      const open = indexedDB.open('blankwright-desk', 7);
      open.onupgradeneeded = () => open.result.createObjectStore('more');
      open.onsuccess = () => { open.result.close(); resolve(); };
      open.onerror = () => reject(open.error);
    }));
    await page.goto(desk.url);
    await page.getByRole('alert').filter({ hasText: 'was made by a newer version of the desk and is left as it is' }).waitFor();
    await picture(page, 'store-newer');
    await name(page).fill('not kept');
    await settled(page);
    expect(JSON.parse(await downloaded(page, 'Save this job as a file'))).toMatchObject({ name: 'not kept' });
    await page.getByRole('button', { name: 'Jobs' }).click();
    await page.getByRole('button', { name: 'mint tea', exact: true }).click();
    await expect.poll(() => name(page).inputValue()).toBe('mint tea');
    desk.forgive('404');
  });
});
