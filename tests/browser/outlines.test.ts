import { readFileSync } from 'node:fs';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { judge } from '../../src/layout/judge.ts';
import { readLayoutFile } from '../../src/layout/layout-file.ts';
import { browserIsHere, findings, goTo, picture, sample } from './browser.ts';
import { WITH_AXE, withDesk } from './with-desk.ts';

/** Several drawings ganged on the forms of one sheet, on the desk. */
describe.skipIf(!browserIsHere())('several outlines', { timeout: 150_000 }, () => {
  const desk = withDesk([sample('reverse-tuck-small.svg'), sample('sleeve.svg')]);
  let page: Page;

  const open = async (options: BrowserContextOptions = {}) => {
    page = await desk.open({ ...WITH_AXE, acceptDownloads: true, ...options });
    await page.locator('.ticket').waitFor();
    await page.keyboard.press('Alt+Digit4');
    await page.getByLabel(/^(Effort|Aufwand)$/).selectOption('quick');
    await page.getByRole('button', { name: /^(Outlines|Umrisse)$/ }).click();
  };
  const add = async () => {
    await page.getByRole('button', { name: /^(Add )?reverse-tuck-small.svg/ }).click();
    await page.getByRole('button', { name: /^(Add )?sleeve.svg/ }).click();
    await page.locator('.gang-rows input.number').nth(0).fill('9000');
    await page.locator('.gang-rows input.number').nth(1).fill('4000');
  };
  const seek = async (forms: string) => {
    await page.getByLabel(/^(Forms allowed|Erlaubte Formen)$/).fill(forms);
    await page.getByRole('button', { name: /^(Look for forms|Formen suchen)$/ }).click();
    await page.locator('.outline-plan .state-sound').waitFor({ timeout: 120_000 });
  };

  test('drawings of another coating, or with more inks than the press has units, stand on forms of their own, and it is said why; overs of one drawing keep its limit', async () => {
    await open();
    await add();
    await page.getByText('What may share a form').click();
    await page.getByLabel('Coating').nth(0).fill('gloss');
    await page.getByLabel('Coating').nth(1).fill('matt');
    await page.getByText('Overs one by one').click();
    await page.getByLabel('Overs of sleeve at least').fill('500');
    await page.getByLabel(/^Forms allowed$/).fill('1');
    await page.getByRole('button', { name: 'Look for forms' }).click();
    await page.getByText(/2 groups that may not share/).waitFor();
    await seek('2');
    await page.getByText('reverse-tuck-small and sleeve do not share: coating gloss and matt.').waitFor();
    expect(await page.locator('.outline-forms .card').count()).toBe(2);
    const over = await page.getByRole('row', { name: /sleeve/ }).last().locator('td').nth(2).innerText();
    expect(Number(over.replaceAll(/\s/g, '').match(/^\d+/)![0])).toBeGreaterThanOrEqual(500);
    await picture(page, 'outlines-apart');
    expect(await findings(page)).toEqual([]);
  });

  test('two drawings on one form: counts and pressings make the quantities; kept, put on the desk, saved as a layout file', async () => {
    await open();
    await add();
    await seek('1');
    await picture(page, 'outlines');
    const total = Number((await page.locator('.outline-plan .answer').innerText()).replaceAll(/\s/g, '').match(/^\d+/)![0]);
    const cards = await page.locator('.outline-forms .card').count();
    expect(cards).toBe(1);
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: /Save as a layout file/ }).click();
    const text = readFileSync(await (await coming).path(), 'utf8');
    const layout = readLayoutFile(JSON.parse(text), 'form-1.json');
    expect(judge(layout).state).toBe('sound');
    const counts = ['reverse-tuck-small', 'sleeve'].map((name) => layout.placements.filter(({ design }) => design === name).length);
    const needed = Math.max(Math.ceil(9000 / counts[0]!), Math.ceil(4000 / counts[1]!));
    expect(total).toBe(needed);
    for (const [row, name] of ['reverse-tuck-small', 'sleeve'].entries()) expect(await page.getByRole('row', { name: new RegExp(`${name}`) }).innerText()).toMatch(new RegExp(`\\t${counts[row]}$`));

    await page.getByText('kept in this browser').waitFor();
    await page.waitForTimeout(500);
    await page.reload();
    await goTo(page, 'Layouts found');
    await page.getByRole('button', { name: 'Outlines', exact: true }).click();
    await page.locator('.outline-plan .state-sound').waitFor();
    await page.getByRole('button', { name: /Put it on the desk/ }).click();
    await page.locator('.hand-host svg').first().waitFor();
    await page.locator('.card.chosen .state-sound').waitFor();
    expect(await page.locator('.card.chosen .card-ups').innerText()).toBe(`${counts[0]! + counts[1]!} ups`);
    await page.waitForTimeout(500);
    await picture(page, 'outlines-on-the-desk');
    // Another quantity: the forms stay, marked.
    await page.getByRole('button', { name: 'Outlines', exact: true }).click();
    await page.getByLabel('Quantity of drawing A').fill('9500');
    await page.locator('.outline-plan .state-out-of-date').waitFor();
  });

  test('overs that cannot be kept on one form are said with the remedy', async () => {
    await open();
    await add();
    await page.getByLabel('Quantity of drawing B').fill('7');
    await page.getByLabel('Overs at most').fill('0');
    await page.getByRole('button', { name: 'Look for forms' }).click();
    await page.getByText(/no plan with 1 forms was found/).waitFor({ timeout: 120_000 });
    await picture(page, 'outlines-no-plan');
  });

  test('stopped: the best so far is taken, or nothing at all at the second click', async () => {
    await open();
    await add();
    await page.getByRole('button', { name: 'Layouts', exact: true }).click();
    await page.getByLabel('Effort').selectOption('thorough');
    await page.getByRole('button', { name: 'Outlines', exact: true }).click();
    await page.getByLabel('Forms allowed').fill('2');
    await page.getByRole('button', { name: 'Look for forms' }).click();
    await page.waitForTimeout(1500);
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByRole('button', { name: 'Stop' }).waitFor({ state: 'detached' });
    await page.getByText('Laying out the drawings together').waitFor({ state: 'detached' });
    await page.locator('.outline-plan .state-sound').waitFor({ timeout: 60_000 });
  });

  test.each([['light', 'en-GB'], ['dark', 'de-AT']] as const)('nothing for axe to find in %s, %s; no wider than the window', async (colorScheme, locale) => {
    await open({ colorScheme, locale });
    await add();
    await seek('2');
    await picture(page, `outlines-${locale}-${colorScheme}`);
    expect(await findings(page)).toEqual([]);
    for (const width of [1024, 390]) {
      await page.setViewportSize({ width, height: 800 });
      await page.waitForTimeout(200);
      await page.screenshot({ path: `out/desk/outlines-${locale}-${width}.png`, fullPage: true });
      expect(await page.evaluate(() => document.documentElement.scrollWidth), `at ${width}`).toBeLessThanOrEqual(width);
    }
    if (locale === 'de-AT') expect((await page.locator('main').innerText()).match(/.*\b(the|and|which|sheet|drawing|version|press)\b.*/gi)).toBeNull();
  });
});
