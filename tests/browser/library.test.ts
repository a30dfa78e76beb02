import { join } from 'node:path';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { libraryAnswers } from '../../src/cli/serving/library-answers.ts';
import type { Library } from '../../src/shop/library/open-library.ts';
import { entryNamed } from '../../src/shop/library/records.ts';
import { scratchFolder } from '../shop/support.ts';
import { shopLibrary } from '../support/shop-library.ts';
import { browserIsHere, findings, picture, sample } from './browser.ts';
import { WITH_AXE, withDesk } from './with-desk.ts';

const folder = scratchFolder();

/** The library of the shop beside the desk: found by words, size and shape, looked at, put on the desk. */
describe.skipIf(!browserIsHere())('the library on the desk', { timeout: 150_000 }, () => {
  let library: Library;
  let page: Page;
  const desk = withDesk([sample('reverse-tuck-small.svg')], async () => {
    library = await shopLibrary(join(folder, 'shop.blankwright'));
    return libraryAnswers(library);
  });
  afterAll(() => library.close());

  const open = async (locale: string, more: BrowserContextOptions = {}) => {
    page = await desk.open({ ...WITH_AXE, locale, ...more });
    await page.locator('.ticket', { hasText: /ups|Nutzen/ }).waitFor();
    await page.keyboard.press('Alt+KeyS');
  };
  beforeEach(() => open('en-GB'));

  const dialog = () => page.getByRole('dialog', { name: 'Library' });
  const openLibrary = () => page.getByRole('button', { name: 'Library', exact: true }).click();
  const cards = () => dialog().locator('.library-cards .card');
  /** The one card that is left; the last answer stays in view until the next is there. */
  const pick = async (text: string) => {
    await page.waitForFunction((wanted) => [...document.querySelectorAll('.library-cards .card')].every((card) => card.textContent?.includes(wanted)), text);
    await cards().filter({ hasText: text }).getByRole('button').click();
  };
  const found = (text: string | RegExp) => dialog().getByRole('status').filter({ hasText: text }).waitFor();
  const search = async (text: string) => {
    const field = dialog().getByLabel('Words, a number or a size');
    await field.fill(text);
    await field.press('Enter');
  };

  test('by size, by words and by the shape that lies on the desk; pages; pictures', async () => {
    await openLibrary();
    await found('33 found');
    expect(await cards().count()).toBe(24);
    await dialog().locator('svg.library-thumb path').first().waitFor();
    await picture(page, 'library-list');
    expect(await findings(page)).toEqual([]);
    await dialog().getByRole('button', { name: 'Next page' }).click();
    await dialog().getByText('Page 2 of 2').waitFor();
    expect(await cards().count()).toBe(9);
    await search('62 × 31 × 118');
    await found('1 found');
    expect(await cards().innerText()).toMatch(/Die\s+4711[\s\S]*rack C4[\s\S]*size as recorded, 0\smm off/);
    await search('gift');
    await found('1 found');
    await dialog().getByLabel('Kind').selectOption('Die');
    await dialog().getByRole('button', { name: 'Like the drawing on the desk' }).click();
    await found('1 with an outline like the one on the desk, within 1 mm');
    expect(await cards().innerText()).toMatch(/4712[\s\S]*outline within 0\smm/);
    await picture(page, 'library-shape');
    await dialog().getByLabel('Within').fill('many');
    await dialog().getByText('A length is wanted, such as 12 or 0.5 in.').waitFor();
    await dialog().getByLabel('Within').fill('4in');
    await search('gift');
    await dialog().getByText(/within: .*50/i).waitFor();
    // The browser's own line for an answer of 400.
    desk.forgive('status of 400');
  });

  test('by keys alone: a record, what it was before, and onto the desk as its record says', async () => {
    await page.getByRole('button', { name: 'Library', exact: true }).focus();
    await page.keyboard.press('Enter');
    await found('33 found');
    await dialog().getByLabel('Words, a number or a size').focus();
    await page.keyboard.type('FH-101');
    await page.keyboard.press('Enter');
    await found('1 found');
    await cards().getByRole('button').focus();
    await page.keyboard.press('Enter');
    await dialog().getByText('Revision 2').waitFor();
    expect(await dialog().innerText()).toMatch(/Revision 2[\s\S]*a year: 240000 → 310000[\s\S]*Revision 1/);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('library-title');
    expect(await findings(page)).toEqual([]);
    await picture(page, 'library-entry');
    await page.keyboard.press('Escape');
    await dialog().waitFor({ state: 'hidden' });
    await openLibrary();
    await dialog().getByRole('button', { name: 'Back to the list' }).click();
    await search('FH-102');
    await pick('FH-102');
    await dialog().getByRole('button', { name: 'Put it on the desk' }).click();
    await page.locator('.ticket', { hasText: 'FH-102, 220 × 170 mm' }).waitFor();
    expect(await page.getByLabel('The drawing shows').inputValue()).toBe('inside');
    // What lay on the desk is a job of its own, still.
    await page.getByRole('button', { name: 'Jobs', exact: true }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'reverse-tuck-small', exact: true }).waitFor();
  });

  test('a batch: the table adds up to what is kept, a layout behind a figure, and onto the desk', async () => {
    await openLibrary();
    await dialog().getByLabel('Kind').selectOption('Batch');
    await search('');
    await found('1 found');
    await cards().getByRole('button').click();
    await dialog().getByText('each on its best sheet').waitFor();
    const kept = entryNamed(library, 'batch', 'new widths')!.content as { total: { boardM2: number; money: number } };
    const said = (await dialog().innerText()).replace(/[\u202f\u2009\u00a0]/g, ' ');
    expect(said).toContain(`${Math.round(kept.total.boardM2).toLocaleString('en').replace(',', ' ')} m²`);
    const rows = await dialog().locator('table').first().locator('tbody tr').allInnerTexts();
    expect(rows).toHaveLength(2);
    const saved = rows.map((row) => Number(row.split('\t').at(-1)!.replace(/\D/g, '')));
    expect(Math.abs(saved.reduce((a, b) => a + b, 0) - kept.total.money)).toBeLessThanOrEqual(1);
    await dialog().getByRole('button', { name: 'label-rounded' }).click();
    await dialog().getByRole('img', { name: /blanks on a sheet of 640 × 450 mm/ }).waitFor();
    await page.waitForTimeout(300);
    await picture(page, 'library-batch');
    expect(await findings(page)).toEqual([]);
    await dialog().getByRole('button', { name: 'Put this layout on the desk' }).click();
    await page.locator('.ticket', { hasText: '55 ups' }).locator('.state-sound').waitFor();
  });

  test('a job is kept in the library as a revision, a quote is shown with its table', async () => {
    await page.getByRole('textbox', { name: 'Name of the job' }).fill('mint tea, autumn');
    await openLibrary();
    await dialog().getByRole('button', { name: 'Keep this job in the library' }).click();
    await page.getByText('mint tea, autumn is kept in the library, revision 1.').waitFor();
    expect(entryNamed(library, 'job', 'mint tea, autumn')?.content).toMatchObject({ format: 'blankwright-job', name: 'mint tea, autumn' });
    await search('autumn');
    await pick('autumn');
    await dialog().getByRole('button', { name: 'Put it on the desk' }).click();
    await page.locator('.ticket', { hasText: 'reverse-tuck-small' }).waitFor();
    await openLibrary();
    await dialog().getByRole('button', { name: 'Back to the list' }).click();
    await search('Q-1');
    await pick('Q-1');
    await dialog().getByRole('columnheader', { name: 'quantity' }).waitFor();
    expect(await dialog().innerText()).toContain('148.06');
  });

  test('German: no English word is left', async () => {
    await page.close();
    await open('de-AT');
    await page.getByRole('button', { name: 'Bibliothek', exact: true }).click();
    const german = page.getByRole('dialog', { name: 'Bibliothek' });
    await german.getByText('gefunden').waitFor();
    const said = [await german.innerText()];
    await picture(page, 'library-german');
    await german.getByLabel('Art').selectOption('Reihenlauf');
    await german.getByRole('button', { name: 'Suchen' }).click();
    await german.getByText('1 gefunden').waitFor();
    await german.locator('.library-cards button').click();
    await german.getByText('Was es vorher war').waitFor();
    said.push(await german.innerText());
    const all = said.join('\n').replace(/Spice box \d+|Gift tray|Invented press|new widths|mint tea.*/g, '');
    expect(all).toMatch(/Schachtel[\s\S]*Stanzform/);
    expect(all.match(/.*\b(the|and|found|sheet|carton|die|revision|rack|year|search)\b.*/gi)?.filter((line) => !/\b(die|Die)\b/.test(line)) ?? []).toEqual([]);
  });

  test('in the dark and on a narrow screen: readable, nothing runs out', async () => {
    await page.close();
    await open('en-GB', { colorScheme: 'dark', viewport: { width: 390, height: 800 } });
    await openLibrary();
    await found(/\d+ found/);
    await picture(page, 'library-dark-narrow');
    expect(await findings(page)).toEqual([]);
    expect(await dialog().evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth)).toBeLessThanOrEqual(0);
    await search('new widths');
    await found('1 found');
    await cards().getByRole('button').click();
    await dialog().getByText('each on its best sheet').waitFor();
    expect(await dialog().evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth)).toBeLessThanOrEqual(0);
    expect(await findings(page)).toEqual([]);
  });

  test('without a library, and without a server, nothing of it is shown', async () => {
    page = await desk.open({}, [sample('reverse-tuck-small.svg')]);
    await page.locator('.ticket', { hasText: 'ups' }).waitFor();
    expect(await page.getByRole('button', { name: 'Library', exact: true }).count()).toBe(0);
    expect((await fetch(new URL('api/library', page.url()))).status).toBe(404);
  });
});
