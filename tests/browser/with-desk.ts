import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import type { DeskServer } from '../../src/cli/desk-server.ts';
import type { Answers } from '../../src/cli/serving/http.ts';
import { launch, serve, watch } from './browser.ts';

/** The page in a window of usual size. */
export const USUAL_PAGE = { viewport: { width: 1280, height: 900 }, locale: 'en-GB' } as const;
/** So that axe can be brought onto the page. */
export const WITH_AXE = { bypassCSP: true } as const;

export interface DeskTests {
  readonly url: string;
  /** A page of its own, with nothing kept; with `files`, served by a desk of its own that begins with them. */
  open(options?: BrowserContextOptions, files?: readonly string[]): Promise<Page>;
  /** Another page in the same browser as `page`, not yet anywhere. */
  beside(page: Page): Promise<Page>;
  /** What a test makes go wrong on purpose is no fault. */
  forgive(part: string): void;
}

/** One browser and one desk for the tests of a group; a fault on any page fails its test, and pages are closed after it. */
export function withDesk(files: readonly string[] = [], answers: () => Promise<Answers> = async () => ({})): DeskTests {
  let browser: Browser;
  let server: DeskServer;
  let faults: string[] = [];
  const closing: (() => Promise<void>)[] = [];

  beforeAll(async () => {
    browser = await launch();
    server = await serve(files, await answers());
  }, 120_000);
  afterEach(async () => {
    const found = faults;
    faults = [];
    for (const close of closing.splice(0)) await close();
    expect(found).toEqual([]);
  });
  afterAll(async () => {
    await browser.close();
    await server.close();
  });

  return {
    get url() {
      return server.url;
    },
    open: async (options = {}, ownFiles) => {
      const context = await browser.newContext({ ...USUAL_PAGE, ...options });
      closing.push(() => context.close());
      const own = ownFiles && (await serve(ownFiles));
      if (own) closing.push(() => own.close());
      const page = await context.newPage();
      watch(page, faults);
      await page.goto((own ?? server).url);
      return page;
    },
    beside: async (page) => {
      const other = await page.context().newPage();
      watch(other, faults);
      return other;
    },
    forgive: (part) => {
      const left = faults.filter((fault) => !fault.includes(part));
      faults.splice(0, faults.length, ...left);
    },
  };
}
