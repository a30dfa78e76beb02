import type { Page } from 'playwright-core';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { browserIsHere, chooseEffort, goTo, picture, root, sample, searched } from './browser.ts';
import { withDesk } from './with-desk.ts';

/** The way of a job over the desk: what is dropped, what cannot be used, one job and the next. */
describe.skipIf(!browserIsHere())('the flow of a job', { timeout: 150_000 }, () => {
  const desk = withDesk();
  let page: Page;

  beforeEach(async () => {
    page = await desk.open();
    await chooseEffort(page, 'quick');
    await goTo(page, 'Drawing');
    await take(sample('straight-tuck-small.svg'));
    await page.locator('.ticket .state-sound').waitFor({ timeout: 60_000 });
    await searched(page);
  });

  const take = async (path: string) => {
    await goTo(page, 'Drawing');
    await page.getByLabel('Choose a drawing').setInputFiles(path);
  };
  const ticket = () => page.locator('.ticket').innerText();
  const name = () => page.getByRole('textbox', { name: 'Name of the job' }).inputValue();
  const nothingHandedOver = async () => {
    await goTo(page, 'Hand over');
    await page.getByRole('heading', { name: 'Hand over', exact: true }).waitFor();
    await expect.poll(() => page.locator('main .state-sound, main ul.files').count()).toBe(0);
    expect(await page.getByRole('button', { name: /^Save/ }).count()).toBe(0);
  };

  test('a file that is no drawing is refused with a sentence, and the desk stays as it was', async () => {
    const before = await ticket();
    for (const [path, why] of [['broken/web-page.svg', /outermost element is html/], ['README.md', /README\.md is no drawing that can be read/], ['artwork/mint-tea.pdf', /holds no line that could be a rule/]] as const) {
      await take(join(root, 'samples', path));
      const alert = page.getByRole('alert').filter({ hasText: path.split('/').at(-1)! });
      await alert.getByText(why).waitFor();
      expect(await alert.innerText()).not.toContain('--');
      await picture(page, `flow-refused-${path.split('/').at(-1)}`);
      expect(await ticket()).toBe(before);
      expect(await name()).toBe('straight-tuck-small');
    }
    await page.getByRole('alert').getByRole('button', { name: 'Close' }).click();
    expect(await page.getByRole('alert').count()).toBe(0);
    await page.getByLabel('Choose a drawing').setInputFiles({ name: 'cut-off.json', mimeType: 'application/json', buffer: Buffer.from('{"format": "blankw') });
    await page.locator('.notice', { hasText: 'cut-off.json breaks off or is no JSON' }).waitFor();
    await picture(page, 'flow-notice');
    await page.getByRole('button', { name: 'Dismiss this notice' }).click();
    await page.locator('.notice', { hasNotText: /./ }).waitFor({ state: 'attached' });
    expect(await ticket()).toBe(before);
  });

  test('a drawing without an outline begins a job of its own; nothing of the carton before is handed over', async () => {
    await take(join(root, 'samples', 'broken', 'gap-wide.svg'));
    await page.getByText('A gap of 3 mm is open').waitFor();
    expect(await name()).toBe('gap-wide');
    expect(await ticket()).not.toContain('sound');
    expect(await ticket()).toContain('no blank found');
    await picture(page, 'flow-gap-wide');
    await nothingHandedOver();
    await goTo(page, 'Drawing');
    await page.getByRole('button', { name: 'Back to “straight-tuck-small”' }).click();
    await page.locator('.ticket .state-sound').waitFor();
    expect(await name()).toBe('straight-tuck-small');
  });

  test('a sheet or a gap that cannot be read: the layout is out of date, the ticket says what is wrong, nothing is handed over', async () => {
    for (const [panel, label, text, usual] of [['Sheet', 'Sheet size', 'abc', '1020x720'], ['Limits', 'Gap, knife to knife', '-3', '']] as const) {
      await goTo(page, panel);
      await page.getByLabel(label).fill(text);
      await page.locator('.ticket .state-out-of-date').waitFor();
      expect(await ticket()).toContain(`${label}: “${text}” cannot be used.`);
      expect(await ticket()).not.toContain('sound');
      await nothingHandedOver();
      await picture(page, `flow-unusable-${panel}`);
      await goTo(page, panel);
      await page.getByLabel(label).fill(usual);
      await page.locator('.ticket .state-sound').waitFor();
    }
  });

  test('the sheet is smaller than the blank: the ticket and the panel say by how much it is too small, and the remedy', async () => {
    await goTo(page, 'Sheet');
    await page.getByLabel('Sheet size').fill('200x100');
    await page.locator('.ticket').getByText(/The blank \(177\.29\d*\s×\s162\.56\smm as it would lie\) is larger than the usable area of the sheet \(188\s×\s77\smm\)\. Take a larger sheet/).waitFor();
    await goTo(page, 'Layouts found');
    expect(await page.locator('.controls .issue').count()).toBe(1);
    await picture(page, 'flow-too-small');
    await nothingHandedOver();
  });

  test('another drawing begins another job; undo, back and the list lead to the one before, with its layout by hand', async () => {
    await goTo(page, 'Sheet');
    await page.getByLabel('Sheet size').fill('740x520');
    await goTo(page, 'Layouts found');
    await page.locator('.card.chosen', { hasText: '740 × 520' }).waitFor();
    await searched(page);
    await page.locator('.hand-blanks [tabindex="0"]').focus();
    for (const key of ['n', 'Delete']) await page.keyboard.press(key);
    const byHand = page.locator('.card.chosen', { hasText: 'by hand' });
    await byHand.locator('.state-sound').waitFor();
    const made = await byHand.innerText();
    await take(sample('tray.svg'));
    await page.locator('.ticket', { hasText: /tray, / }).waitFor();
    expect(await name()).toBe('tray');
    expect(await ticket()).toMatch(/740\s×\s520/);
    await picture(page, 'flow-begun');
    await searched(page);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.locator('.notice', { hasText: 'Undo led back to another job, “straight-tuck-small”.' }).waitFor();
    await page.locator('.ticket', { hasText: /straight-tuck-small, / }).waitFor();
    await page.locator('.ticket .state-sound').waitFor();
    expect(await name()).toBe('straight-tuck-small');
    await goTo(page, 'Layouts found');
    expect(await byHand.innerText()).toBe(made);
    await goTo(page, 'Drawing');
    await page.getByRole('button', { name: 'Redo' }).click();
    await page.locator('.ticket', { hasText: /tray, / }).waitFor();
    await page.locator('.ticket .state-sound').waitFor();
    await page.goBack();
    await page.locator('.ticket', { hasText: /straight-tuck-small, / }).waitFor();
    await page.getByRole('button', { name: 'Jobs' }).click();
    const jobs = page.getByRole('dialog', { name: 'Jobs' });
    expect(await jobs.getByRole('button', { name: /^(tray|straight-tuck-small)$/ }).allInnerTexts()).toEqual(expect.arrayContaining(['tray', 'straight-tuck-small']));
    await jobs.getByRole('button', { name: 'Remove tray' }).click();
    await jobs.getByText('“tray” was removed.').waitFor();
    await picture(page, 'flow-removed');
    expect(await jobs.getByRole('button', { name: 'tray', exact: true }).count()).toBe(0);
    await jobs.getByRole('button', { name: 'Take back tray' }).click();
    await jobs.getByRole('button', { name: 'tray', exact: true }).click();
    await page.locator('.ticket', { hasText: /tray, / }).waitFor();
    await page.locator('.ticket .state-sound').waitFor();
  });

  test('a file of the same name is a newer state of the job; another one is when the person says so', async () => {
    const content = { mimeType: 'image/svg+xml', buffer: Buffer.from(SQUARE) };
    await page.getByRole('textbox', { name: 'Name of the job' }).fill('mint tea');
    await goTo(page, 'Drawing');
    await page.getByLabel('Choose a drawing').setInputFiles({ name: 'straight-tuck-small.svg', ...content });
    await page.locator('.ticket', { hasText: '90 × 60 mm' }).waitFor();
    expect(await name()).toBe('mint tea');
    expect(await page.getByText('began a job of its own').count()).toBe(0);
    await page.getByText('“straight-tuck-small.svg” took the place of the file of that name').waitFor();
    await searched(page);
    await page.getByLabel('Choose a drawing').setInputFiles(sample('tray.svg'));
    await page.getByText('This drawing began a job of its own. “mint tea” is kept under Jobs.').waitFor();
    await page.getByRole('button', { name: 'It is a new revision of “mint tea”' }).click();
    await expect.poll(name).toBe('mint tea');
    await page.locator('.ticket', { hasText: /tray, / }).waitFor();
    await page.getByRole('button', { name: 'Jobs' }).click();
    await expect.poll(() => page.getByRole('dialog', { name: 'Jobs' }).getByRole('listitem').count()).toBe(1);
  });

  test('hatches lean the same way on the sheet and in the key', async () => {
    await goTo(page, 'Why this many');
    await page.locator('svg.waste [fill^="url"]').first().waitFor();
    const directions = await page.evaluate(() => {
      // The direction of a pattern's lines on the screen, degrees from 0 to 180: the axes of the shape it fills, then its own turn.
      const direction = (shape: SVGGraphicsElement, id: string) => {
        const own = (document.getElementById(id) as unknown as SVGPatternElement).patternTransform.baseVal.consolidate()!.matrix;
        const { a, b } = shape.getScreenCTM()!.multiply(own);
        return (Math.round((Math.atan2(b, a) * 180) / Math.PI) + 360) % 180;
      };
      const filled = (root: ParentNode) => [...root.querySelectorAll<SVGGraphicsElement>('[fill^="url(#"]')].map((shape) => [shape, /#(.*)\)/.exec(shape.getAttribute('fill')!)![1]!] as const);
      const all = (root: ParentNode, prefix: RegExp) => Object.fromEntries(filled(root).map(([shape, id]) => [id.replace(prefix, ''), direction(shape, id)]));
      return { sheet: all(document.querySelector('svg.waste')!, /^waste-/), key: all(document.querySelector('ul.key')!, /^key-(.*)-(?=\1$)/) };
    });
    await picture(page, 'flow-hatches');
    expect(Object.keys(directions.sheet).length).toBeGreaterThanOrEqual(5);
    expect(directions.key).toEqual(directions.sheet);
    // Two of them that could be taken for one another do differ.
    expect(directions.key['side-margins']).not.toBe(directions.key['edges']);
  });

  test('the sheet before anything lies on it has a size, and no count', async () => {
    for (const panel of ['Sheet', 'Limits']) {
      await goTo(page, panel);
      await page.locator('main .frame svg text').first().waitFor();
      expect((await page.locator('main .frame svg').textContent())!).not.toMatch(/ups/);
    }
    await picture(page, 'flow-limits');
  });

  test('a panel opens at its top', async () => {
    await page.setViewportSize({ width: 1280, height: 600 });
    await goTo(page, 'Drawing');
    await page.mouse.move(400, 400);
    await page.mouse.wheel(0, 3000);
    await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(50);
    await goTo(page, 'Money');
    await expect.poll(() => page.evaluate(() => scrollY)).toBe(0);
    const heading = page.getByRole('heading', { name: 'Money', exact: true });
    expect((await heading.boundingBox())!.y).toBeGreaterThan(0);
  });

  test('layouts side by side stand in view on a low screen', async () => {
    await page.setViewportSize({ width: 1366, height: 768 });
    await goTo(page, 'Layouts found');
    await page.getByRole('button', { name: 'Compare', exact: true }).first().click();
    const beside = page.getByRole('region', { name: 'Side by side' });
    await beside.locator('figure').nth(1).waitFor();
    const box = (await beside.locator('figure').nth(1).boundingBox())!;
    await picture(page, 'flow-beside');
    expect(box.y).toBeGreaterThan(0);
    expect(box.y + box.height).toBeLessThan(768);
  });

  test('a station that is clicked before anything is shared out says what to do first', async () => {
    await goTo(page, 'Layouts found');
    await page.getByRole('button', { name: 'Versions', exact: true }).click();
    await page.locator('.station').first().click();
    await page.getByRole('status').filter({ hasText: /Nothing is shared out yet\. Type the versions and their quantities, then press “Share out \d+ stations”/ }).waitFor();
  });

  test('more effort holds at once; a better layout found while one is handed over waits until it is asked for', async () => {
    await goTo(page, 'Sheet');
    await page.getByLabel('Sheet size').fill('900x640');
    await goTo(page, 'Layouts found');
    await page.locator('.card.chosen .state-sound', { hasText: 'sound' }).waitFor();
    await page.getByLabel('Effort').selectOption('thorough');
    // Without Stop and Search.
    await page.getByRole('button', { name: 'Pause' }).click();
    await page.locator('main .search-line', { hasText: 'Paused' }).waitFor();
    await goTo(page, 'Hand over');
    const files = page.locator('ul.files li');
    await files.first().waitFor({ timeout: 60_000 });
    const names = await files.allInnerTexts();
    await page.evaluate(() => Object.assign(globalThis, { first: document.querySelector('ul.files button') }));
    await page.keyboard.press('Alt+p');
    const limit = page.locator('.ticket .search-line', { hasText: 'Searching' });
    await limit.waitFor();
    await page.waitForTimeout(4000);
    expect(await page.evaluate(() => (globalThis as unknown as { first: HTMLButtonElement }).first.isConnected && !(globalThis as unknown as { first: HTMLButtonElement }).first.disabled)).toBe(true);
    expect(await files.allInnerTexts()).toEqual(names);
  });

  test('a new job begins at the drawing', async () => {
    await goTo(page, 'Layouts found');
    await page.getByRole('button', { name: 'Jobs' }).click();
    await page.getByRole('button', { name: 'New job' }).click();
    await page.getByRole('heading', { name: 'Drawing', exact: true }).waitFor();
    expect(await name()).toBe('');
    expect(await ticket()).toContain('No drawing yet');
  });
});

const SQUARE = '<svg xmlns="http://www.w3.org/2000/svg" width="96mm" height="66mm" viewBox="0 0 96 66"><path id="cut" fill="none" stroke="#000" stroke-width=".3" d="M3 3H93V63H3Z"/></svg>';
