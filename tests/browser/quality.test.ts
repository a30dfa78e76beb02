import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { browserIsHere, findings, goTo, picture, sample, searched } from './browser.ts';
import { WITH_AXE, withDesk } from './with-desk.ts';

const PANELS = 7;

/** For everyone: keys, screen readers, contrast, narrow windows, two languages, paper. */
describe.skipIf(!browserIsHere())('quality', { timeout: 120_000 }, () => {
  const desk = withDesk([sample('reverse-tuck-small.svg')]);

  const open = async (options: BrowserContextOptions = {}): Promise<Page> => {
    const page = await desk.open({ ...WITH_AXE, ...options });
    await page.locator('.ticket .state-sound').waitFor();
    // The search would only make the machine slow for what is looked at here.
    await page.keyboard.press('Alt+KeyS');
    await searched(page);
    return page;
  };
  const press = async (page: Page, panel: number) => {
    await page.keyboard.press(`Alt+Digit${panel}`);
    await page.waitForTimeout(panel >= 4 ? 400 : 100);
  };

  test.each(['light', 'dark'] as const)('nothing for axe to find, on any panel, in %s', async (colorScheme) => {
    const page = await open({ colorScheme });
    for (let panel = 1; panel <= PANELS; panel++) {
      await press(page, panel);
      await picture(page, `panel-${panel}-${colorScheme}`);
      expect(await findings(page), `panel ${panel}`).toEqual([]);
    }
    for (const name of ['Keys', 'Jobs']) {
      await page.getByRole('button', { name, exact: true }).click();
      expect(await findings(page), name).toEqual([]);
      await page.keyboard.press('Escape');
    }
  });

  test('German: panels, remarks, report and pictures; no English sentence is left', async () => {
    const page = await open({ locale: 'de-AT' });
    expect(await page.locator('html').getAttribute('lang')).toBe('de');
    const said: string[] = [];
    for (let panel = 1; panel <= PANELS; panel++) {
      await press(page, panel);
      await page.locator('main').locator(['', '.facts', '.picture', '.issue-note', '.hand', '.report', '.money .empty', '.files'][panel]!).first().waitFor();
      said.push(await page.locator('body').innerText(), ...(await page.locator('main svg text').allTextContents()));
    }
    await picture(page, 'german');
    const all = said.join('\n');
    const missing = ['Zeichnung', 'Bogen', 'Grenzen', 'Warum so viele', 'Geld', 'Übergabe', 'GREIFERKANTE', 'Wohin der Karton geht', 'vergrößert'].filter((word) => !all.includes(word));
    expect(missing).toEqual([]);
    // Names of files, of the invented machines and of the list of sheets stay as they are.
    const english = all.replace(/sheet(-steps)?\.\w+|Press \d.*|Die-cutter [AB].*|Sheets in stock at [^()]*(?=\))/g, '').match(/.*\b(the|and|which|sheet|gripper edge|margin|found by)\b.*/gi);
    expect(english).toBeNull();
  });

  test('readable at 390 wide and whole at 1024: nothing runs out of the page', async () => {
    for (const width of [390, 1024]) {
      const page = await open({ viewport: { width, height: 800 } });
      for (let panel = 1; panel <= PANELS; panel++) {
        await press(page, panel);
        await picture(page, `width-${width}-${panel}`);
        expect(await page.evaluate(() => document.documentElement.scrollWidth), `panel ${panel} at ${width}`).toBeLessThanOrEqual(width);
      }
      }
  });

  test('on paper: title, picture, caution; nothing that could be pressed or typed in', async () => {
    const page = await open();
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: 700, height: 1000 });
    for (let panel = 1; panel <= PANELS; panel++) {
      await press(page, panel);
      await page.locator('svg.picture:visible').first().waitFor();
      await page.locator('h2:visible').waitFor();
      expect(await page.locator('button:visible, select:visible, summary:visible, input[type=range]:visible, input[type=file]:visible').count(), `panel ${panel}`).toBe(await page.locator('select:visible, .go-to:visible').count());
      expect(await page.locator('select:visible').evaluateAll((all) => all.filter((one) => getComputedStyle(one).appearance !== 'none').length), `panel ${panel}`).toBe(0);
      await page.getByText(/^This is a plan/).filter({ visible: true }).first().waitFor();
      expect(await page.evaluate(() => document.documentElement.scrollWidth), `panel ${panel}`).toBeLessThanOrEqual(700);
      await picture(page, `paper-${panel}`);
    }
  });

  test('on paper too it stands which rates are invented', async () => {
    const page = await open();
    await goTo(page, 'Money');
    await page.getByLabel('Fill what is empty with invented rates').check();
    await page.getByLabel('Board', { exact: true }).selectOption('folding-300');
    await page.locator('.money table').waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.getByText(/^Invented for trying out: press rate/).filter({ visible: true }).waitFor();
    expect(await page.getByText('With commas between').filter({ visible: true }).count()).toBe(0);
  });

  test('a job by keys alone', async () => {
    const page = await open();
    await page.keyboard.press('?');
    await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    await page.keyboard.press('Escape');
    await press(page, 2);
    await tabTo(page, 'Sheet size');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('740x520');
    await press(page, 4);
    await page.locator('.card.chosen', { hasText: '740 × 520' }).waitFor();
    await page.keyboard.press('Alt+KeyP');
    await page.locator('main .search-line', { hasText: 'Paused' }).waitFor();
    await page.keyboard.press('Alt+KeyP');
    await page.locator('main .search-line', { hasText: 'Searching' }).waitFor();
    await page.keyboard.press('Alt+KeyS');
    await page.locator('main .search-line', { hasText: 'found in' }).waitFor();
    const before = await page.locator('.card.chosen').innerText();
    await page.keyboard.press('Alt+KeyN');
    await page.locator('.card.chosen').filter({ hasNotText: before }).waitFor();
  });
});

async function tabTo(page: Page, label: string): Promise<void> {
  const wanted = await page.getByLabel(label).elementHandle();
  for (let i = 0; i < 60; i++) {
    await page.keyboard.press('Tab');
    if (await wanted!.evaluate((element) => element === document.activeElement)) return;
  }
  throw new Error(`no way to ${label} by Tab`);
}
