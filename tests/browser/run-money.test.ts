import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { priceRun } from '../../src/pipeline/gang/price-run.ts';
import { gangVersions } from '../../src/pipeline/gang/versions.ts';
import { readVersionsJob } from '../../src/pipeline/gang/versions-job.ts';
import { readQuoteJob } from '../../src/pipeline/quote-job.ts';
import { englishLanguage } from '../../src/render/messages/english-language.ts';
import { runReport } from '../../src/render/run-report.ts';
import { browserIsHere, findings, goTo, picture, sample, searched } from './browser.ts';
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
