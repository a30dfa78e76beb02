import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { chromium, type Browser, type Locator, type Page } from 'playwright-core';
import { openFiles } from '../../src/cli/desk-files.ts';
import { serveDesk, type DeskServer } from '../../src/cli/desk-server.ts';
import type { Answers } from '../../src/cli/serving/http.ts';

export const root = join(import.meta.dirname, '..', '..');
export const sample = (name: string) => join(root, 'samples', 'drawings', name);
const CHROMIUM = '/usr/bin/chromium';
const FLAGS = ['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];

/** Whether the tests in a browser can run; says so where they cannot, and fails in CI. */
export function browserIsHere(): boolean {
  if (existsSync(CHROMIUM)) return true;
  if (process.env['CI'] === 'true') throw new Error(`${CHROMIUM} is missing: the tests of the desk need it`);
  console.warn(`\n!!! ${CHROMIUM} is missing: the tests of the desk in a browser are SKIPPED. Install chromium to run them.\n`);
  return false;
}

export function launch(): Promise<Browser> {
  return chromium.launch({ executablePath: CHROMIUM, args: FLAGS });
}

export function serve(paths: readonly string[] = [], answers: Answers = {}): Promise<DeskServer> {
  return serveDesk(join(root, 'dist', 'desk'), openFiles(paths), { must: 0 }, answers);
}

/** What goes wrong on a page, the policy's refusals included, is added to `faults`. */
export function watch(page: Page, faults: string[] = []): string[] {
  page.on('pageerror', (error) => faults.push(String(error.stack)));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') faults.push(message.text());
  });
  return faults;
}

/** The search has come to its end, in either language. */
export async function searched(page: Page): Promise<void> {
  await page.locator('.ticket .search-line').filter({ hasText: /found in|gefunden in/ }).waitFor({ timeout: 90_000 });
}

/** How long is searched; leaves the panel of layouts open. */
export async function chooseEffort(page: Page, effort: 'quick' | 'normal' | 'thorough'): Promise<void> {
  await goTo(page, 'Layouts found');
  await page.getByLabel('Effort').selectOption(effort);
}

/** Every sheet of the lists compared in money, with invented rates; their board is returned. */
export async function compareSheets(page: Page): Promise<Locator> {
  await chooseEffort(page, 'quick');
  await goTo(page, 'Money');
  await page.getByLabel('Fill what is empty with invented rates').check();
  await goTo(page, 'Sheet');
  await page.getByLabel('Board', { exact: true }).selectOption('folding-300');
  await page.getByRole('button', { name: 'Compare them all' }).click();
  return page.getByRole('region', { name: 'Every sheet that could be bought' });
}

/** A panel by its name on the ticket. */
export async function goTo(page: Page, panel: string): Promise<void> {
  await page.locator('.ticket').getByRole('button', { name: panel }).click();
}

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Rule and elements of everything that axe finds on the page as it stands. */
export async function findings(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { violations } = await (globalThis as unknown as { axe: { run(): Promise<{ violations: { id: string; nodes: { html: string; failureSummary: string }[] }[] }> } }).axe.run();
    return violations.map(({ id, nodes }) => `${id}: ${nodes.slice(0, 3).map(({ html, failureSummary }) => `${html.slice(0, 160)} ${failureSummary.slice(0, 200)}`).join(' | ')}`);
  });
}

/** Pictures to look at; the folder is not kept. */
export async function picture(page: Page, name: string): Promise<void> {
  const folder = join(root, 'out', 'desk');
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name}.png`) });
}
