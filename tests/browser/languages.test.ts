import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { browserIsHere, goTo, sample, searched } from './browser.ts';
import { withDesk } from './with-desk.ts';

/** What the page asked its threads for. */
const ASKED = 'asked' as keyof typeof globalThis;

/** Hears what the page asks its threads from now on. */
function listen(page: Page): Promise<void> {
  return page.evaluate(() => {
    const asked: string[] = [];
    Object.assign(globalThis, { asked });
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (this: Worker, message: { kind?: string }, ...more: []) {
      if (message.kind !== undefined) asked.push(message.kind);
      post.call(this, message, ...more);
    } as typeof post;
  });
}
const askedSince = (page: Page) => page.evaluate((name) => (globalThis[name] as unknown as string[]).splice(0), ASKED);
const speak = (page: Page, language: string) => page.locator('.head select').last().selectOption(language);
const measure = (page: Page, unit: string) => page.locator('.head select').first().selectOption(unit);

/** Another language or unit while answers stand: they are said anew, and nothing is searched again. */
describe.skipIf(!browserIsHere())('another language', { timeout: 150_000 }, () => {
  const desk = withDesk([sample('reverse-tuck-small.svg')]);

  test('comparison, near misses and quote', async () => {
    const page = await desk.open();
    await page.locator('.ticket .state-sound').waitFor();
    await page.keyboard.press('Alt+KeyS');
    await searched(page);
    await listen(page);
    await goTo(page, 'Sheet');
    await page.getByRole('button', { name: 'Compare them all' }).click();
    const verdict = page.locator('main .answer');
    await verdict.filter({ hasText: /sheet/ }).waitFor();
    await askedSince(page);
    await speak(page, 'de');
    await verdict.filter({ hasText: /^Der Bogen .*\smm mit/ }).waitFor();
    await measure(page, 'in');
    await verdict.filter({ hasText: /^Der Bogen [\d,]+ .*\sin mit/ }).waitFor();
    expect(await page.locator('.sheets svg text', { hasText: 'GRIPPER' }).count()).toBe(0);

    await measure(page, 'mm');
    await goTo(page, 'Warum so viele');
    expect(await askedSince(page)).not.toContain('compare');
    await page.getByRole('button', { name: 'Kleine Änderungen suchen' }).click();
    await page.locator('.misses').filter({ hasText: 'auch Vierteldrehungen erlaubt' }).waitFor();
    await page.getByText(/^Gesucht in Schritten von 0,1\smm/).waitFor();
    await askedSince(page);
    await speak(page, 'en');
    await page.locator('.misses').filter({ hasText: 'quarter turns allowed as well' }).waitFor();
    await page.getByText(/^Searched in steps of 0.1\smm/).waitFor();
    await measure(page, 'in');
    await page.getByText(/^Searched in steps of 0.00\d+\sin/).waitFor();
    expect(await askedSince(page)).not.toContain('nearMisses');
    // A layout made from one is named anew as well.
    await page.getByRole('button', { name: 'Show it: quarter turns' }).click();
    await page.locator('.card.chosen', { hasText: 'by quarter turns allowed as well' }).waitFor();
    await speak(page, 'de');
    await page.locator('.card.chosen', { hasText: 'durch auch Vierteldrehungen erlaubt' }).waitFor();

    await goTo(page, 'Geld');
    await page.getByLabel('Flächengewicht').fill('300');
    await page.locator('.money > .answer', { hasText: /^5\s000 Faltschachteln brauchen/ }).waitFor();
    await page.locator('.warning', { hasText: 'Preis der Stanzform' }).waitFor();
    await speak(page, 'en');
    await page.locator('.money > .answer', { hasText: /^5\s000 cartons/ }).waitFor();
    await page.locator('.warning', { hasText: 'die price' }).waitFor();
  });
});
