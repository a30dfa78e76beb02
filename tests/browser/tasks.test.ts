import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, describe, expect, test } from 'vitest';
import { judge } from '../../src/layout/judge.ts';
import { readLayoutFile } from '../../src/layout/layout-file.ts';
import { browserIsHere, chooseEffort, compareSheets, goTo, picture, root, sample } from './browser.ts';
import { withDesk } from './with-desk.ts';

/** What each of the three people does within three minutes, without reading anything. */
describe.skipIf(!browserIsHere())('the desk in a browser', { timeout: 120_000 }, () => {
  const desk = withDesk();
  let page: Page;
  const folder = mkdtempSync(join(tmpdir(), 'desk-tasks-'));

  afterAll(() => rmSync(folder, { recursive: true }));

  const open = async (...files: string[]) => {
    page = await desk.open({ acceptDownloads: true }, files);
  };
  const searched = () => page.locator('main .search-line', { hasText: 'found in' }).waitFor({ timeout: 60_000 });

  test('the artist: a drawing in two colours, its roles said by one click, a judged layout, files for the die maker, a near miss', async () => {
    await open(folder);
    await chooseEffort(page, 'quick');
    await goTo(page, 'Drawing');
    await page.getByLabel('Choose a drawing').setInputFiles({ name: 'two-colours.svg', mimeType: 'image/svg+xml', buffer: Buffer.from(TWO_COLOURS) });
    await page.getByText('nothing says what they are').waitFor();
    await picture(page, 'artist-1-drawing');
    await page.getByRole('group', { name: 'What are these lines?' }).getByRole('button', { name: 'Creases' }).click();
    await page.getByText('nothing says what they are').waitFor({ state: 'detached' });
    expect(await page.locator('main dl.facts').first().innerText()).toContain('Creases');
    // Taken back and said anew, of a kind that was read already.
    await page.getByText('Every layer and colour').click();
    await page.getByLabel('#0044cc').selectOption('Perforating');
    await expect.poll(() => page.locator('main dl.facts').first().innerText()).toContain('Perforations');
    await page.getByLabel('#0044cc').selectOption('Creasing');
    await expect.poll(() => page.locator('main dl.facts').first().innerText()).toContain('Creases');
    await picture(page, 'artist-1b-lines');

    await goTo(page, 'Sheet');
    await page.getByLabel('Sheet size').fill('326x240');
    await goTo(page, 'Layouts found');
    await searched();
    await picture(page, 'artist-2-layouts');
    const ups = Number(/(\d+) ups/.exec(await page.locator('.card.chosen').innerText())?.[1]);
    await goTo(page, 'Hand over');
    await page.getByRole('button', { name: /Save all files into/ }).click();
    await page.getByText(/files saved/).waitFor();
    await picture(page, 'artist-3-handover');
    const written = readdirSync(folder);
    expect(written).toEqual(expect.arrayContaining(['layout.json', 'sheet.svg', 'sheet.pdf', 'die-printed-side.dxf', 'placements.csv', 'report.html', 'manifest.json']));
    const layout = readLayoutFile(JSON.parse(readFileSync(join(folder, 'layout.json'), 'utf8')), 'layout.json');
    expect(layout.placements.length).toBe(ups);
    expect(judge(layout).state).toBe('sound');
    expect(readFileSync(join(folder, 'sheet.pdf')).subarray(0, 5).toString()).toBe('%PDF-');

    await goTo(page, 'Why this many');
    await page.getByRole('button', { name: 'Look for small changes' }).click();
    await page.getByRole('button', { name: /^Show it/ }).first().click({ timeout: 60_000 });
    await page.locator('.card.chosen .state-sound').waitFor();
    const more = Number(/(\d+) ups/.exec(await page.locator('.card.chosen').innerText())?.[1]);
    expect(more).toBeGreaterThan(ups);
    await picture(page, 'near-miss');
  });

  test('the estimator: a style, three dimensions, quantities and typed rates give the figures of the command line', async () => {
    await open();
    await chooseEffort(page, 'quick');
    await goTo(page, 'Drawing');
    await page.getByLabel('Style').selectOption('straight-tuck');
    for (const [name, value] of [['length', '60'], ['width', '30'], ['depth', '110']] as const) await page.getByLabel(name, { exact: true }).fill(value);
    await page.locator('.ticket', { hasText: 'straight-tuck-60x30x110' }).waitFor();
    await goTo(page, 'Sheet');
    await page.getByLabel('Board', { exact: true }).selectOption('folding-300');
    await goTo(page, 'Layouts found');
    await searched();
    const ups = Number(/(\d+) ups/.exec(await page.locator('.card.chosen').innerText())?.[1]);
    await goTo(page, 'Money');
    await page.getByRole('textbox', { name: 'Quantities' }).fill('5000, 20000');
    await page.getByLabel('Press rate').fill('140');
    await page.getByLabel('Press speed').fill('9000');
    await page.getByRole('row', { name: /20 000/ }).waitFor();
    expect(await page.locator('main').innerText()).toMatch(/Open, because nobody gave them[\s\S]*die-cutter/);
    await page.getByLabel('Fill what is empty with invented rates').check();
    await page.getByText('Invented for trying out').first().waitFor();
    await page.getByText('Open, because nobody gave them').waitFor({ state: 'detached' });
    await picture(page, 'estimator-money');

    // The same job by the command line.
    const board = JSON.parse(readFileSync(join(root, 'samples', 'boards', 'folding-300.json'), 'utf8'));
    const job = { ups, sheet: '1020x720', board, quantities: [5000, 20000], colours: 4, varnishUnits: 0, stages: ['die-cutting', 'gluing'], rates: 'demo' };
    const quoted = await page.evaluate(() => [...document.querySelectorAll('main tbody tr')].map((row) => row.querySelectorAll('td')[0]?.textContent));
    expect(quoted).toEqual((await sheetsByCommand(folder, job)).map((sheets) => String(sheets).replace(/\B(?=(\d{3})+$)/g, '\u00a0')));
  });

  test('sales: the same carton on a larger sheet, side by side with the first', async () => {
    await open(sample('straight-tuck-small.svg'));
    await chooseEffort(page, 'quick');
    await goTo(page, 'Sheet');
    await page.getByLabel('Sheet size').fill('740x520');
    await goTo(page, 'Layouts found');
    await searched();
    await goTo(page, 'Sheet');
    await page.getByLabel('Sheet size').fill('1020x720');
    await goTo(page, 'Layouts found');
    await page.locator('.card.chosen', { hasText: '1020 × 720' }).waitFor();
    await searched();
    const old = page.locator('.card', { hasText: '740 × 520' }).first();
    expect(await old.innerText()).toContain('out of date');
    await old.getByRole('button', { name: 'Compare' }).click();
    await page.getByRole('region', { name: 'Side by side' }).getByText(/ups fewer/).waitFor();
    await picture(page, 'sales-side-by-side');
    await goTo(page, 'Why this many');
    await page.getByText('Where the board goes').waitFor();
    await picture(page, 'sales-why');
  });

  test('sales: every sheet that could be bought; the quantity moves the winner, and the winner comes onto the desk', async () => {
    await open(sample('straight-tuck-small.svg'));
    const board = await compareSheets(page);
    await board.locator('.card.chosen').waitFor({ timeout: 60_000 });
    const winnerAfter = async (key: string, sentence: RegExp) => {
      await board.getByRole('slider', { name: 'Quantity' }).focus();
      await page.keyboard.press(key);
      await board.locator('.answer', { hasText: sentence }).waitFor();
      return board.locator('.card.chosen').innerText();
    };
    const few = await winnerAfter('Home', /at 500 cartons/);
    const many = await winnerAfter('End', /at 1\s000\s000 cartons/);
    await picture(page, 'sales-sheets');
    expect(many).not.toBe(few);
    const take = board.getByRole('button', { name: 'Take this sheet' }).first();
    const size = (await take.getAttribute('aria-label'))!.replace(/.*: |\smm/g, '').replaceAll('\u00a0', ' ');
    await take.click();
    expect(await page.getByLabel('Sheet size').inputValue()).toBe(size);
  });

  test('by hand: a blank moved too near is faulty and not handed over; back, locked, the rest solved anew', async () => {
    await open(sample('label-oval.svg'));
    await chooseEffort(page, 'quick');
    await goTo(page, 'Sheet');
    await page.getByLabel('Sheet size').fill('360x260');
    await goTo(page, 'Layouts found');
    await page.locator('.card.chosen', { hasText: '360 × 260' }).waitFor();
    await searched();
    const ups = Number(/(\d+) ups/.exec(await page.locator('.card.chosen').innerText())?.[1]);
    const hand = page.getByRole('region', { name: 'The sheet under the hand' });
    await hand.locator('.hand-blanks [tabindex="0"]').focus();
    for (const key of ['n', 'ArrowRight', 'ArrowRight', 'ArrowUp']) await page.keyboard.press(key);
    await page.locator('.card.chosen .state-faulty').waitFor();
    expect(await page.locator('.card.chosen').innerText()).toContain('by hand');
    await picture(page, 'hand-faulty');
    await goTo(page, 'Hand over');
    await page.getByText('The layout is faulty, so nothing is handed over').waitFor();
    expect(await page.getByRole('button', { name: /^Save/ }).count()).toBe(0);

    await page.waitForTimeout(400);
    await page.reload();
    await goTo(page, 'Layouts found');
    await page.locator('.card.chosen .state-faulty').waitFor();
    await hand.getByText('faulty', { exact: true }).waitFor();
    await hand.locator('.hand-blanks [tabindex="0"]').focus();
    for (const key of ['n', 'ArrowLeft', 'ArrowLeft', 'ArrowDown']) await page.keyboard.press(key);
    await page.locator('.card.chosen .state-sound').waitFor();
    // The page's own Undo goes through the steps of the hand, after a look at another panel too.
    await goTo(page, 'Money');
    await goTo(page, 'Layouts found');
    await page.locator('.head-tools').getByRole('button', { name: 'Undo' }).click();
    await page.locator('.card.chosen .state-faulty').waitFor();
    await page.locator('.head-tools').getByRole('button', { name: 'Redo' }).click();
    await page.locator('.card.chosen .state-sound').waitFor();
    await hand.locator('.hand-blanks .is-selected').focus();
    await page.keyboard.press('l');
    await page.keyboard.press('n');
    await page.keyboard.press('Delete');
    await page.locator('.card.chosen', { hasText: `${ups - 1} ups` }).waitFor();
    await hand.getByRole('button', { name: 'Solve the rest' }).click();
    await page.locator('.card.chosen', { hasText: `${ups} ups` }).waitFor({ timeout: 30_000 });
    await page.locator('.card.chosen .state-sound').waitFor();
    await hand.getByRole('button', { name: 'Tidy this' }).click();
    await page.locator('.card.chosen .state-sound').waitFor();
    await picture(page, 'hand-solved');
  });

  test('the layout is the one of the command line, to the byte', async () => {
    const drawing = sample('label-oval.svg');
    await open(drawing);
    await chooseEffort(page, 'quick');
    await goTo(page, 'Sheet');
    await page.getByLabel('Sheet size').fill('360x260');
    await goTo(page, 'Layouts found');
    await searched();
    await goTo(page, 'Hand over');
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save layout.json' }).click()]);
    const here = readFileSync(await download.path(), 'utf8');
    const there = execFileSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), 'nest', drawing, '--sheet', '360x260', '--effort', 'quick', '--json', '-'], { encoding: 'utf8' });
    expect(here).toBe(there);
  });
});

const TWO_COLOURS = `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="90mm" viewBox="0 0 120 90" fill="none">
<path d="M10 10H110V80H10Z" stroke="#111111" stroke-width="0.3"/>
<path d="M40 10V80M80 10V80" stroke="#0044cc" stroke-width="0.3"/></svg>`;

async function sheetsByCommand(folder: string, job: object): Promise<number[]> {
  const { writeFileSync } = await import('node:fs');
  const path = join(folder, 'job.json');
  writeFileSync(path, JSON.stringify(job));
  const output = execFileSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), 'quote', path, '--json', '-'], { encoding: 'utf8' });
  return (JSON.parse(output) as { quantities: { sheets: number }[] }).quantities.map(({ sheets }) => sheets);
}
