import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { browserIsHere, chooseEffort, goTo, picture, sample, searched } from './browser.ts';
import { withDesk } from './with-desk.ts';

/** The sheet under the hand as it lies on the whole page. */
describe.skipIf(!browserIsHere())('the hand on the desk', { timeout: 150_000 }, () => {
  const desk = withDesk();

  const trays = async (width: number): Promise<Page> => {
    const page = await desk.open({ viewport: { width, height: 800 } });
    await chooseEffort(page, 'quick');
    await goTo(page, 'Drawing');
    await page.getByLabel('Choose a drawing').setInputFiles(sample('tray.svg'));
    await searched(page);
    await goTo(page, 'Layouts found');
    await page.locator('.hand-blanks use').first().waitFor();
    return page;
  };
  const status = (page: Page) => page.locator('.hand-status').textContent();
  const placesOf = (page: Page) => page.locator('.hand-blanks [data-id]').evaluateAll((blanks) => blanks.map((blank) => blank.getAttribute('aria-label')).sort());

  /** Ups of the sound layouts by hand that the browser's store holds, so that a page is loaded anew only when all is kept. */
  const keptByHand = (page: Page) => page.evaluate(() => new Promise<number[]>((resolve, reject) => {
    const opening = indexedDB.open('blankwright-desk');
    opening.onerror = () => reject(opening.error as Error);
    opening.onsuccess = () => {
      const reading = opening.result.transaction('jobs').objectStore('jobs').getAll();
      reading.onsuccess = () => {
        opening.result.close();
        resolve((reading.result as { job: { layouts: { byHand?: boolean; state: string; file: { placements: unknown[] } }[] } }[]).flatMap(({ job }) => job.layouts.filter(({ byHand, state }) => byHand === true && state === 'sound').map(({ file }) => file.placements.length)).toSorted((a, b) => a - b));
      };
    };
  }));

  test('a blank that is dragged stays with the pointer, however long the words below become', async () => {
    const page = await trays(1024);
    const blank = page.locator('.hand-blanks [data-id]').nth(7);
    const before = (await blank.locator('use').boundingBox())!;
    const at = { x: before.x + before.width / 2, y: before.y + before.height / 2 };
    await page.keyboard.down('Alt');
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    for (let step = 1; step <= 12; step++) await page.mouse.move(at.x - 3 * step, at.y);
    await page.waitForFunction(() => document.querySelector('.hand-state')?.getAttribute('data-state') === 'faulty');
    await picture(page, 'hand-dragged');
    await page.mouse.up();
    await page.keyboard.up('Alt');
    await page.locator('.card.chosen .state-faulty').waitFor();
    const after = (await blank.locator('use').boundingBox())!;
    // Its middle: a faulty blank's line is heavier.
    expect(Math.abs(after.x + after.width / 2 - (at.x - 36))).toBeLessThan(1);
    expect(Math.abs(after.y + after.height / 2 - at.y)).toBeLessThan(1);
    // What is faulty claims nothing, on its card as on the ticket.
    expect(await page.locator('.card.chosen').innerText()).not.toMatch(/can fit|proved/);
  });

  test('solving the rest says at once that it works, Escape takes the best so far, and steps outlive the page', async () => {
    const page = await trays(1366);
    const found = await page.locator('.hand-blanks [data-id]').count();
    await page.keyboard.press('n');
    await page.keyboard.press('Delete');
    await page.locator('.card.chosen', { hasText: `${found - 1} ups` }).waitFor();
    await page.getByLabel('Effort').selectOption('thorough');
    await page.locator('.hand-stage').focus().catch(() => undefined);
    await page.evaluate(() => (document.activeElement as HTMLElement).blur());
    await page.keyboard.press('s');
    const told = page.locator('.hand-working');
    await told.waitFor({ timeout: 2_000 });
    expect(await status(page)).toContain('solving the rest');
    await told.filter({ hasText: `${found} ups so far` }).waitFor({ timeout: 60_000 });
    await picture(page, 'hand-solving');
    await page.keyboard.press('Escape');
    await told.waitFor({ state: 'hidden', timeout: 30_000 });
    await page.locator('.card.chosen', { hasText: `${found} ups` }).waitFor();
    await page.locator('.card.chosen .state-sound').waitFor();

    const solved = await placesOf(page);
    await expect.poll(() => keptByHand(page), { timeout: 20_000 }).toEqual([found]);
    await page.reload();
    await goTo(page, 'Layouts found');
    await page.locator('.hand-blanks use').first().waitFor();
    expect(await placesOf(page)).toEqual(solved);
    await page.keyboard.press('Control+z');
    await page.locator('.card.chosen', { hasText: `${found - 1} ups` }).waitFor();
    expect(await placesOf(page)).toHaveLength(found - 1);
    await page.keyboard.press('Control+y');
    await page.locator('.card.chosen', { hasText: `${found} ups` }).waitFor();
    expect(await placesOf(page)).toEqual(solved);
  });

  test('steps outlive the page on every layout that was changed by hand', async () => {
    const page = await trays(1366);
    const found = await page.locator('.hand-blanks [data-id]').count();
    const card = (ups: number) => page.locator('.cards .card', { hasText: `${ups} ups` });
    const chosen = (ups: number) => page.locator('.card.chosen', { hasText: `${ups} ups` });
    const takeOff = async (blanks: number) => {
      for (let left = found - 1; left >= found - blanks; left--) {
        await page.keyboard.press('n');
        await page.keyboard.press('Delete');
        await chosen(left).waitFor();
      }
    };
    const choose = async (ups: number) => {
      await card(ups).getByRole('button').first().click();
      await chosen(ups).waitFor();
      await expect.poll(() => page.locator('.hand-blanks [data-id]').count()).toBe(ups);
    };
    await takeOff(1);
    await choose(found);
    await takeOff(2);
    await expect.poll(() => keptByHand(page), { timeout: 20_000 }).toEqual([found - 2, found - 1]);
    await page.reload();
    await goTo(page, 'Layouts found');
    await expect.poll(() => page.locator('.hand-blanks [data-id]').count()).toBe(found - 2);
    await page.keyboard.press('Control+z');
    await chosen(found - 1).waitFor();
    await page.keyboard.press('Control+z');
    await chosen(found).waitFor();
    // The one changed before it has its step too.
    await choose(found - 1);
    await page.keyboard.press('Control+z');
    await chosen(found).waitFor();
    await page.keyboard.press('Control+y');
    await chosen(found - 1).waitFor();
  });

  test('tidying a tidy sheet says so; no list leaves the window', async () => {
    const page = await trays(1366);
    await page.keyboard.press('t');
    await page.locator('.hand-working').waitFor({ state: 'hidden', timeout: 30_000 });
    await page.keyboard.press('t');
    await page.getByText('It is tidy').waitFor({ timeout: 30_000 });
    await page.locator('summary', { hasText: 'Layers' }).click();
    await page.waitForTimeout(100);
    await picture(page, 'hand-layers');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(1366);
    expect(await page.locator('details[open] .hand-menu-list').evaluate((list) => list.getBoundingClientRect().right)).toBeLessThanOrEqual(1366);
  });
});
