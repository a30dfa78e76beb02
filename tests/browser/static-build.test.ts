import { createHash } from 'node:crypto';
import { createServer, type Server } from 'node:http';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { browserIsHere, chooseEffort, goTo, picture, root, sample, searched } from './browser.ts';
import { withDesk } from './with-desk.ts';

const TYPES: Readonly<Record<string, string>> = { '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css', '.json': 'application/json', '.svg': 'image/svg+xml', '.wasm': 'application/wasm' };
/** Where a web server may have it, among other things. */
const PATH = '/tools/blankwright/';

/** The folder of static files behind a web server, below a path of it. */
describe.skipIf(!browserIsHere())('the static build', { timeout: 150_000 }, () => {
  const desk = withDesk();
  let folder: string;
  let site: Server;
  let asked: string[] = [];
  const port = () => (site.address() as AddressInfo).port;
  const address = (host = 'localhost') => `http://${host}:${port()}${PATH}`;

  beforeAll(async () => {
    site = createServer((request, response) => {
      const path = (request.url ?? '').split(/[?#]/)[0]!;
      asked.push(path);
      try {
        if (!path.startsWith(PATH)) throw new Error('not below the path');
        const file = path.slice(PATH.length) || 'index.html';
        response.setHeader('Content-Type', TYPES[extname(file)] ?? 'application/octet-stream');
        response.setHeader('Cache-Control', 'max-age=3600');
        response.end(readFileSync(join(folder, file)));
      } catch {
        response.statusCode = 404;
        response.end();
      }
    });
    await new Promise<void>((resolve) => site.listen(0, resolve));
  });
  afterAll(() => site.close());
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'desk-static-'));
    cpSync(join(root, 'dist', 'desk'), folder, { recursive: true });
    asked = [];
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  const open = async (host?: string) => {
    const page = await desk.open();
    await page.goto(address(host));
    return page;
  };
  const digest = (content: string) => createHash('sha256').update(content).digest('hex');
  /** Another build: page and worker say so, and the service worker knows it. */
  const newBuild = ({ complete = true } = {}) => {
    let worker = readFileSync(join(folder, 'service-worker.js'), 'utf8');
    for (const name of ['page.js', 'engine-worker.js']) {
      const before = readFileSync(join(folder, name), 'utf8');
      const after = `globalThis.build = 'second';\n${before}`;
      worker = worker.replace(digest(before), digest(after));
      if (complete || name === 'page.js') writeFileSync(join(folder, name), after);
    }
    writeFileSync(join(folder, 'service-worker.js'), worker.replace(/blankwright-desk-\$\{"?\w+"?\}|blankwright-desk-\w+/, (name) => `${name}-second`));
  };
  const buildOf = (page: Page) => page.evaluate(() => (globalThis as { build?: string }).build ?? 'first');
  const said = (page: Page) => page.getByRole('status').filter({ hasText: 'A new version of the desk is there' });
  const served = (page: Page) => page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));

  test('below a path, and without a network: everything it asks for lies below that path', async () => {
    const page = await open();
    await served(page);
    expect(asked.filter((path) => !path.startsWith(PATH) && path !== '/favicon.ico')).toEqual([]);
    await page.context().setOffline(true);
    await page.reload();
    await chooseEffort(page, 'quick');
    await goTo(page, 'Drawing');
    await page.getByLabel('Choose a drawing').setInputFiles(sample('label-oval.svg'));
    await searched(page);
    await goTo(page, 'Hand over');
    await page.locator('ul.files').waitFor();
    await page.context().setOffline(false);
  });

  test('a new build is said, waits while a tab holds the old one, and is taken whole at the next load', async () => {
    const page = await open();
    await served(page);
    const other = await desk.beside(page);
    await other.goto(address());
    newBuild();
    await page.reload();
    await said(page).waitFor();
    await picture(page, 'new-version');
    // The old page goes on with its own build, whatever the server has by now.
    expect(await buildOf(page)).toBe('first');
    await page.getByLabel('Choose a drawing').setInputFiles(sample('label-oval.svg'));
    await page.locator('.ticket .state-sound').waitFor({ timeout: 60_000 });
    for (const worker of page.workers()) expect(await worker.evaluate(() => (globalThis as { build?: string }).build ?? 'first')).toBe('first');
    await page.reload();
    await said(page).waitFor();
    expect(await buildOf(page)).toBe('first');
    await other.close();
    // A closed tab may be counted for a moment more.
    for (let tries = 0; tries < 8 && (await buildOf(page).catch(() => '')) !== 'second'; tries++) {
      await page.getByRole('button', { name: 'Load it now' }).click({ timeout: 5000 }).catch(() => undefined);
      // Long enough to begin on a busy machine: a reload in the middle would only begin again.
      for (let waited = 0; waited < 16 && (await buildOf(page).catch(() => '')) !== 'second'; waited++) await page.waitForTimeout(500);
    }
    // What a page had asked for when it was loaded anew.
    desk.forgive('Failed to fetch');
    expect(await buildOf(page)).toBe('second');
    await page.locator('.ticket', { hasText: 'label-oval' }).waitFor();
    expect(await said(page).count()).toBe(0);
    await expect.poll(async () => Promise.all(page.workers().map((worker) => worker.evaluate(() => (globalThis as { build?: string }).build ?? 'first')))).toContain('second');
  });

  test('a server that has only some of the new files: the old build stays', async () => {
    const page = await open();
    await served(page);
    newBuild({ complete: false });
    await page.reload();
    await page.waitForTimeout(3000);
    expect(await said(page).count()).toBe(0);
    await page.reload();
    expect(await buildOf(page)).toBe('first');
  });

  test('over plain HTTP from another machine, where browsers withhold much: it works all the same', async () => {
    const host = Object.values(networkInterfaces()).flat().find((one) => one && !one.internal && one.family === 'IPv4')?.address;
    if (host === undefined) {
      console.warn('!!! this machine has no address but its own: the page over plain HTTP is NOT tried.');
      return;
    }
    const page = await open(host);
    expect(await page.evaluate(() => isSecureContext)).toBe(false);
    await chooseEffort(page, 'quick');
    await goTo(page, 'Drawing');
    await page.getByLabel('Choose a drawing').setInputFiles(sample('label-oval.svg'));
    await searched(page);
    await page.locator('.ticket .state-sound').waitFor();
  });
});
