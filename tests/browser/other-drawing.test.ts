import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, describe, expect, test } from 'vitest';
import { nest, prepareLinearPrograms, read } from '../../src/api/index.ts';
import { browserIsHere, chooseEffort, goTo, picture, sample, searched } from './browser.ts';
import { withDesk } from './with-desk.ts';

const text = (name: string) => readFileSync(sample(name), 'utf8');
/** The tea carton as it was before its panels were made a millimetre wider. */
const OLDER = text('reverse-tuck-small.svg').replace(/viewBox="([^"]*)"/, (_, box: string) => {
  const [x, y, width, height] = box.split(/\s+/).map(Number) as [number, number, number, number];
  return `viewBox="${x} ${y} ${width * 1.005} ${height}" preserveAspectRatio="none"`;
});

/** A layout that is of another drawing than the one on the desk is never shown as sound for it. */
describe.skipIf(!browserIsHere())('a layout of another drawing', { timeout: 150_000 }, () => {
  const folder = mkdtempSync(join(tmpdir(), 'desk-kin-'));
  const desk = withDesk([sample('reverse-tuck-small.svg')]);
  afterAll(() => rmSync(folder, { recursive: true }));

  const layoutOf = async (drawing: string, name: string) => {
    await prepareLinearPrograms();
    const found = await nest({ drawing: await read(drawing), name, sheet: { width: 740, height: 520 }, effort: 'quick' });
    const path = join(folder, `${name}-layout.json`);
    writeFileSync(path, found.layoutText(0));
    return path;
  };
  const open = async (path: string) => {
    const page = await desk.open();
    await page.locator('.ticket').waitFor();
    await chooseEffort(page, 'quick');
    // A quick search may have ended by itself.
    await page.getByRole('button', { name: 'Stop' }).click({ timeout: 2000 }).catch(() => undefined);
    await searched(page);
    await page.getByLabel('Open a layout file').setInputFiles(path);
    return page;
  };
  const told = (page: Page) => page.getByRole('alert').filter({ hasText: 'This layout is of another' });
  const nowhereSound = async (page: Page) => {
    await page.locator('.ticket .state-out-of-date').waitFor();
    await page.locator('.card.chosen .state-out-of-date').waitFor();
    await page.locator('.hand-state', { hasText: 'out of date' }).waitFor();
    await goTo(page, 'Hand over');
    expect(await told(page).count()).toBe(1);
    expect(await page.locator('ul.files').count()).toBe(0);
    await goTo(page, 'Layouts found');
  };

  test('another carton: said with name and size, put aside, brought back by undo', async () => {
    const page = await open(await layoutOf(text('label-oval.svg'), 'ginger-label'));
    await told(page).waitFor();
    expect(await told(page).innerText()).toMatch(/another drawing \(ginger-label, 90\s×\s60\smm\) than the one on the desk \(reverse-tuck-small, 213\.5\s×\s200\smm\)/);
    await nowhereSound(page);
    await picture(page, 'other-drawing');
    await page.getByRole('button', { name: 'Keep the drawing, put the layout aside' }).click();
    await told(page).waitFor({ state: 'detached' });
    await page.locator('.ticket .state-sound').waitFor();
    await page.getByRole('button', { name: 'Undo' }).first().click();
    await told(page).waitFor();
    await nowhereSound(page);
    // A tab that is opened anew says it as well.
    await page.waitForTimeout(600);
    await page.reload();
    const card = page.locator('.card', { hasText: /740\s×\s520/ });
    await card.locator('.state-out-of-date').waitFor();
    await card.locator('.card-main').click();
    await told(page).waitFor();
  });

  test('laid out with its own outline: its blank is the drawing then, the layout sound for it, and the search goes on with it', async () => {
    const page = await open(await layoutOf(text('label-oval.svg'), 'ginger-label'));
    await told(page).waitFor();
    await page.getByRole('button', { name: 'Lay out with its own outline' }).click();
    await told(page).waitFor({ state: 'detached' });
    await page.locator('.ticket', { hasText: 'ginger-label' }).waitFor();
    await page.locator('.card.chosen .state-sound').waitFor();
    await page.locator('.hand-state', { hasText: 'sound' }).waitFor();
    await searched(page);
    await page.waitForFunction(() => document.querySelectorAll('.card').length > 1);
    await goTo(page, 'Drawing');
    expect(await page.locator('main').innerText()).not.toContain('nothing says what they are');
  });

  test('an older revision of the drawing on the desk: out of date', async () => {
    const page = await open(await layoutOf(OLDER, 'reverse-tuck-small'));
    await told(page).waitFor();
    expect(await told(page).innerText()).toMatch(/another state of the drawing \(reverse-tuck-small, 212\.44\s×\s200\smm\): outline or lines differ from those on the desk \(reverse-tuck-small, 213\.5\s×\s200\smm\)/);
    await nowhereSound(page);
  });

  test('a layout of the very drawing is sound, whatever it is called', async () => {
    const page = await open(await layoutOf(text('reverse-tuck-small.svg'), 'tea'));
    await page.locator('.card.chosen', { hasText: /740\s×\s520/ }).locator('.state-sound').waitFor();
    expect(await told(page).count()).toBe(0);
  });
});
