import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { at, layoutWith, rectangle } from '../../support/layouts.ts';
import { carton } from '../../desk/hand/frames.ts';
import { handPages, type HandPage, type HandPages } from './hand-page.ts';
import { workWhileDragging } from './drag-work.ts';

const CARDS = layoutWith([rectangle('card', 100, 60)], [at('card', 20, 20), at('card', 300, 20), at('card', 520, 400, 90)], { usable: { x: 10, y: 10, width: 980, height: 680 } });

let pages: HandPages | undefined;

beforeAll(async () => {
  pages = await handPages();
});
afterAll(() => pages?.close());

/** Runs with a page, or is skipped where there is no browser. */
function onPage(name: string, run: (hand: HandPage) => Promise<void>): void {
  test(name, async ({ skip }) => {
    if (!pages) return skip('no browser');
    const hand = await pages.open();
    await run(hand);
    return hand.close();
  });
}

const blank = (page: Page, id: number) => page.locator(`.hand-blanks [data-id="${id}"]`);

/** The middle of a blank on the screen. */
async function middle(page: Page, id: number): Promise<{ x: number; y: number }> {
  const box = (await blank(page, id).locator('use').boundingBox())!;
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Millimetres in one pixel at the present zoom, from the card of 100 mm. */
async function pixel(page: Page): Promise<number> {
  return (await blank(page, 1).locator('use').evaluate((use) => (use as unknown as SVGGraphicsElement).getScreenCTM()!.a)) ** -1;
}

const placements = (page: Page) => page.evaluate(() => window.harness.hand!.state.layout.placements.map(({ x, y, rotation }) => [x, y, rotation]));
const judged = (page: Page) => page.evaluate(() => window.harness.hand!.judged);

describe('the hand in a browser', () => {
  onPage('drags a blank to contact with its neighbour, undoes and redoes it', async ({ page, mount }) => {
    await mount(CARDS);
    expect(await judged(page)).toBe('sound');
    const from = await middle(page, 1);
    const mm = await pixel(page);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    // 3 mm too far to the right and 2 mm too low: drawn to the gap of 6 and to the neighbour's line.
    await page.mouse.move(from.x + 60, from.y - 30);
    await page.mouse.move(from.x + (174 + 3) / mm, from.y + 2 / mm, { steps: 4 });
    await page.waitForFunction(() => window.harness.hand!.judged === 'not judged');
    await page.mouse.up();
    await page.waitForFunction(() => window.harness.hand!.judged === 'sound');
    expect((await placements(page))[0]).toEqual([194, 20, 0]);
    await blank(page, 1).focus();
    await page.keyboard.press('Control+z');
    expect((await placements(page))[0]).toEqual([20, 20, 0]);
    await page.keyboard.press('Control+Shift+z');
    expect((await placements(page))[0]).toEqual([194, 20, 0]);
    expect(await page.evaluate(() => window.harness.changes.length)).toBe(3);
  });

  onPage('shows faults while blanks overlap, and Escape puts everything back', async ({ page, mount }) => {
    await mount(CARDS);
    const from = await middle(page, 1);
    const to = await middle(page, 2);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x + 20, from.y - 20);
    await page.mouse.move(to.x - 30, to.y, { steps: 3 });
    await page.waitForFunction(() => window.harness.hand!.judged === 'faulty');
    expect(await page.locator('.hand-flag').count()).toBe(1);
    expect(await blank(page, 2).getAttribute('class')).toContain('is-faulty');
    expect(await page.locator('.hand-status').textContent()).toMatch(/faulty.*overlaps a neighbour/);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    expect((await placements(page))[0]).toEqual([20, 20, 0]);
    expect(await judged(page)).toBe('sound');
    expect(await page.evaluate(() => window.harness.changes.length)).toBe(0);
  });

  onPage('nothing is rescaled under the pointer: a picture that shrinks and moves in the middle of a drag moves no blank', async ({ page, mount }) => {
    await mount(CARDS);
    const from = await middle(page, 1);
    const mm = await pixel(page);
    await page.keyboard.down('Alt');
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x + 60, from.y - 100, { steps: 3 });
    await page.evaluate(() => {
      const host = document.getElementById('host')!;
      host.style.flex = 'none';
      host.style.height = '420px';
      host.style.marginTop = '40px';
    });
    await page.waitForTimeout(100);
    await page.mouse.move(from.x + 61, from.y - 100);
    await page.mouse.move(from.x + 60, from.y - 100);
    await page.mouse.up();
    await page.keyboard.up('Alt');
    const [x, y] = (await placements(page)).find(([at]) => at !== 300 && at !== 520)!;
    expect([x, y].map(Math.round)).toEqual([Math.round(20 + 60 * mm), Math.round(20 + 100 * mm)]);
    // Once the pointer has let go the whole sheet is seen in the smaller picture.
    await page.waitForFunction((before) => document.querySelector<SVGGraphicsElement>('.hand-blanks use')!.getScreenCTM()!.a < before * 0.8, 1 / mm);
  });

  onPage('the line of words below the sheet is of one height, whatever it says', async ({ page, mount }) => {
    await page.setViewportSize({ width: 620, height: 700 });
    await mount(CARDS);
    const heights = () => page.evaluate(() => ['.hand-status', '.hand-stage'].map((part) => document.querySelector(part)!.getBoundingClientRect().height));
    const before = await heights();
    const [from, to] = [await middle(page, 1), await middle(page, 2)];
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x - 15, to.y, { steps: 4 });
    await page.waitForFunction(() => window.harness.hand!.judged === 'faulty');
    expect((await page.locator('.hand-status').textContent())!.length).toBeGreaterThan(90);
    expect(await heights()).toEqual(before);
    await page.mouse.up();
    await page.getByRole('button', { name: 'Lock' }).click();
    await page.getByRole('button', { name: 'Measure' }).click();
    expect(await heights()).toEqual(before);
  });

  onPage('keys are heard before anybody points at the picture, and what is typed in a field stays there', async ({ page, mount }) => {
    await mount(CARDS);
    await page.keyboard.press('Control+a');
    expect(await page.locator('.hand-status').textContent()).toContain('3 of 3 ups selected');
    expect(await page.evaluate(() => String(getSelection()))).toBe('');
    await page.keyboard.press('ArrowUp');
    expect(await placements(page)).toContainEqual([20, 21, 0]);
    await page.evaluate(() => document.querySelector('h1')!.append(document.createElement('input')));
    await page.locator('h1 input').focus();
    await page.keyboard.press('d');
    await page.keyboard.press('Control+a');
    await page.keyboard.press('Delete');
    await page.keyboard.press('Control+z');
    expect(await placements(page)).toHaveLength(3);
    expect(await placements(page)).toContainEqual([20, 21, 0]);
    // A button that was pressed does not keep the letters to itself.
    await page.getByRole('button', { name: 'Whole sheet' }).click();
    await page.keyboard.press('Control+z');
    expect(await placements(page)).toContainEqual([20, 20, 0]);
  });

  onPage('what could not be done stays said after the key is let go', async ({ page, mount }) => {
    await mount(CARDS);
    await page.keyboard.press('Control+a');
    await page.keyboard.press('n');
    for (const key of ['Control+ArrowLeft', 'Control+ArrowLeft']) await page.keyboard.press(key);
    expect(await page.locator('.hand-status').textContent()).toContain('the rules allow no further that way');
    await page.keyboard.press('Control+ArrowDown');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Control+ArrowLeft');
    expect(await page.locator('.hand-status').textContent()).toMatch(/faulty.*no free place to slide to/);
  });

  onPage('lists below the buttons stay within the window', async ({ page, mount }) => {
    await page.setViewportSize({ width: 900, height: 700 });
    await mount(CARDS);
    for (const title of ['Align', 'Layers']) {
      await page.locator('summary', { hasText: title }).click();
      await page.locator('details[open] .hand-menu-list').waitFor();
      await page.waitForTimeout(50);
      const { right, wide, page: pageWide } = await page.evaluate(() => ({ right: document.querySelector('details[open] .hand-menu-list')!.getBoundingClientRect().right, wide: innerWidth, page: document.documentElement.scrollWidth }));
      expect(right).toBeLessThanOrEqual(wide);
      expect(pageWide).toBeLessThanOrEqual(wide);
      await page.keyboard.press('Escape');
      await page.locator('summary', { hasText: title }).click();
    }
  });

  onPage('with inches the arrow keys move by steps of an inch, and the list of keys names them', async ({ page, mount }) => {
    await mount(CARDS, { unit: 'in' });
    await page.locator('.hand-blanks [tabindex="0"]').focus();
    await page.keyboard.press('n');
    for (const key of ['ArrowUp', 'Alt+ArrowRight', 'Alt+ArrowRight']) await page.keyboard.press(key);
    expect(await placements(page)).toContainEqual([20.254, 21.27, 0]);
    await page.keyboard.press('?');
    const list = page.getByRole('dialog');
    await list.getByText('move by 0.05 in; with').waitFor();
    await list.getByText('move by 0.005 in', { exact: true }).waitFor();
    expect(await list.innerText()).not.toContain('mm');
  });

  onPage('everything goes by keys: choose, move, turn, copy, lock, delete', async ({ page, mount }) => {
    await mount(CARDS);
    await page.locator('.hand-blanks [tabindex="0"]').focus();
    await page.keyboard.press('n');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Alt+ArrowRight');
    await page.keyboard.press('Shift+ArrowUp');
    expect((await placements(page))[0]).toEqual([300, 20, 0]);
    expect(await placements(page)).toContainEqual([20.1, 87, 0]);
    await page.keyboard.press('r');
    expect(await placements(page)).toContainEqual([100.1, 67, 90]);
    await page.keyboard.press('Control+ArrowLeft');
    expect(await placements(page)).toContainEqual([70, 67, 90]);
    await page.keyboard.press('d');
    expect(await placements(page)).toHaveLength(4);
    await page.keyboard.press('l');
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('.hand-status').textContent()).toContain('Locked blanks stay where they are');
    expect(await page.evaluate(() => window.harness.hand!.state.locked.length)).toBe(1);
    await page.keyboard.press('l');
    await page.keyboard.press('Delete');
    expect(await placements(page)).toHaveLength(3);
    await page.keyboard.press('s');
    await page.keyboard.press('t');
    expect(await page.evaluate(() => window.harness.asks)).toEqual(['solve-rest', 'tidy']);
    // The blank that has the focus is the one that was chosen.
    await page.keyboard.press('p');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-selected'))).toBe('true');
  });

  onPage('rows × columns by the form, which refuses what makes no sense', async ({ page, mount }) => {
    await mount(CARDS);
    await page.mouse.click((await middle(page, 3)).x, (await middle(page, 3)).y);
    await page.getByRole('button', { name: 'Rows × columns…' }).click();
    await page.getByText('Most that fit so').waitFor();
    await page.getByLabel('Rows (away from the gripper)').fill('zwei');
    await page.getByRole('button', { name: 'Lay out' }).click();
    expect(await page.getByRole('alert').textContent()).toContain('whole number');
    await page.getByLabel('Rows (away from the gripper)').fill('2');
    await page.getByLabel('Columns (along the gripper edge)').fill('3');
    await page.getByLabel('Step along').fill('70,5');
    await page.getByRole('button', { name: 'Lay out' }).click();
    expect((await placements(page)).filter(([, , rotation]) => rotation === 90)).toEqual([[520, 400, 90], [590.5, 400, 90], [661, 400, 90], [520, 506, 90], [590.5, 506, 90], [661, 506, 90]]);
  });

  onPage('rows × columns of the whole sheet: what fits stands there, is typed over at once, and more is refused', async ({ page, mount }) => {
    await mount(CARDS);
    await page.getByRole('button', { name: 'Rows × columns…' }).click();
    const [rows, columns] = [page.getByLabel('Rows (away from the gripper)'), page.getByLabel('Columns (along the gripper edge)')];
    expect([await rows.inputValue(), await columns.inputValue()]).toEqual(['10', '9']);
    expect(await page.getByLabel('The whole sheet anew').isChecked()).toBe(true);
    await page.keyboard.type('4');
    expect(await rows.inputValue()).toBe('4');
    await page.keyboard.press('Tab');
    await page.keyboard.type('42');
    await page.keyboard.press('Enter');
    expect(await page.getByRole('alert').textContent()).toContain('do not fit');
    expect(await page.getByText('Most that fit so').textContent()).toBe('Most that fit so: 10 rows of 9.');
    await columns.fill('3');
    await page.keyboard.press('Enter');
    expect(await placements(page)).toHaveLength(12);
    expect(await judged(page)).toBe('sound');
    await page.keyboard.press('Control+z');
    expect(await placements(page)).toHaveLength(3);
  });

  onPage('how work stands is told beside the words, with a button and Escape to stop it', async ({ page, mount }) => {
    await mount(CARDS);
    const told = page.locator('.hand-working');
    expect(await told.isVisible()).toBe(false);
    await page.keyboard.press('s');
    await page.evaluate(() => window.harness.hand!.update({ working: { wish: 'solve-rest', seconds: 3, ups: 12, limit: 15 } }));
    expect(await told.innerText()).toMatch(/12 ups so far · at most 15 · 3\.0\ss/);
    expect(await page.locator('.hand-status').textContent()).toContain('solving the rest');
    await page.keyboard.press('s');
    await page.keyboard.press('Escape');
    await told.getByRole('button', { name: 'Stop' }).click();
    expect(await page.evaluate(() => window.harness.asks)).toEqual(['solve-rest', 'stop', 'stop']);
    await page.evaluate(() => window.harness.hand!.update({ working: undefined, notice: 'rest-no-better' }));
    expect(await told.isVisible()).toBe(false);
    expect(await page.locator('.hand-status').textContent()).toContain('Nothing better was found');
  });

  onPage('the wheel zooms at the pointer down to a hundredth of a millimetre, and the sheet is drawn anew when it rests', async ({ page, mount }) => {
    await mount(CARDS);
    const under = (x: number, y: number) => page.locator('.hand-blanks [data-id="1"] use').evaluate((use, [atX, atY]) => {
      const map = (use as unknown as SVGGraphicsElement).getScreenCTM()!;
      return { x: (atX - map.e) / map.a, y: (atY - map.f) / map.d };
    }, [x, y] as const);
    const [x, y] = await middle(page, 1).then((at) => [Math.round(at.x), Math.round(at.y)] as const);
    const before = await under(x, y);
    await page.mouse.move(x, y);
    for (let i = 0; i < 60; i++) await page.mouse.wheel(0, -100);
    await page.waitForTimeout(300);
    expect(await page.locator('.hand-drawing').first().evaluate((drawing) => drawing.getAttribute('style'))).not.toContain('scale');
    expect(1 / (await pixel(page))).toBeGreaterThan(100);
    const after = await under(x, y);
    expect(Math.abs(after.x - before.x) + Math.abs(after.y - before.y)).toBeLessThan(0.002);
    // At this zoom a drag of few pixels moves by hundredths.
    await page.mouse.move(x + 10, y);
    await page.mouse.down();
    await page.keyboard.down('Alt');
    await page.mouse.move(x + 18, y, { steps: 2 });
    await page.mouse.up();
    await page.keyboard.up('Alt');
    expect((await placements(page))[0]![0]).toBeCloseTo(20.01, 3);
  });

  onPage('pan by the middle button and by the space bar moves the view and nothing else', async ({ page, mount }) => {
    await mount(CARDS);
    const from = await middle(page, 1);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down({ button: 'middle' });
    await page.mouse.move(from.x + 50, from.y - 30, { steps: 3 });
    await page.mouse.up({ button: 'middle' });
    const moved = await middle(page, 1);
    expect([Math.round(moved.x - from.x), Math.round(moved.y - from.y)]).toEqual([50, -30]);
    expect(await page.evaluate(() => window.harness.changes.length)).toBe(0);
  });

  onPage('measures from corner to corner, in inches where they are wanted', async ({ page, mount }) => {
    await mount(CARDS, { unit: 'in' });
    const [a, b] = [(await blank(page, 1).locator('use').boundingBox())!, (await blank(page, 2).locator('use').boundingBox())!];
    await page.getByRole('button', { name: 'Measure' }).click();
    await page.mouse.move(a.x + a.width - 2, a.y + a.height - 2);
    await page.mouse.down();
    await page.mouse.move(b.x + 3, b.y + b.height - 3, { steps: 3 });
    await page.mouse.up();
    // 300 − 120 = 180 mm.
    expect(await page.locator('.hand-status').textContent()).toContain('7.087 in');
  });

  onPage('two fingers pinch, one finger moves a blank', async ({ page, mount }) => {
    await mount(CARDS);
    const client = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number; id: number }[]) => client.send('Input.dispatchTouchEvent', { type, touchPoints: points });
    const before = await pixel(page);
    await touch('touchStart', [{ x: 600, y: 300, id: 1 }]);
    await touch('touchStart', [{ x: 600, y: 300, id: 1 }, { x: 700, y: 300, id: 2 }]);
    await touch('touchMove', [{ x: 500, y: 300, id: 1 }, { x: 800, y: 300, id: 2 }]);
    await touch('touchEnd', []);
    await page.waitForFunction(() => document.querySelector<SVGElement>('.hand-drawing')!.style.transform === '');
    expect(before / (await pixel(page))).toBeCloseTo(3, 1);
    await page.getByRole('button', { name: 'Whole sheet' }).click();
    await page.waitForFunction(() => document.querySelector<SVGElement>('.hand-drawing')!.style.transform === '');
    const at = await middle(page, 1);
    await touch('touchStart', [{ ...at, id: 1 }]);
    await touch('touchMove', [{ x: at.x + 30, y: at.y - 80, id: 1 }]);
    await touch('touchMove', [{ x: at.x + 60, y: at.y - 160, id: 1 }]);
    await page.waitForTimeout(50);
    await touch('touchEnd', []);
    expect(await page.evaluate(() => window.harness.changes.length)).toBe(1);
  });

  onPage('axe finds nothing to object to, and blanks say where they stand', async ({ page, mount }) => {
    await mount(CARDS, { locked: [1] });
    await page.evaluate(axeSource());
    const found = await page.evaluate(() => (window as unknown as { axe: { run: () => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }).axe.run());
    expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`)).toEqual([]);
    expect(await blank(page, 2).getAttribute('aria-label')).toBe('Station 2, card, rotation 0°, 300 mm from the left, 20 mm from the gripper, locked');
  });

  onPage('the work of a frame while dragging does not grow with the number of blanks', async (hand) => {
    const few = await workWhileDragging(hand, carton(8), 4, 3);
    const many = await workWhileDragging(hand, carton(8), 25, 20);
    expect(many.frames).toBeGreaterThan(15);
    // Elements restyled, objects laid out anew, nodes changed: counted by the browser's trace and a mutation observer.
    expect(many.restyledPerFrame).toBeLessThan(60);
    expect(many.restyledPerFrame).toBeLessThanOrEqual(few.restyledPerFrame * 1.5 + 10);
    expect(many.laidOutPerFrame).toBeLessThan(80);
    expect(many.changedNodesPerFrame).toBeLessThan(60);
  });
});

/** Evaluated rather than added as a script: the page's own policy forbids foreign scripts. */
function axeSource(): string {
  return readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
}
