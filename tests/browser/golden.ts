import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { root } from './browser.ts';

/** Kept pictures are a quarter of the page's size: strokes blur together, so that one browser's edges look like another's. */
export const GOLDEN_PAGE = { viewport: { width: 1280, height: 900 }, deviceScaleFactor: 0.25, locale: 'en-GB', reducedMotion: 'reduce' } as const;
/** How far a colour may be off before a pixel counts as another one (pixelmatch's measure, 0 to 1). */
const COLOUR = 0.05;
/** Pixels that may differ in any square of so many a side: a blank that is gone is about 100 of them, a page drawn anew 5. */
const SQUARE = 24;
const MOST_DIFFERENT = 60;
/** One font everywhere; figures of time are left out. */
const STEADY = `
  *, *::before, *::after { font-family: 'Liberation Sans' !important; animation: none !important; transition: none !important; caret-color: transparent !important; }
  .search-line, .notice, .chart { visibility: hidden !important; }`;
const FOLDER = join(root, 'tests', 'browser', 'goldens');

/** Whether the font is there; says so where it is not, and fails in CI. */
export async function hasGoldenFont(page: Page): Promise<boolean> {
  const there = await page.evaluate(() => {
    const pen = document.createElement('canvas').getContext('2d')!;
    const width = (font: string) => ((pen.font = `40px ${font}`), pen.measureText('Blankwright imposes nothing').width);
    return width("'Liberation Sans', monospace") !== width('monospace') && width("'Liberation Sans', monospace") === width("'Liberation Sans', serif");
  });
  if (!there && process.env['CI'] === 'true') throw new Error('the font Liberation Sans is missing: the kept pictures of the desk need it');
  if (!there) console.warn('\n!!! The font Liberation Sans is missing: comparing the desk with its kept pictures is SKIPPED. Install fonts-liberation.\n');
  return there;
}

/** Compares the page with its kept picture; UPDATE_GOLDENS=1 keeps what is there now. What differs lies in out/desk. */
export async function expectLikeGolden(page: Page, name: string): Promise<void> {
  await page.addStyleTag({ content: STEADY });
  await page.evaluate(() => document.fonts.ready);
  await page.mouse.move(0, 0);
  const shot = PNG.sync.read(await page.screenshot({ animations: 'disabled' }));
  const file = join(FOLDER, `${name}.png`);
  if (process.env['UPDATE_GOLDENS'] === '1') {
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(file, PNG.sync.write(shot, { deflateLevel: 9, colorType: 2 }));
    return;
  }
  expect(existsSync(file), `${file} is missing: UPDATE_GOLDENS=1 makes it`).toBe(true);
  const golden = PNG.sync.read(readFileSync(file));
  expect([shot.width, shot.height]).toEqual([golden.width, golden.height]);
  const difference = new PNG({ width: shot.width, height: shot.height });
  const different = pixelmatch(golden.data, shot.data, difference.data, shot.width, shot.height, { threshold: COLOUR, includeAA: true, windowSize: SQUARE });
  if (different > MOST_DIFFERENT) {
    mkdirSync(join(root, 'out', 'desk'), { recursive: true });
    for (const [what, picture] of [['is', shot], ['difference', difference]] as const) writeFileSync(join(root, 'out', 'desk', `golden-${name}-${what}.png`), PNG.sync.write(picture));
  }
  expect(different, `pixels of ${name} that differ within a square; see out/desk/golden-${name}-*.png`).toBeLessThanOrEqual(MOST_DIFFERENT);
}
