import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { priceRun } from '../../src/pipeline/gang/price-run.ts';
import { gangVersions } from '../../src/pipeline/gang/versions.ts';
import { readVersionsJob } from '../../src/pipeline/gang/versions-job.ts';
import { readQuoteJob } from '../../src/pipeline/quote-job.ts';
import { englishLanguage } from '../../src/render/messages/english-language.ts';
import { runReport } from '../../src/render/run-report.ts';
import { browserIsHere, findings, goTo, picture, root, sample, searched } from './browser.ts';
import { WITH_AXE, withDesk } from './with-desk.ts';

const TEAS = [['mint', 12_000], ['sage', 9000], ['fennel', 1200]] as const;

/** Versions on the desk in money: what the command line says of the same run. */
describe.skipIf(!browserIsHere())('the money of versions', { timeout: 150_000 }, () => {
  const desk = withDesk([sample('reverse-tuck-small.svg')]);

  const versionsOf = async (page: Page) => {
    await page.locator('.ticket .state-sound').waitFor();
    await page.keyboard.press('Alt+KeyS');
    await searched(page);
    await page.keyboard.press('Alt+Digit4');
    await page.getByRole('button', { name: 'Versions', exact: true }).click();
    for (const [i, [name, quantity]] of TEAS.entries()) {
      await page.getByRole('button', { name: 'Add a version' }).click();
      const letter = 'ABC'[i]!;
      await page.getByLabel(`Version ${letter}`, { exact: true }).fill(name);
      await page.getByLabel(`Quantity of ${letter}`).fill(String(quantity));
    }
  };
  const plain = (text: string) => text.replaceAll(/\s/g, ' ');

  test('not shared out: says so and leads there; then the whole run as the engine prices it, its parts in view, readable by all', async () => {
    const page = await desk.open(WITH_AXE);
    await versionsOf(page);
    await goTo(page, 'Money');
    await page.getByLabel('Grammage').fill('300');
    await page.getByText('The stations are not shared out over the versions yet.').waitFor();
    await page.getByRole('button', { name: 'To the versions' }).click();
    await page.getByLabel('Forms allowed').fill('2');
    await page.getByRole('button', { name: /^Share out/ }).click();
    await page.locator('.plan-figures .state-sound').waitFor();
    await page.locator('.station').first().waitFor();
    const stations = await page.locator('.station').count();

    await goTo(page, 'Money');
    await page.getByLabel(/^Board price/).fill('900');
    await page.getByLabel('Fill what is empty with invented rates').check();
    const answer = page.locator('.run-money > .answer');
    await page.locator('.run-money > .answer', { hasText: 'price' }).waitFor();
    const { ids, quantities, forms } = gangVersions(readVersionsJob({ stations, versions: TEAS.map(([id, quantity]) => ({ id, quantity })), forms: 2 }, 'job'));
    const quoted = readQuoteJob({ ups: stations, sheet: '1020x720', grammage: 300, quantities, colours: 4, stages: ['die-cutting', 'gluing'], boardPricePerTonne: 900, rates: 'demo' }, 'job', () => undefined);
    const run = await priceRun({ ids, quantities, counts: forms.map(({ counts }) => counts) }, quoted);
    await expect.poll(async () => plain(await answer.innerText())).toBe(plain(runReport(run, englishLanguage).answer));
    const rows = page.locator('.run-money table').first().locator('tbody tr');
    expect(await rows.count()).toBe(TEAS.length + 1);
    await page.getByText('By stations:').waitFor();
    await picture(page, 'money-of-versions');
    expect(await findings(page)).toEqual([]);

    // The inside page of the run is handed over as well.
    await goTo(page, 'Hand over');
    await page.getByRole('button', { name: /quote-versions\.html/ }).waitFor();
    await goTo(page, 'Money');

    // The other quantities stay at hand, closed.
    await page.getByText('As if every station printed the same, by quantity').click();
    await page.getByText(/20 000 cartons|20.000 blanks|20.000 cartons/).first().waitFor();
  });
});

const DRAWINGS = [['reverse-tuck-small', 9000], ['sleeve', 4000]] as const;

