import { createServer, type Server } from 'node:http';
import { readFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import { browserIsHere, chooseEffort, goTo, picture, root, sample, searched } from './browser.ts';
import { withDesk } from './with-desk.ts';

/** Nothing is lost, nothing is overwritten silently, nothing of a drawing becomes part of the page. */
describe.skipIf(!browserIsHere())('keeping', { timeout: 120_000 }, () => {
  const desk = withDesk();
  let page: Page;

  beforeEach(async () => {
    page = await desk.open();
  });

  const take = (path: string) => page.getByLabel('Choose a drawing').setInputFiles(path);
  const kept = () => page.getByText('kept in this browser').waitFor();
  const quick = async () => {
    await chooseEffort(page, 'quick');
    await goTo(page, 'Drawing');
  };

  test('a reload in the middle of a search loses nothing, and the search goes on', async () => {
    await goTo(page, 'Sheet');
    await page.getByLabel('Sheet size').fill('740x520');
    await goTo(page, 'Drawing');
    await take(sample('straight-tuck-small.svg'));
    await page.locator('.ticket', { hasText: 'ups' }).waitFor();
    await page.waitForTimeout(600);
    await page.reload();
    await page.locator('.ticket', { hasText: 'straight-tuck-small' }).waitFor();
    expect(await page.locator('.ticket').innerText()).toContain('740\u00a0×\u00a0520\u00a0mm');
    await page.locator('.ticket .state-sound').waitFor();
    await goTo(page, 'Layouts found');
    await page.locator('.card.chosen', { hasText: 'ups' }).waitFor();
    // A new tab offers what was last worked on.
    await page.goto('about:blank');
    await page.goto(desk.url);
    await page.getByRole('button', { name: 'straight-tuck-small' }).click();
    await page.locator('.ticket .state-sound').waitFor();
  });

  test('steps go back and forward', async () => {
    await goTo(page, 'Limits');
    await page.getByLabel('Gap, knife to knife').fill('8');
    await page.locator('.ticket', { hasText: 'gap 8 mm' }).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.locator('.ticket', { hasText: 'gap 6 mm' }).waitFor();
    await page.locator('main h2').click();
    await page.keyboard.press('Control+Shift+Z');
    await page.locator('.ticket', { hasText: 'gap 8 mm' }).waitFor();
  });

  test('two tabs with one job: the second is told, and decides', async () => {
    await page.getByRole('textbox', { name: 'Name of the job' }).fill('mint tea');
    await kept();
    await page.waitForTimeout(500);
    const other = await desk.beside(page);
    await other.goto(page.url());
    expect(await other.getByRole('textbox', { name: 'Name of the job' }).inputValue()).toBe('mint tea');
    await other.getByRole('textbox', { name: 'Name of the job' }).fill('mint tea, revised');
    await page.getByText('Another tab has changed this job').waitFor();
    await page.getByRole('textbox', { name: 'Name of the job' }).fill('my own');
    await page.waitForTimeout(600);
    await other.reload();
    expect(await other.getByRole('textbox', { name: 'Name of the job' }).inputValue()).toBe('mint tea, revised');
    await page.getByRole('button', { name: 'Go on here as a job of its own' }).click();
    await kept();
    await page.waitForTimeout(500);
    await page.reload();
    expect(await page.getByRole('textbox', { name: 'Name of the job' }).inputValue()).toBe('my own');
  });

  test('a worker that breaks down is replaced, and the search is made anew', async () => {
    await take(sample('reverse-tuck-small.svg'));
    await page.locator('.ticket', { hasText: 'ups' }).waitFor();
    const before = page.workers().length;
    expect(before).toBeGreaterThan(1);
    for (const worker of page.workers().filter((one) => one.url().endsWith('engine-worker.js'))) {
      await worker.evaluate(() => void setTimeout(() => { throw new Error('made to break down'); }, 0));
    }
    await page.waitForTimeout(500);
    await goTo(page, 'Why this many');
    await page.getByText('Where the board goes').waitFor();
    await chooseEffort(page, 'quick');
    await page.getByRole('button', { name: 'Stop' }).click();
    await searched(page);
    desk.forgive('made to break down');
  });

  test('a hostile drawing is read for its lines; nothing of it runs, loads or becomes part of the page', async () => {
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await quick();
    await page.getByLabel('Choose a drawing').setInputFiles({ name: '<img src=x onerror=alert(1)>.svg', mimeType: 'image/svg+xml', buffer: Buffer.from(HOSTILE) });
    await page.locator('.ticket', { hasText: '100 × 60 mm' }).waitFor();
    await searched(page);
    await picture(page, 'hostile');
    for (const panel of ['Layouts found', 'Why this many', 'Money', 'Hand over']) await goTo(page, panel);
    await page.waitForTimeout(300);
    expect(await page.evaluate(() => (globalThis as { hostile?: unknown }).hostile)).toBeUndefined();
    expect(await page.locator('main img, main script, main foreignObject, main iframe, main style, main a[href^="javascript"], main image').count()).toBe(0);
    expect(await page.evaluate(() => [...document.querySelectorAll('*')].flatMap(({ attributes }) => [...attributes].filter(({ name }) => name.startsWith('on')).map(({ name }) => name)))).toEqual([]);
    expect(asked.filter((url) => !url.startsWith(desk.url) && !url.startsWith('blob:'))).toEqual([]);
  });

  test('the folder of static files works from any server, and then without one', async () => {
    const site = await serveStatic(join(root, 'dist', 'desk'));
    const { port } = site.address() as AddressInfo;
    await page.goto(`http://localhost:${port}/any/folder/`);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.getByRole('textbox', { name: 'Name of the job' }).fill('kept off line');
    await kept();
    await page.waitForTimeout(500);
    await new Promise((resolve) => { site.close(resolve); site.closeAllConnections(); });
    await page.reload();
    expect(await page.getByRole('textbox', { name: 'Name of the job' }).inputValue()).toBe('kept off line');
    await quick();
    await take(sample('label-oval.svg'));
    await searched(page);
  });
});

const HOSTILE = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="120mm" height="80mm" viewBox="0 0 120 80" onload="globalThis.hostile=1">
<script>globalThis.hostile = 2; fetch('http://example.org/stolen')</script>
<style>@import url(http://example.org/a.css); rect { fill: url(http://example.org/b.svg#c) }</style>
<foreignObject width="100" height="100"><body xmlns="http://www.w3.org/1999/xhtml"><script>globalThis.hostile = 3</script><iframe src="http://example.org/"/></body></foreignObject>
<image href="http://example.org/pixel.png" width="10" height="10"/>
<use xlink:href="http://example.org/d.svg#e"/>
<a href="javascript:globalThis.hostile=4"><path id="&lt;img src=x onerror=globalThis.hostile=5&gt;" class="&lt;b&gt;" d="M10 10H110V70H10Z" stroke="#000" fill="none" onclick="globalThis.hostile=6"/></a>
<path d="M60 10V70" stroke="url(javascript:alert(1))" stroke-width="1"/><text x="20" y="20">&lt;script&gt;globalThis.hostile = 7&lt;/script&gt;</text></svg>`;

const TYPES: Readonly<Record<string, string>> = { '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css', '.json': 'application/json', '.svg': 'image/svg+xml', '.wasm': 'application/wasm' };

function serveStatic(folder: string): Promise<Server> {
  const server = createServer((request, response) => {
    const path = (request.url ?? '').replace(/^\/any\/folder\//, '').split(/[?#]/)[0] || 'index.html';
    try {
      response.setHeader('Content-Type', TYPES[extname(path)] ?? 'application/octet-stream');
      response.end(readFileSync(join(folder, path)));
    } catch {
      response.statusCode = 404;
      response.end();
    }
  });
  return new Promise((resolve) => server.listen(0, 'localhost', () => resolve(server)));
}
