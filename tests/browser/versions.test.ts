import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { planVersions } from '../../src/estimate/gang/plan-versions.ts';
import { browserIsHere, findings, goTo, picture, sample, searched } from './browser.ts';
import { WITH_AXE, withDesk } from './with-desk.ts';

const TEAS = [['mint', 12000], ['sage', 9000], ['fennel', 5200], ['lemon balm', 3100], ['nettle', 800]] as const;

/** Several versions of one carton on the desk: shared out, changed by hand, kept, handed over. */
describe.skipIf(!browserIsHere())('versions', { timeout: 120_000 }, () => {
  const desk = withDesk([sample('reverse-tuck-small.svg')]);
  let page: Page;

  const open = async (options: BrowserContextOptions = {}) => {
    page = await desk.open({ ...WITH_AXE, ...options });
    await page.locator('.ticket .state-sound').waitFor();
    await page.keyboard.press('Alt+KeyS');
    await searched(page);
    await page.keyboard.press('Alt+Digit4');
    await page.getByRole('button', { name: /^(Versions|Sorten)$/ }).click();
  };
  /** As from a table: one paste into the first name. */
  const paste = async (lines: readonly string[]) => {
    await page.getByRole('button', { name: /^(Add a version|Sorte hinzufügen)$/ }).click();
    await page.getByLabel(/^(Version|Sorte) A$/).evaluate((field, text) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text/plain', text);
      field.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
    }, lines.join('\n'));
  };
  const pasteTeas = () => paste(TEAS.map(([name, quantity]) => `${name}\t${quantity}`));
  const share = async (forms: string) => {
    await page.getByLabel(/^(Forms allowed|Erlaubte Formen)$/).fill(forms);
    await page.getByRole('button', { name: /^(Share out|\d+ Nutzen verteilen)/ }).click();
    await page.locator('.plan-figures .state-sound').waitFor();
  };
  const pressings = async () => Number((await page.locator('.plan-figures .answer').innerText()).replaceAll(/\s/g, '').match(/^\d+/)![0]);
  const stationsOf = (letter: string) => page.getByRole('button', { name: new RegExp(`^Station \\d+: ${letter},`) });

  test('shared out exactly; one station changed by hand is weighed at once; steps go back; a reload keeps it all', async () => {
    await open();
    await pasteTeas();
    expect(await page.getByLabel('Quantity of E').inputValue()).toBe('800');
    await share('2');
    await page.locator('.station').first().waitFor();
    const stations = await page.locator('.station').count();
    const best = planVersions({ stations, quantities: TEAS.map(([, quantity]) => quantity), forms: 2 });
    expect(await pressings()).toBe(best.pressings);
    await page.getByText('No plan takes fewer.').waitFor();
    await stationsOf('A').first().waitFor();
    expect(await page.locator('.versions-table tbody tr').count()).toBe(TEAS.length);
    await picture(page, 'versions-shared-out');

    await page.getByRole('button', { name: 'Next form' }).click();
    await page.getByRole('heading', { name: /Form 2 of 2/ }).waitFor();
    await page.getByRole('button', { name: 'Form before' }).click();
    // A mint station becomes nettle: mint then takes more pressings.
    const mint = await stationsOf('A').count();
    await page.getByRole('radio', { name: 'nettle' }).check();
    await stationsOf('A').first().click();
    await page.locator('.plan-figures .answer', { hasText: String(best.pressings).replace(/\B(?=(\d{3})+$)/g, ' ') }).waitFor({ state: 'detached' });
    expect(await stationsOf('A').count()).toBe(mint - 1);
    const worse = await pressings();
    expect(worse).toBeGreaterThan(best.pressings);
    await page.getByText(/It is proved that no plan takes fewer than/).waitFor();

    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('No plan takes fewer.').waitFor();
    expect(await pressings()).toBe(best.pressings);
    await page.keyboard.press('Control+y');
    await page.getByText(/It is proved/).waitFor();
    expect(await pressings()).toBe(worse);

    await page.getByText('kept in this browser').waitFor();
    await page.waitForTimeout(500);
    await page.reload();
    await goTo(page, 'Layouts found');
    await page.getByRole('button', { name: 'Versions', exact: true }).click();
    await page.locator('.plan-figures .state-sound').waitFor();
    expect(await pressings()).toBe(worse);
    await stationsOf('A').first().waitFor();
    expect(await stationsOf('A').count()).toBe(mint - 1);
    // Another quantity: the figures follow, the bound no longer holds.
    await page.getByLabel('Quantity of A').fill('13000');
    await page.locator('.plan-figures .state-out-of-date').waitFor();
  });

  test('by keys alone: begun by hand, a version that no station prints is named', async () => {
    await open();
    await page.getByRole('button', { name: 'Add a version' }).press('Enter');
    await page.getByLabel('Version A', { exact: true }).fill('mint');
    await page.getByLabel('Quantity of A').fill('1000');
    await page.getByRole('button', { name: 'Add a version' }).press('Enter');
    await page.getByLabel('Version B', { exact: true }).fill('sage');
    await page.getByLabel('Quantity of B').fill('500');
    await page.getByRole('button', { name: 'Begin by hand' }).press('Enter');
    await page.getByRole('button', { name: 'Station 1: nothing' }).focus();
    await page.keyboard.press('a');
    await page.getByText('No station prints sage.').waitFor();
    await page.locator('.plan-figures .state-faulty').waitFor();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('b');
    await page.locator('.plan-figures .state-sound').waitFor();
    // One station each: 1 000 pressings, sage over by as many as it is short of mint.
    expect(await pressings()).toBe(1000);
    expect(await page.getByRole('row', { name: /sage/ }).innerText()).toMatch(/500\s+1\s000\s+500 \(100\.0\s%\)/);
    expect(await page.locator('.station:focus').getAttribute('aria-label')).toMatch(/: B, sage$/);
    await page.keyboard.press('Delete');
    await page.getByText('No station prints sage.').waitFor();
  });

  test('handed over: a picture, a ticket and the stations of each form, and the plan as the command line reads it', async () => {
    await open({ acceptDownloads: true });
    await pasteTeas();
    await share('2');
    await page.keyboard.press('Alt+Digit7');
    const save = async (name: string) => {
      const coming = page.waitForEvent('download');
      await page.getByRole('button', { name: `Save ${name}` }).click();
      return readFileSync(await (await coming).path(), 'utf8');
    };
    const plan = JSON.parse(await save('versions.json')) as { forms: { counts: Record<string, number>; stations: string[]; pressings: number }[]; optimal: boolean; overs: Record<string, number> };
    expect(plan.optimal).toBe(true);
    for (const { counts, stations } of plan.forms) for (const [name, count] of Object.entries(counts)) expect(stations.filter((printed) => printed === name).length).toBe(count);
    for (const [name, quantity] of TEAS) expect(plan.forms.reduce((made, form) => made + (form.counts[name] ?? 0) * form.pressings, 0) - quantity).toBe(plan.overs[name]);
    const rows = (await save('form-2-placements.csv')).trim().split(/\r?\n/).slice(1);
    expect(rows.map((row) => row.split(',').at(-1))).toEqual(plan.forms[1]!.stations);
    expect(await save('form-1-crew-ticket.html')).toContain('mint');
    expect(await save('versions.html')).toContain('nothing takes less with 2 forms allowed');
    const picture1 = await save('form-1.svg');
    const { files } = JSON.parse(await save('manifest.json')) as { files: { name: string; sha256: string }[] };
    expect(files.map(({ name }) => name)).toEqual(expect.arrayContaining(['versions.json', 'versions.html', 'form-1-placements.csv', 'form-2.svg', 'form-2-crew-ticket.html', 'sheet.pdf', 'report.html']));
    expect(files.find(({ name }) => name === 'form-1.svg')?.sha256).toBe(createHash('sha256').update(picture1).digest('hex'));
    writeFileSync('out/desk/form-1.svg', picture1);
    await picture(page, 'versions-handover');
  });

  test('too many versions for the forms: said in the desk’s own words', async () => {
    await open();
    await paste(Array.from({ length: 40 }, (_, i) => `tea ${i};${100 + i}`));
    await page.getByRole('button', { name: /^Share out/ }).click();
    await page.getByText(/40 versions are more than 1 forms of \d+ stations hold/).waitFor();
  });

  test.each([['light', 'en-GB'], ['dark', 'de-AT']] as const)('nothing for axe to find in %s, %s; no wider than the window', async (colorScheme, locale) => {
    await open({ colorScheme, locale });
    await pasteTeas();
    await share('2');
    await picture(page, `versions-${locale}-${colorScheme}`);
    expect(await findings(page)).toEqual([]);
    for (const width of [1024, 390]) {
      await page.setViewportSize({ width, height: 800 });
      await page.waitForTimeout(200);
      await page.screenshot({ path: `out/desk/versions-${locale}-${width}.png`, fullPage: true });
      expect(await page.evaluate(() => document.documentElement.scrollWidth), `at ${width}`).toBeLessThanOrEqual(width);
    }
    if (locale === 'de-AT') expect((await page.locator('main').innerText()).match(/.*\b(the|and|which|sheet|station|version|press)\b.*/gi)).toBeNull();
  });
});