/** Outlines on the desk in money: what the command line says of the same job. */
describe.skipIf(!browserIsHere())('the money of outlines', { timeout: 170_000 }, () => {
  const desk = withDesk(DRAWINGS.map(([name]) => sample(`${name}.svg`)));
  const money = (page: Page) => page.getByRole('region', { name: /^(The whole run: outlines|Die ganze Auflage: Umrisse)/ });
  const answerOf = (page: Page) => money(page).locator('> .answer');
  const plain = (text: string) => text.replaceAll(/\s+/g, ' ').trim();

  const addDrawings = async (options: BrowserContextOptions = {}) => {
    const page = await desk.open({ ...WITH_AXE, acceptDownloads: true, ...options });
    await page.locator('.ticket').waitFor();
    await page.keyboard.press('Alt+Digit4');
    await page.getByLabel(/^(Effort|Aufwand)$/).selectOption('quick');
    await page.getByRole('button', { name: /^(Outlines|Umrisse)$/ }).click();
    for (const [row, [name, quantity]] of DRAWINGS.entries()) {
      await page.getByRole('button', { name: new RegExp(`^(Add )?${name}\\.svg`) }).click();
      await page.locator('.gang-rows input.number').nth(row).fill(String(quantity));
    }
    await page.getByLabel(/^(Forms allowed|Erlaubte Formen)$/).fill('2');
    return page;
  };
  const seek = async (page: Page) => {
    await page.getByRole('button', { name: /^(Look for forms|Formen suchen)$/ }).click();
    await page.locator('.outline-plan .state-sound').waitFor({ timeout: 120_000 });
  };
  const toMoney = (page: Page) => page.keyboard.press('Alt+Digit6');

  /** The job as a file, given to the command. */
  const byCommand = (quote: object, language = 'en') => {
    const folder = mkdtempSync(join(tmpdir(), 'outlines-money-'));
    try {
      writeFileSync(join(folder, 'job.json'), JSON.stringify({ sheet: '1020x720', forms: 2, designs: DRAWINGS.map(([name, quantity]) => ({ file: sample(`${name}.svg`), quantity })), quote }));
      const { stdout } = spawnSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), 'gang', 'job.json', '--effort', 'quick', '--language', language, '--json', 'plan.json'], { cwd: folder, encoding: 'utf8' });
      return { text: plain(stdout), plan: JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8')) };
    } finally {
      rmSync(folder, { recursive: true });
    }
  };
  const TERMS = { grammage: 300, colours: 4, stages: ['die-cutting', 'gluing'], boardPricePerTonne: 900, rates: 'demo' };

  test('without forms it leads there; what is missing leads to its field; then every figure as the command gives it, until the job changes', async () => {
    const page = await addDrawings();
    await toMoney(page);
    await money(page).getByText('No forms have been looked for yet.').waitFor();
    await money(page).getByRole('button', { name: 'To the outlines' }).click();
    await seek(page);
    await toMoney(page);
    await money(page).getByRole('button', { name: 'Grammage' }).click();
    await page.keyboard.type('300');
    expect(await page.getByLabel('Grammage').inputValue()).toBe('300');
    await answerOf(page).filter({ hasText: 'cost open' }).waitFor();
    await money(page).getByRole('button', { name: 'die price' }).click();
    await page.keyboard.type('800');
    expect(await page.getByLabel(/^Cutting die/).inputValue()).toBe('800');
    await money(page).getByRole('button', { name: 'die price' }).waitFor({ state: 'detached' });
    await page.getByLabel(/^Board price/).fill('900');
    await page.getByLabel(/^Cutting die/).fill('');
    await page.getByLabel('Fill what is empty with invented rates').check();

    const { text, plan } = byCommand(TERMS);
    await answerOf(page).filter({ hasText: 'price' }).waitFor();
    await expect.poll(async () => text.includes(plain(await answerOf(page).innerText()))).toBe(true);
    const cells = async (table: number) => Promise.all((await money(page).locator('table').nth(table).locator('tbody tr').all()).map(async (row) => (await row.locator('td').allInnerTexts()).map(plain)));
    const figure = (value: number, decimals: number) => plain(value.toLocaleString('en-GB', { minimumFractionDigits: decimals, maximumFractionDigits: decimals }).replaceAll(',', value >= 1000 ? ' ' : ''));
    const designs = await cells(0);
    expect(designs.map((row) => row[0])).toEqual([...DRAWINGS.map(([name]) => name), 'all']);
    for (const [row, [name]] of DRAWINGS.entries()) {
      const { cost, costPerThousand, pricePerThousand, copies } = plan.money.designs[name];
      expect(designs[row]!.slice(2)).toEqual([figure(copies, 0), figure(cost, 2), figure(costPerThousand, 2), figure(pricePerThousand, 2)]);
    }
    const forms = await cells(1);
    expect(forms.map((row) => [row[3], row[4]])).toEqual(plan.money.forms.map(({ sheets, plates }: { sheets: number; plates: number }) => [figure(sheets, 0), figure(plates, 0)]));
    await money(page).getByText('By area:').waitFor();
    await money(page).getByText(/Invented for trying out: /).first().waitFor();
    await picture(page, 'money-of-outlines');
    expect(await findings(page)).toEqual([]);

    const coming = page.waitForEvent('download');
    await money(page).getByRole('button', { name: 'Save the run as a page' }).click();
    const saved = await coming;
    expect(saved.suggestedFilename()).toBe('quote-outlines.html');
    expect(readFileSync(await saved.path(), 'utf8')).toContain('What each design costs');

    // Another quantity: no figures of forms that are out of date.
    await page.keyboard.press('Alt+Digit4');
    await page.getByLabel('Quantity of drawing A').fill('9500');
    await toMoney(page);
    await money(page).getByText(/look for forms again/).waitFor();
    expect(await answerOf(page).count()).toBe(0);
  });

  test('in German and in inches the figures are the same; nothing for axe to find, no wider than the window', async () => {
    const page = await addDrawings({ locale: 'de-DE', colorScheme: 'dark' });
    await seek(page);
    await page.getByLabel('Längen').selectOption('in');
    await toMoney(page);
    await page.getByLabel('Flächengewicht').fill('300');
    await page.getByLabel(/^Kartonpreis/).fill('900');
    await page.getByLabel(/erfunden/).check();
    const { text } = byCommand(TERMS, 'de');
    await answerOf(page).filter({ hasText: 'Preis' }).waitFor();
    await expect.poll(async () => text.includes(plain(await answerOf(page).innerText()))).toBe(true);
    await picture(page, 'money-of-outlines-german');
    expect(await findings(page)).toEqual([]);
    for (const width of [1024, 390]) {
      await page.setViewportSize({ width, height: 800 });
      await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth), { message: `at ${width}` }).toBeLessThanOrEqual(width);
    }
  });
});
