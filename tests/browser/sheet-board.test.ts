import { describe, expect, test } from 'vitest';
import { browserIsHere, compareSheets, findings, goTo, picture, sample } from './browser.ts';
import { WITH_AXE, withDesk } from './with-desk.ts';

/** Sales, with the customer on the phone: the answer first, in few words, to be read out and copied. */
describe.skipIf(!browserIsHere())('the board of sheets', { timeout: 150_000 }, () => {
  const desk = withDesk([sample('straight-tuck-small.svg')]);

  test('the sentence stands on top and is copied; price and quantity move it; sheets are sorted and picked by grain and by how they are bought', async () => {
    const page = await desk.open({ ...WITH_AXE, permissions: ['clipboard-read', 'clipboard-write'] });
    await page.locator('.ticket .state-sound').waitFor();
    const board = await compareSheets(page);
    const brief = board.locator('.verdict-brief');
    await brief.filter({ hasText: /^The .* at 20\s000 cartons|^The usual sheet/ }).waitFor({ timeout: 60_000 });
    // Whoever asked has it before the eyes, with no step of their own.
    const { y, height } = (await brief.boundingBox())!;
    expect([y >= 0, y + height <= 900]).toEqual([true, true]);
    const above = await Promise.all([brief, board.getByRole('slider').first()].map(async (part) => (await part.boundingBox())!.y));
    expect(above[0]!).toBeLessThan(above[1]!);

    await board.getByRole('slider', { name: 'Quantity' }).focus();
    await page.keyboard.press('End');
    await brief.filter({ hasText: /^The (larger|smaller|other) sheet saves [\d.]+\s% of the cost at 1\s000\s000 cartons; it wins from/ }).waitFor();
    const before = await brief.innerText();
    await picture(page, 'sheets-on-the-phone');
    await board.getByRole('button', { name: 'Copy the sentence' }).click();
    await page.getByText('The sentence is copied.').waitFor();
    const copied = await page.evaluate(() => navigator.clipboard.readText());
    expect(copied.replaceAll(/\s/g, ' ')).toBe(`${before} ${await board.locator('.answer').innerText()}`.replaceAll(/\s/g, ' '));
    expect(await findings(page)).toEqual([]);

    // Dearer board: the share that a sheet saves is another.
    await board.getByRole('slider', { name: /^Board price/ }).focus();
    await page.keyboard.press('End');
    await expect.poll(() => brief.innerText()).not.toBe(before);

    const cards = board.locator('.sheets > li');
    const upsOf = async () => (await cards.locator('.card-ups').allInnerTexts()).map((text) => Number.parseInt(text, 10));
    await board.getByLabel('Sort by').selectOption('ups');
    const ups = await upsOf();
    expect(ups).toEqual(ups.toSorted((a, b) => b - a));
    const all = await cards.count();
    await board.getByLabel('Bought as').selectOption('stock');
    const stock = await cards.count();
    expect(stock).toBeGreaterThan(0);
    expect(stock).toBeLessThanOrEqual(all);
    for (const text of await cards.allInnerTexts()) expect(text).toContain('stock');
    await board.getByLabel('Grain', { exact: true }).selectOption('x');
    expect(await cards.count()).toBeLessThan(stock);

    await page.getByLabel('Language').selectOption('de');
    await page.locator('.verdict-brief', { hasText: /^Der (größere|kleinere|andere) Bogen spart [\d,]+\s% der Kosten bei einer Auflage von 1\s000\s000; vorn ab/ }).waitFor();
  });

  test('a figure of the money that cannot be used holds up comparing: it is said, and leads there', async () => {
    const page = await desk.open();
    await page.locator('.ticket .state-sound').waitFor();
    await goTo(page, 'Money');
    await page.getByLabel('Quantities').fill('5k');
    await goTo(page, 'Sheet');
    const board = page.getByRole('region', { name: 'Every sheet that could be bought' });
    await board.getByText('A figure of the money cannot be used').waitFor();
    expect(await board.getByRole('button', { name: 'Compare them all' }).isDisabled()).toBe(true);
    await board.getByRole('button', { name: 'Money' }).click();
    await page.getByLabel('Quantities').fill('5000');
    await goTo(page, 'Sheet');
    await expect.poll(() => board.getByRole('button', { name: 'Compare them all' }).isEnabled()).toBe(true);
  });

  test('sheets are picked by what a press takes and by the list that offers them; where none is left, that is said', async () => {
    const page = await desk.open();
    await page.locator('.ticket .state-sound').waitFor();
    await goTo(page, 'Sheet');
    const take = async (name: string, list: object) => {
      await page.getByLabel('Choose a stock list').setInputFiles({ name: `${name}.json`, mimeType: 'application/json', buffer: Buffer.from(JSON.stringify({ name, ...list })) });
      await page.getByText(name).first().waitFor();
    };
    await take('Shelf', { sheets: [{ sheet: '1020x720', grain: 'x' }, { sheet: '740x520', grain: 'x' }] });
    await take('Mill', { sheets: [{ sheet: '1020x720', grain: 'y' }], reels: [{ width: 650, cutOffs: [900] }], madeToOrder: { least: '1300x900', greatest: '1400x1000', step: 100, grain: 'x' } });
    const board = await compareSheets(page);
    const cards = board.locator('.sheets > li');
    await cards.first().waitFor({ timeout: 90_000 });
    const shown = async () => (await cards.allInnerTexts()).map((text) => `${/(\d[\d ]*) × (\d[\d ]*) mm/.exec(text.replaceAll(/\s/g, ' '))!.slice(1).map((side) => side.replaceAll(' ', '')).join('x')} ${/Grain: (\w+)/.exec(text)?.[1] ?? 'open'}`).toSorted();
    const list = board.getByLabel('From the list');
    const press = board.getByLabel('On the press');
    const all = await shown();
    const ordered = all.filter((text) => /^1[34]/.test(text));
    const shelf = ['1020x720 along', '740x520 along'];
    const mill = ['1020x720 away', ...ordered, '900x650 along'];
    // The sheet on the desk, whose grain nobody gave, is the first of its size; the other grain is a sheet of its own.
    expect(all).toEqual([...shelf, ...mill].toSorted());

    await list.selectOption({ label: 'Shelf' });
    await expect.poll(shown).toEqual(shelf);
    await list.selectOption({ label: 'Mill' });
    await expect.poll(shown).toEqual(mill);
    // Press 1 takes up to 1060 × 760 mm, press 3 from 500 × 600 mm on.
    await list.selectOption({ label: 'all' });
    await press.selectOption({ label: 'Press 1, six colours and coater' });
    await expect.poll(shown).toEqual(all.filter((text) => !ordered.includes(text)));
    await press.selectOption({ label: 'Press 3, large, seven colours and coater' });
    await expect.poll(shown).toEqual(all.filter((text) => text !== '740x520 along'));
    await list.selectOption({ label: 'Shelf' });
    await expect.poll(shown).toEqual(['1020x720 along']);
    await board.getByLabel('Bought as').selectOption('reel');
    await board.getByText('No sheet is left by these filters.').waitFor();
    await expect.poll(() => cards.count()).toBe(0);
    await picture(page, 'sheets-none-left');
    await board.getByLabel('Bought as').selectOption({ label: 'all' });
    await cards.first().waitFor();
    await picture(page, 'sheets-of-a-list');
  });
});
