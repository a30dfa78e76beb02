import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { browserIsHere, chooseEffort, findings, goTo, picture, searched } from './browser.ts';
import { WITH_AXE, withDesk } from './with-desk.ts';

/** A near miss is shown beside the job's settings, or taken into them. */
describe.skipIf(!browserIsHere())('what would bring one more', { timeout: 150_000 }, () => {
  const desk = withDesk();
  const card = (page: Page) => page.locator('.card.chosen');
  const undo = (page: Page) => page.keyboard.press('Control+KeyZ');
  const look = (page: Page) => page.getByRole('button', { name: 'Look for small changes' });
  /** A style's blank on a sheet, and why it is so many. */
  const whyOn = async (page: Page, size: string, bar: string) => {
    await chooseEffort(page, 'quick');
    await goTo(page, 'Sheet');
    await page.getByLabel('Sheet size').fill(size);
    await goTo(page, 'Limits');
    await page.getByLabel('Colour bar', { exact: true }).selectOption(bar);
    await goTo(page, 'Drawing');
    await page.getByLabel('Style').selectOption('straight-tuck');
    for (const [name, value] of [['length', '60'], ['width', '30'], ['depth', '110']] as const) await page.getByLabel(name, { exact: true }).fill(value);
    await page.locator('.ticket', { hasText: 'straight-tuck-60x30x110' }).waitFor();
    await searched(page);
    await goTo(page, 'Why this many');
  };
  const missesOn = async (page: Page, size: string, bar: string) => {
    await whyOn(page, size, bar);
    await look(page).click();
    await page.getByText(/^Searched in steps of/).waitFor({ timeout: 100_000 });
  };

  test('a bar elsewhere: shown it is no setting of this job, here and at handing over; taken it is, and undo takes it back', async () => {
    const page = await desk.open(WITH_AXE);
    await missesOn(page, '520x366', 'gripper');
    await page.getByRole('button', { name: 'Show it: colour bar at the tail' }).click();
    await card(page).getByText('with colour bar at the tail: not the settings of this job').waitFor();
    await picture(page, 'change-shown');
    await goTo(page, 'Hand over');
    await page.locator('main .warning', { hasText: 'colour bar at the tail: not the settings of this job' }).waitFor();
    await picture(page, 'change-shown-handover');
    expect(await findings(page)).toEqual([]);

    await page.getByRole('button', { name: 'Take this change: colour bar at the tail' }).click();
    await card(page).locator('.state-sound').waitFor();
    const ups = await card(page).locator('.card-ups').innerText();
    expect(await card(page).innerText()).not.toContain('not the settings');
    await goTo(page, 'Limits');
    expect(await page.getByLabel('Colour bar', { exact: true }).inputValue()).toBe('tail');
    await picture(page, 'change-taken-limits');
    // Nothing is searched for anew: longer than a search waits for fields to stand still.
    await page.waitForTimeout(600);
    expect(await page.locator('.ticket .search-line').filter({ hasText: /Searching|Stop/ }).count()).toBe(0);
    await goTo(page, 'Layouts found');
    expect(await card(page).locator('.card-ups').innerText()).toBe(ups);
    await goTo(page, 'Hand over');
    await page.locator('main .state-sound').waitFor();
    expect(await page.locator('main .warning', { hasText: 'not the settings' }).count()).toBe(0);

    await goTo(page, 'Limits');
    await undo(page);
    await expect.poll(() => page.getByLabel('Colour bar', { exact: true }).inputValue()).toBe('gripper');
    await goTo(page, 'Layouts found');
    // The job's own layout is in view again; the one with the change is still there to be looked at.
    await page.locator('.card:not(.chosen)').getByText('with colour bar at the tail: not the settings of this job').waitFor();
  });

  test('each is shown as soon as it is found; stopped, what was found stays and it says that not all was tried, elsewhere and back too', async () => {
    const page = await desk.open(WITH_AXE);
    await whyOn(page, '520x366', 'gripper');
    // Stop is pressed by the page itself, in the moment in which the first stands there.
    await page.evaluate(() => {
      new MutationObserver((_, observer) => {
        const block = document.querySelector('.misses li')?.closest('section');
        if (!block) return;
        observer.disconnect();
        document.documentElement.dataset['said'] = block.querySelector('[role=status]')?.textContent ?? '';
        [...block.querySelectorAll('button')].find(({ textContent }) => textContent === 'Stop')?.click();
      }).observe(document.body, { childList: true, subtree: true });
    });
    await look(page).click();
    const stopped = page.getByText(/^Stopped before all was tried: \d+ of \d+ changes\.$/);
    await stopped.waitFor({ timeout: 100_000 });
    expect(await page.evaluate(() => document.documentElement.dataset['said'])).toMatch(/^\d+ of \d+ changes tried\.$/);
    const found = await page.getByRole('button', { name: /^Show it/ }).count();
    expect(found).toBeGreaterThan(0);
    await picture(page, 'near-misses-stopped');
    expect(await findings(page)).toEqual([]);
    await goTo(page, 'Limits');
    await goTo(page, 'Why this many');
    await stopped.waitFor();
    expect(await page.getByRole('button', { name: /^Show it/ }).count()).toBe(found);
    expect(await look(page).isEnabled()).toBe(true);
  });

  test('a flap of a style: taken, it stands with the dimensions and the layout counts for the blank so drawn', async () => {
    const page = await desk.open();
    await missesOn(page, '520x360', 'none');
    await picture(page, 'near-misses-of-style');
    const take = page.getByRole('button', { name: /^Take this change: tuck flap/ }).first();
    const to = / → ([\d.]+)/.exec((await take.getAttribute('aria-label'))!)![1]!;
    await take.click();
    await card(page).locator('.state-sound').waitFor();
    await expect.poll(() => card(page).innerText()).toContain('3 ups');
    await expect.poll(() => card(page).innerText()).not.toContain('not the settings');
    await goTo(page, 'Drawing');
    expect(await page.getByLabel(/^tuck ?flap/i).inputValue()).toBe(to);
    await picture(page, 'flap-taken');
  });
});
