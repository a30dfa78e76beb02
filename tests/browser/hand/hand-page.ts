import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import type { Page } from 'playwright-core';
import type { LayoutFile } from '../../../src/layout/layout-file.ts';
import { browserIsHere, launch, root, watch } from '../browser.ts';
import { scratchFolder, serveFolder } from './served-folder.ts';

const here = import.meta.dirname;

export interface HandPage {
  readonly page: Page;
  /** Puts a layout under the hand, as large as the window. */
  mount(layout: LayoutFile, options?: { locked?: number[]; unit?: 'mm' | 'in' }): Promise<void>;
  close(): Promise<void>;
}

export interface HandPages {
  open(size?: { width: number; height: number }, colours?: 'light' | 'dark'): Promise<HandPage>;
  close(): Promise<void>;
}

/** Builds the page with the hand alone and serves it; undefined where there is no browser. */
export async function handPages(): Promise<HandPages | undefined> {
  if (!browserIsHere()) return undefined;
  const browser = await launch();
  const folder = scratchFolder();
  await build({ entryPoints: [join(here, 'page', 'harness.ts')], outfile: join(folder.path, 'harness.js'), bundle: true, format: 'esm', target: 'es2022', logLevel: 'error' });
  await build({ entryPoints: [join(root, 'src', 'desk', 'hand', 'hand.css')], outdir: folder.path, bundle: true, logLevel: 'error' });
  for (const file of ['page.html', 'page.css']) copyFileSync(join(here, 'page', file), join(folder.path, file));
  const served = await serveFolder(folder.path);
  return {
    open: async (size = { width: 1200, height: 800 }, colours = 'light') => {
      const page = await browser.newPage({ viewport: size, colorScheme: colours });
      const errors = watch(page);
      await page.goto(`${served.address}/page.html`);
      return {
        page,
        mount: async (layout, options = {}) => {
          await page.evaluate(([file, more]) => window.harness.mount(file, more), [layout, options] as const);
        },
        close: async () => {
          await page.close();
          if (errors.length > 0) throw new Error(`the page had errors:\n${errors.join('\n')}`);
        },
      };
    },
    close: async () => {
      await browser.close();
      served.close();
      folder.remove();
    },
  };
}
