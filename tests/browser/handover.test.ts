import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import type { Download, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { HANDOVER_FILES } from '../../src/pipeline/handover.ts';
import { browserIsHere, goTo, picture, sample } from './browser.ts';
import { withDesk } from './with-desk.ts';

/** Blue lines that nothing names. */
const TWO_COLOURS = `<svg xmlns="http://www.w3.org/2000/svg" width="106mm" height="64mm" viewBox="0 0 106 64"><g fill="none" stroke-width=".3">
<path stroke="#e30613" d="M3 3H103V61H3Z"/><path stroke="#0000ff" d="M33 3V61M73 3V61"/></g></svg>`;

/** Saving what is handed over: what is not there is said, nothing of somebody else is replaced silently. */
describe.skipIf(!browserIsHere())('files handed over', { timeout: 150_000 }, () => {
  const desk = withDesk();
  let folder: string;
  let page: Page;

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'desk-handover-'));
    page = await desk.open({}, [folder]);
    await goTo(page, 'Sheet');
    await page.getByLabel('Sheet size').fill('326x240');
    await goTo(page, 'Layouts found');
    await page.getByLabel('Effort').selectOption('quick');
    await goTo(page, 'Drawing');
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  const drawing = (text: string) => page.getByLabel('Choose a drawing').setInputFiles({ name: 'box.svg', mimeType: 'image/svg+xml', buffer: Buffer.from(text) });
  const handOver = async () => {
    await page.locator('.ticket .search-line', { hasText: 'found in' }).waitFor({ timeout: 90_000 });
    await goTo(page, 'Hand over');
    await page.locator('ul.files').waitFor();
  };
  const notice = (text: RegExp) => page.getByRole('status').filter({ hasText: text }).waitFor();
  const main = () => page.locator('main').innerText();

  test('beside an error: the button, the panel and the notice say which files are not there', async () => {
    writeFileSync(join(folder, 'die-rule-side.dxf'), 'of an earlier layout');
    await drawing(TWO_COLOURS);
    await handOver();
    const text = await main();
    expect(text).toContain('a die must not be made from a guess. Say it in the panel Drawing');
    expect(text).toContain('Not among the files: sheet-steps.pdf, die-printed-side.dxf, die-rule-side.dxf, die-order.html,');
    expect(text).toContain('Not among the files: quote.html, quote-customer.html. The panel Money lacks what a quote needs.');
    await picture(page, 'handover-missing');
    await page.getByRole('button', { name: /^Save the 4 files that are there into/ }).click();
    await notice(/^4 files saved\. Not among them: .*die-printed-side\.dxf.* From earlier there still lie in the folder: die-rule-side\.dxf\./);
    expect(readdirSync(folder).toSorted()).toEqual(['die-rule-side.dxf', 'layout.json', 'report.html', 'sheet.pdf', 'sheet.svg']);
  });

  test('all of it, listed with digests; again without a question; what another program changed only when it is said', async () => {
    await drawing(TWO_COLOURS);
    await page.getByRole('group', { name: 'What are these lines?' }).getByRole('button', { name: 'Creases' }).click();
    await page.getByText('nothing says what they are').waitFor({ state: 'detached' });
    await handOver();
    const save = page.getByRole('button', { name: /^Save all files into/ });
    await save.click();
    await notice(/^\d+ files saved\.$/);
    expect(readdirSync(folder)).toEqual(expect.arrayContaining([...HANDOVER_FILES]));
    const manifest = JSON.parse(readFileSync(join(folder, 'manifest.json'), 'utf8')) as { files: { name: string; sha256: string }[] };
    expect([...manifest.files.map(({ name }) => name), 'manifest.json'].toSorted()).toEqual(readdirSync(folder).toSorted());
    for (const { name, sha256 } of manifest.files) expect(createHash('sha256').update(readFileSync(join(folder, name))).digest('hex'), name).toBe(sha256);

    // The page's own files are written anew.
    await page.getByLabel('Layout number').fill('L-8');
    // At once: what is saved holds what was just typed.
    await save.click();
    await expect.poll(() => readFileSync(join(folder, 'manifest.json'), 'utf8'), { timeout: 20_000 }).toContain('L-8');
    await notice(/^\d+ files saved\.$/);

    writeFileSync(join(folder, 'report.html'), 'written by hand');
    await save.click();
    await page.getByText('In the folder there stand already, not as this desk last wrote them: report.html.').waitFor();
    await picture(page, 'handover-standing');
    await page.getByRole('button', { name: 'Save nothing' }).click();
    await notice(/^Nothing was saved\.$/);
    expect(readFileSync(join(folder, 'report.html'), 'utf8')).toBe('written by hand');
    await save.click();
    await page.getByRole('button', { name: 'Replace them' }).click();
    await notice(/^\d+ files saved\.$/);
    expect(readFileSync(join(folder, 'report.html'), 'utf8')).toContain('<html');
    expect(readFileSync(join(folder, 'manifest.json'), 'utf8')).toContain('L-8');
  });

  test('without a folder all of it is one ZIP, with the manifest of what is in it', async () => {
    const other = await desk.open({}, [sample('label-oval.svg')]);
    await other.addInitScript(() => Object.assign(globalThis, { showDirectoryPicker: undefined }));
    const downloads: Download[] = [];
    other.on('download', (one) => downloads.push(one));
    await other.reload();
    await other.locator('.ticket .state-sound').waitFor({ timeout: 60_000 });
    await goTo(other, 'Hand over');
    const files = other.locator('ul.files li');
    await files.first().waitFor({ timeout: 60_000 });
    expect(await other.getByRole('button', { name: /into a folder/ }).count()).toBe(0);
    await other.getByRole('button', { name: /^Save all \d+ files as one ZIP/ }).click();
    await other.getByRole('status').filter({ hasText: /files saved in one ZIP\.$/ }).waitFor();
    await expect.poll(() => downloads.length).toBe(1);
    expect(downloads[0]!.suggestedFilename()).toBe('label-oval.zip');
    const packed = unzipSync(readFileSync(await downloads[0]!.path()));
    expect(Object.keys(packed)).toEqual(expect.arrayContaining([...HANDOVER_FILES]));
    expect(Object.keys(packed).length).toBe(await files.count());
    const manifest = JSON.parse(new TextDecoder().decode(packed['manifest.json'])) as { files: { name: string; sha256: string }[] };
    expect([...manifest.files.map(({ name }) => name), 'manifest.json'].toSorted()).toEqual(Object.keys(packed).toSorted());
    for (const { name, sha256 } of manifest.files) expect(createHash('sha256').update(packed[name]!).digest('hex'), name).toBe(sha256);
  });
});
