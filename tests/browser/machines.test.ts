import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { browserIsHere, findings, goTo, picture } from './browser.ts';
import { WITH_AXE, withDesk } from './with-desk.ts';

/** A machine changes limits that stand on another panel: where it is chosen it is said which. */
describe.skipIf(!browserIsHere())('press and die-cutter chosen', { timeout: 120_000 }, () => {
  const desk = withDesk();
  /** What a screen reader reads with the choice. */
  const saidOf = async (page: Page, label: string) => {
    const described = await page.getByLabel(label, { exact: true }).getAttribute('aria-describedby');
    return described === null ? '' : (await page.locator(`[id="${described}"]`).innerText()).replaceAll(/[\u00a0\u202f\u2060]/g, (space) => (space === '\u2060' ? '' : ' '));
  };
  const press = (page: Page) => page.getByLabel('Press', { exact: true });
  const cutter = (page: Page) => page.getByLabel('Die-cutter', { exact: true });
  const reads = (page: Page, label: string) => expect.poll(() => saidOf(page, label));

  test('each says what holds because of it: the wider margin of two, nothing that is typed, in the unit and language chosen', async () => {
    const page = await desk.open(WITH_AXE);
    await goTo(page, 'Sheet');
    expect(await saidOf(page, 'Press')).toBe('');
    await press(page).selectOption({ label: 'Press 1, six colours and coater' });
    await reads(page, 'Press').toMatch(/^Brings gripper 12 mm, tail 10 mm, .*Takes sheets 340 × 480 to 1060 × 760 mm, board 0\.06 mm to 0\.8 mm\.$/);
    await cutter(page).selectOption({ label: 'Die-cutter A, with stripping and blanking' });
    await reads(page, 'Die-cutter').toMatch(/^Brings gripper 14 mm, gap 6 mm\. Takes/);
    await reads(page, 'Press').toMatch(/^Brings tail 10 mm, sides 6 mm, /);
    await picture(page, 'machines-chosen');
    expect(await findings(page)).toEqual([]);

    await goTo(page, 'Limits');
    await page.getByLabel('Gripper edge', { exact: true }).fill('20');
    await goTo(page, 'Sheet');
    await reads(page, 'Die-cutter').toMatch(/^Brings gap 6 mm\. Takes/);
    await page.getByLabel('Lengths in').selectOption('in');
    await reads(page, 'Die-cutter').toMatch(/^Brings gap 0\.236 in\. Takes/);
    await page.getByLabel('Language').selectOption('de');
    await reads(page, 'Stanze').toMatch(/^Daher gilt: Abstand 0,236 in\. Nimmt Bogen 13,78 × 15,748 bis /);
    await picture(page, 'machines-chosen-german');
    await page.getByLabel('Stanze', { exact: true }).selectOption('');
    await reads(page, 'Stanze').toBe('');
  });

  test('a sheet that the press does not take: what it takes is said beside the fault', async () => {
    const page = await desk.open();
    await goTo(page, 'Sheet');
    await page.getByLabel('Sheet size').fill('1020x720');
    await press(page).selectOption({ label: 'Press 2, five colours' });
    await page.getByText('is larger than Press 2, five colours takes').waitFor();
    await reads(page, 'Press').toContain('Takes sheets 280 × 350 to 740 × 530 mm');
    await picture(page, 'machine-too-small');
  });
});
