import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { browserIsHere, chooseEffort, goTo, picture, sample, searched } from './browser.ts';
import { withDesk } from './with-desk.ts';

/** A job as a file: what was found comes with it, judged again by whoever opens it. */
describe.skipIf(!browserIsHere())('a job as a file', { timeout: 150_000 }, () => {
  const desk = withDesk([sample('reverse-tuck-small.svg'), sample('sleeve.svg')]);

  const saved = async (page: Page) => {
    await page.getByRole('button', { name: 'Jobs' }).click();
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save this job as a file' }).click();
    const text = readFileSync(await (await coming).path(), 'utf8');
    await page.getByRole('button', { name: 'Close' }).click();
    return text;
  };
  const opened = async (text: string) => {
    const page = await desk.open();
    await page.getByRole('button', { name: 'Jobs' }).click();
    await page.getByLabel('Open a job file').setInputFiles({ name: 'tea.json', mimeType: 'application/json', buffer: Buffer.from(text) });
    return page;
  };

  test('the layout that was shown is there again, judged: sound as it was, faulty where the file was changed', async () => {
    const page = await desk.open();
    await page.getByRole('button', { name: /reverse-tuck-small.svg/ }).click();
    await chooseEffort(page, 'quick');
    await searched(page);
    const ups = /(\d+) ups/.exec(await page.locator('.card.chosen').innerText())![1]!;
    const text = await saved(page);
    const same = await opened(text);
    await goTo(same, 'Layouts found');
    await same.locator('.card.chosen', { hasText: `${ups} ups` }).locator('.state-sound').waitFor();

    const job = JSON.parse(text) as { chosen: string; layouts: { id: string; layout: { placements: { x: number }[] } }[] };
    const moved = job.layouts.find(({ id }) => id === job.chosen)!.layout.placements[0]!;
    moved.x += 20;
    const changed = await opened(JSON.stringify(job));
    await goTo(changed, 'Layouts found');
    await changed.locator('.card', { hasText: `${ups} ups` }).locator('.state-faulty').first().waitFor();

    // Another drawing under the same layouts: none of them is called sound for it.
    const other = JSON.parse(text) as Record<string, unknown>;
    other['drawing'] = { kind: 'style', style: 'reverse-tuck', values: { length: 80, width: 40, depth: 120 } };
    const foreign = await opened(JSON.stringify(other));
    await goTo(foreign, 'Layouts found');
    await foreign.locator('.card', { hasText: `${ups} ups` }).locator('.state-out-of-date').first().waitFor();
  });

  test('forms of several outlines: there again with their pressings, nothing of their proof believed', async () => {
    const page = await desk.open();
    await chooseEffort(page, 'quick');
    await page.getByRole('button', { name: 'Outlines' }).click();
    for (const name of ['reverse-tuck-small.svg', 'sleeve.svg']) await page.getByRole('button', { name: new RegExp(`^(Add )?${name}`) }).click();
    await page.locator('.gang-rows input.number').nth(0).fill('9000');
    await page.locator('.gang-rows input.number').nth(1).fill('4000');
    await page.getByRole('button', { name: 'Look for forms' }).click();
    await page.locator('.outline-plan .state-sound').waitFor({ timeout: 120_000 });
    const figures = await page.locator('.outline-plan .answer').innerText();
    const again = await opened(await saved(page));
    await goTo(again, 'Layouts found');
    await again.getByRole('button', { name: 'Outlines' }).click();
    await again.locator('.outline-plan .answer').waitFor();
    expect(await again.locator('.outline-plan .answer').innerText()).toBe(figures);
    await again.getByText('Not proved: whether fewer pressings are possible is open').waitFor();
    expect(await again.locator('.outline-forms .card').count()).toBe(1);
    await picture(again, 'forms-from-file');
  });
});
