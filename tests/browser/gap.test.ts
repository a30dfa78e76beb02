import { describe, expect, test } from 'vitest';
import { browserIsHere, chooseEffort, findings, goTo, picture, sample } from './browser.ts';
import { WITH_AXE, withDesk } from './with-desk.ts';

/** Another gap on the comparison board: laid out anew, the old answer in view and marked until then. */
describe.skipIf(!browserIsHere())('the gap of compared sheets', { timeout: 150_000 }, () => {
  const desk = withDesk([sample('label-oval.svg')]);

  test('the slider lays out anew and brings its gap onto the desk with the sheet', async () => {
    const page = await desk.open({ ...WITH_AXE, viewport: { width: 1280, height: 1000 } });
    await chooseEffort(page, 'quick');
    await page.locator('.ticket .state-sound').waitFor();
    await goTo(page, 'Sheet');
    await page.getByRole('button', { name: 'Compare them all' }).click();
    const board = page.getByRole('region', { name: 'Every sheet that could be bought' });
    await board.locator('.sheets .card').first().waitFor({ timeout: 90_000 });
    const upsNow = async () => (await board.locator('.card-ups').allTextContents()).reduce((sum, text) => sum + Number.parseInt(text, 10), 0);
    const tight = await upsNow();
    const gap = board.getByRole('slider', { name: 'Gap' });
    expect(await gap.getAttribute('aria-valuetext')).toBe('6\u00a0mm');

    // Fourteen millimetres in many small steps: one answer, for where the slider stood still.
    await gap.focus();
    for (let step = 0; step < 16; step++) await page.keyboard.press('ArrowRight');
    expect(await gap.getAttribute('aria-valuetext')).toBe('14\u00a0mm');
    await board.getByText('Still shown with a gap of 6 mm; 14 mm is being laid out').waitFor();
    await board.locator('.warning .state-out-of-date').waitFor();
    expect(await upsNow()).toBe(tight);
    expect(await findings(page)).toEqual([]);
    await picture(page, 'gap-on-its-way');
    await board.locator('.warning').waitFor({ state: 'detached', timeout: 90_000 });
    expect(await upsNow()).toBeLessThan(tight);

    await board.getByRole('button', { name: 'Take this sheet' }).first().click();
    await page.locator('.ticket', { hasText: 'gap 14 mm' }).waitFor();
    expect(await board.getByText('out of date').count()).toBe(0);

    // A bleed that is typed needs its room: the slider begins there.
    await goTo(page, 'Limits');
    await page.getByLabel('Bleed', { exact: true }).fill('4');
    await page.locator('.ticket', { hasText: 'bleed 4 mm' }).waitFor();
    await goTo(page, 'Sheet');
    await gap.focus();
    await page.keyboard.press('Home');
    expect(await gap.getAttribute('aria-valuetext')).toBe('8\u00a0mm');
  });
});
