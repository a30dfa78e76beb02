import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { browserIsHere, chooseEffort, goTo, picture, sample, searched } from './browser.ts';
import { withDesk } from './with-desk.ts';

/** What is being handed over is not exchanged under the hand: a better layout is told, and shown when the person wants it. */
describe.skipIf(!browserIsHere())('a better layout was found', { timeout: 170_000 }, () => {
  const desk = withDesk();

  /** A search that came to its end on this sheet. */
  const laidOut = async (drawing: string, size: string): Promise<Page> => {
    const page = await desk.open();
    await chooseEffort(page, 'quick');
    await goTo(page, 'Sheet');
    await page.getByLabel('Sheet size').fill(size);
    await goTo(page, 'Drawing');
    await page.getByLabel('Choose a drawing').setInputFiles(sample(drawing));
    await searched(page);
    await goTo(page, 'Layouts found');
    await page.locator('.card.chosen .state-sound').waitFor();
    return page;
  };
  const upsChosen = async (page: Page) => Number.parseInt(await page.locator('.card.chosen .card-ups').innerText(), 10);
  const handedOver = (page: Page, ups: number) => page.getByText(`The layout with ${ups} ups`).waitFor();
  const better = (page: Page) => page.locator('.better');

  test('beside one made by hand with fewer ups: one click shows it, and a step back leads to the other again', async () => {
    const page = await laidOut('tray.svg', '1020x720');
    const found = await upsChosen(page);
    await goTo(page, 'Hand over');
    await handedOver(page, found);
    expect(await better(page).count()).toBe(0);
    await goTo(page, 'Layouts found');
    await expect.poll(() => page.locator('.hand-blanks [data-id]').count()).toBe(found);
    await page.keyboard.press('n');
    await page.keyboard.press('Delete');
    await page.locator('.card.chosen', { hasText: `${found - 1} ups` }).locator('.state-sound').waitFor();
    await goTo(page, 'Hand over');
    await handedOver(page, found - 1);
    await better(page).filter({ hasText: `A better layout was found, with ${found} ups.` }).waitFor();
    await picture(page, 'better-found');
    await better(page).getByRole('button').click();
    await handedOver(page, found);
    await better(page).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo' }).click();
    await handedOver(page, found - 1);
    await better(page).waitFor();
  });

  test('while a search goes on: the files stay the ones that stand there until it is asked for', async () => {
    // A quick search leaves room for one more here.
    const page = await laidOut('hanging-card.svg', '900x640');
    const first = await upsChosen(page);
    await page.getByLabel('Effort').selectOption('normal');
    await goTo(page, 'Hand over');
    await handedOver(page, first);
    const files = page.locator('ul.files li');
    await files.first().waitFor({ timeout: 60_000 });
    const names = await files.allInnerTexts();
    const button = await page.locator('ul.files button').first().elementHandle();
    await page.keyboard.press('Alt+KeyS');
    await better(page).filter({ hasText: `A better layout was found, with ${first + 1} ups.` }).waitFor({ timeout: 120_000 });
    await handedOver(page, first);
    expect(await files.allInnerTexts()).toEqual(names);
    expect(await button!.evaluate((one) => one.isConnected && !(one as HTMLButtonElement).disabled)).toBe(true);
    await better(page).getByRole('button').click();
    await handedOver(page, first + 1);
    await better(page).waitFor({ state: 'detached' });
    // Where the search is ended, what was asked for stays.
    await page.keyboard.press('Alt+KeyS');
    await searched(page);
    await handedOver(page, first + 1);
  });
});
