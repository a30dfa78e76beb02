import type { Page } from 'playwright-core';
import { describe, test } from 'vitest';
import { browserIsHere, chooseEffort, goTo, sample, searched } from './browser.ts';
import { expectLikeGolden, GOLDEN_PAGE, hasGoldenFont } from './golden.ts';
import { WITH_AXE, withDesk } from './with-desk.ts';

/** A few views of the desk against pictures that somebody has looked at. */
describe.skipIf(!browserIsHere())('kept pictures', { timeout: 120_000 }, () => {
  const desk = withDesk();
  let page: Page;

  const open = async (colorScheme: 'light' | 'dark', skip: () => void) => {
    page = await desk.open({ ...GOLDEN_PAGE, ...WITH_AXE, colorScheme });
    if (!(await hasGoldenFont(page))) skip();
    // A search that goes on to its end finds the same on every machine.
    await chooseEffort(page, 'quick');
    await goTo(page, 'Drawing');
    await page.getByLabel('Choose a drawing').setInputFiles(sample('reverse-tuck-small.svg'));
    await searched(page);
  };

  test('the drawing as it was read, in the dark', async ({ skip }) => {
    await open('dark', skip);
    await goTo(page, 'Drawing');
    await page.locator('svg.picture').waitFor();
    await expectLikeGolden(page, 'drawing-dark');
  });

  test('layouts found, in the light: the sheet under the hand', async ({ skip }) => {
    await open('light', skip);
    await goTo(page, 'Layouts found');
    await page.getByRole('button', { name: 'Versions', exact: true }).waitFor();
    // The judge has spoken under the hand as well.
    await page.locator('.hand-host').getByText('sound', { exact: true }).waitFor();
    await expectLikeGolden(page, 'layouts-light');
  });

  test('two versions on one form', async ({ skip }) => {
    await open('light', skip);
    await goTo(page, 'Layouts found');
    await page.getByRole('button', { name: 'Versions', exact: true }).click();
    for (const [letter, quantity] of [['A', '9000'], ['B', '3000']]) {
      await page.getByRole('button', { name: 'Add a version' }).click();
      await page.getByLabel(`Quantity of ${letter}`).fill(quantity!);
    }
    await page.getByRole('button', { name: /^Share out/ }).click();
    await page.locator('.plan-figures .state-sound').waitFor();
    await expectLikeGolden(page, 'versions-light');
  });

  test('a layout on paper', async ({ skip }) => {
    await open('light', skip);
    await goTo(page, 'Layouts found');
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: 800, height: 900 });
    await page.locator('.sheet-on-paper svg.picture').waitFor();
    await expectLikeGolden(page, 'layouts-paper');
  });

  test('where the board goes', async ({ skip }) => {
    await open('light', skip);
    await goTo(page, 'Why this many');
    await page.locator('svg.picture').waitFor();
    await expectLikeGolden(page, 'why-light');
  });
});
