import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { browserIsHere, chooseEffort, goTo, picture, root, sample } from './browser.ts';
import { withDesk } from './with-desk.ts';

const table = (name: string) => join(root, 'samples', 'tables', name);
const textOf = async (page: Page, selector: string) => (await page.locator(selector).innerText()).replaceAll(/[\u00a0\u202f]/g, ' ');

/** A price from one's own rates, on one's own sheets. */
describe.skipIf(!browserIsHere())('own records', { timeout: 170_000 }, () => {
  const desk = withDesk([sample('straight-tuck-small.svg')]);

  test('what is missing leads to its field; a table of rates gives a price without an invented figure, and is remembered', async () => {
    const page = await desk.open();
    await page.locator('.ticket .state-sound').waitFor({ timeout: 90_000 });
    await chooseEffort(page, 'quick');
    await goTo(page, 'Money');
    await page.getByLabel('Grammage').fill('300');
    await page.getByRole('button', { name: 'ink price' }).click();
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-rate'))).toBe('ink price');
    await page.getByLabel('Choose a record of rates').setInputFiles(table('rates.csv'));
    await page.getByLabel('Record of rates', { exact: true }).waitFor();
    await page.getByRole('button', { name: 'board price' }).click();
    await page.keyboard.type('900');
    await page.getByText('Open, because nobody gave them').waitFor({ state: 'detached' });
    expect(await textOf(page, 'main')).toMatch(/From the record Fernhollow’s printer, invented rates: press rate/);
    await picture(page, 'own-rates');
    await page.reload();
    await goTo(page, 'Money');
    await page.getByLabel('Record of rates', { exact: true }).waitFor();
    await page.getByRole('button', { name: /^Remove: Fernhollow/ }).click();
    await page.getByText('Open, because nobody gave them').waitFor();
  });

  test('a stock list in CSV leaves the drawing alone, stands instead of the invented one, and is removed; the best at the quantity is the least there', async () => {
    const page = await desk.open();
    await page.locator('.ticket .state-sound').waitFor({ timeout: 90_000 });
    await chooseEffort(page, 'quick');

    await goTo(page, 'Sheet');
    const board = page.getByRole('region', { name: 'Every sheet that could be bought' });
    await board.getByText('invented sheets').waitFor();
    await board.getByLabel('Choose a stock list').setInputFiles(table('stock.csv'));
    await board.getByText('your own lists').waitFor();
    expect(await textOf(page, '.ticket')).toContain('straight-tuck-small');
    await page.getByRole('button', { name: 'Compare them all' }).click();
    await board.locator('.card.chosen').waitFor({ timeout: 120_000 });
    expect(await board.getByLabel('Sort by').locator('option').allInnerTexts()).not.toContain('cost');
    const areas = (await board.locator('.card').allInnerTexts()).map((text) => Number(/([\d.]+)\s*m²/.exec(text)?.[1]));
    const best = Number(/([\d.]+)\s*m²/.exec(await board.locator('.card.chosen').innerText())?.[1]);
    expect(best).toBe(Math.min(...areas));
    await board.locator('figure svg.chart').waitFor();
    await picture(page, 'own-sheets');
    const [saved] = await Promise.all([page.waitForEvent('download'), board.getByRole('button', { name: 'Save as a page' }).click()]);
    const path = join(mkdtempSync(join(tmpdir(), 'blankwright-')), 'comparison.html');
    await saved.saveAs(path);
    const html = readFileSync(path, 'utf8');
    expect(html).toContain('<!doctype html>');
    expect(html).toContain('<svg');
    expect(html).not.toMatch(/src="http|href="http/);
    await board.getByRole('button', { name: /^Remove/ }).click();
    await board.getByText('invented sheets').waitFor();
  });

  test('what is no record is said, and nothing changes', async () => {
    const page = await desk.open();
    await page.locator('.ticket .state-sound').waitFor({ timeout: 90_000 });
    await goTo(page, 'Sheet');
    await page.getByLabel('Choose a stock list').setInputFiles({ name: 'prices.csv', mimeType: 'text/csv', buffer: Buffer.from('colour,taste\nred,sweet\n') });
    await page.getByText('prices.csv is no list of sheets').waitFor();
    await page.getByLabel('Choose a stock list').setInputFiles({ name: 'stock.csv', mimeType: 'text/csv', buffer: Buffer.from('kind,sheet,grain\nstock,1020xten,x\n') });
    await page.getByText(/stock\.csv.*line 2/).waitFor();
  });
});
