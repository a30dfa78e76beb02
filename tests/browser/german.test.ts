import { join } from 'node:path';
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, describe, expect, test } from 'vitest';
import { libraryAnswers } from '../../src/cli/serving/library-answers.ts';
import type { Library } from '../../src/shop/library/open-library.ts';
import { writeLayoutFile } from '../../src/layout/layout-file.ts';
import { scratchFolder } from '../shop/support.ts';
import { englishIn, englishWords, saidOn } from '../support/english-words.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';
import { shopLibrary } from '../support/shop-library.ts';
import { browserIsHere, goTo, picture, root, sample, searched } from './browser.ts';
import { withDesk } from './with-desk.ts';

const BROKEN = ['no-names', 'crosses-itself', 'sticks-out', 'doubled', 'two-roles', 'no-unit', 'cut-in-two', 'bad-path', 'script', 'cut-off', 'gap-wide', 'empty', 'no-outline'];

/** Those of them that are refused: the desk keeps the drawing it has. */
const NO_DRAWING = ['cut-off', 'empty'];

/** Names in the data: of records, drawings and jobs. */
const records = JSON.parse(readFileSync(join(root, 'dist', 'desk', 'records.json'), 'utf8')) as Record<string, { id: string; record: { name?: string } }[]>;
const NAMES = [
  ...Object.values(records).flatMap((list) => list.flatMap(({ id, record }) => [record.name ?? id, id])),
  'reverse-tuck-small', 'straight-tuck-small', 'label-rounded', 'label-wrap', ...BROKEN, 'Spice box', 'Gift tray', 'Invented press', 'invented-press', 'new widths', 'mint tea', 'Darjeeling',
];

test('the list of English words holds what the desk speaks of', () => {
  const words = englishWords();
  expect(['sheet', 'sheets', 'gap', 'gripper', 'board', 'ups', 'blank', 'blanks', 'left', 'assumed', 'wider', 'search', 'found', 'crease', 'layout', 'drawing', 'waste', 'margin'].filter((word) => !words.has(word))).toEqual([]);
});

/** The whole page in German, panel by panel, with answers, faults and refusals: no word of the English tables stands on it. */
describe.skipIf(!browserIsHere())('the German page', { timeout: 170_000 }, () => {
  const folder = scratchFolder();
  let library: Library;
  const desk = withDesk([sample('reverse-tuck-small.svg')], async () => {
    library = await shopLibrary(join(folder, 'shop.blankwright'));
    return libraryAnswers(library);
  });
  afterAll(() => library.close());

  const open = async (): Promise<Page> => {
    const page = await desk.open({ locale: 'de-DE' });
    await page.locator('.ticket .state-sound').waitFor();
    await page.keyboard.press('Alt+KeyS');
    await searched(page);
    return page;
  };
  const look = async (page: Page, name: string) => {
    await picture(page, `german-${name}`);
    expect(englishIn(await saidOn(page), NAMES), name).toEqual([]);
  };
  const take = (page: Page, name: string, content: string | Buffer) => page.locator('main input[type=file]').first().setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(content) });

  test('drawings with faults, limits that cannot be, a layout with faults', async () => {
    const page = await open();
    const jobName = () => page.locator('.job-name input').inputValue();
    await look(page, 'drawing');
    for (const name of BROKEN) {
      await take(page, `${name}.svg`, readFileSync(join(root, 'samples', 'broken', `${name}.svg`)));
      if (NO_DRAWING.includes(name)) {
        await page.getByRole('alert').filter({ hasText: `${name}.svg` }).locator('.issue').first().waitFor();
        expect(await jobName(), name).not.toBe(name);
      } else {
        await expect.poll(jobName, { timeout: 20_000 }).toBe(name);
        await page.locator('main .issue').first().waitFor();
      }
      await look(page, `drawing-${name}`);
    }
    await take(page, 'straight-tuck-small.svg', readFileSync(sample('straight-tuck-small.svg')));
    await page.locator('.ticket', { hasText: 'straight-tuck-small' }).waitFor();
    await goTo(page, 'Grenzen');
    await page.getByLabel('Beschnitt', { exact: true }).fill('9');
    await page.locator('main .issue').first().waitFor();
    await look(page, 'limits');
    await page.getByLabel('Beschnitt', { exact: true }).fill('');
    await page.getByLabel('Linke Seite', { exact: true }).fill('x');
    await look(page, 'limits-fault');
    await page.getByLabel('Linke Seite', { exact: true }).fill('1200');
    await page.getByText(/^Vom Bogen .* bleibt nichts/).first().waitFor();
    await look(page, 'limits-nothing-left');
    await page.getByLabel('Linke Seite', { exact: true }).fill('');
    await goTo(page, 'Gefundene Standbogen');
    await page.locator('.ticket .state-sound').waitFor();
    await page.keyboard.press('Alt+KeyS');
    await searched(page);
    await page.locator('.hand-host').getByRole('button', { name: /Messen/ }).waitFor();
    await look(page, 'layouts');
    const card = rectangle('card', 100, 60);
    const layout = layoutWith([card], [at('card', 10, 10), at('card', 60, 20), at('card', -5, 200)]);
    await take(page, 'faulty.json', writeLayoutFile(layout));
    await page.getByText(/Sie überdecken sich/).first().waitFor();
    await look(page, 'layouts-faulty');
    await take(page, 'no-layout.json', JSON.stringify({ ...layout, placements: 3 }));
    await page.locator('.notice', { hasText: 'gesucht' }).or(page.locator('.notice', { hasText: 'muss sein' })).waitFor();
    await look(page, 'layouts-refused');
  });

  test('comparison, near misses, quote and hand over', async () => {
    const page = await open();
    await page.keyboard.press('Alt+Digit2');
    await page.getByRole('button', { name: 'Alle vergleichen' }).click();
    await page.locator('main .answer', { hasText: 'Nutzen' }).waitFor({ timeout: 90_000 });
    await look(page, 'sheets');
    await goTo(page, 'Warum so viele');
    await page.getByRole('button', { name: 'Kleine Änderungen suchen' }).click();
    await page.locator('.misses').waitFor({ timeout: 90_000 });
    await look(page, 'why');
    await goTo(page, 'Geld');
    await look(page, 'money-open');
    await page.getByLabel('Flächengewicht').fill('300');
    await page.getByText('Jede Zahl mit ihrer Formel').click();
    await page.locator('main .warning').waitFor();
    await look(page, 'money-missing');
    await page.getByLabel('Leeres mit erfundenen Sätzen füllen').check();
    await page.locator('.money .hint', { hasText: 'Zum Ausprobieren erfunden:' }).waitFor();
    await look(page, 'money');
    await goTo(page, 'Übergabe');
    await page.locator('.files').waitFor();
    await look(page, 'handover');
  });

  test('versions, outlines, keys and jobs', async () => {
    const page = await open();
    await goTo(page, 'Gefundene Standbogen');
    await page.getByLabel('Aufwand').selectOption('quick');
    await page.getByRole('button', { name: 'Sorten', exact: true }).click();
    await page.getByRole('button', { name: 'Sorte hinzufügen' }).click();
    await page.getByRole('textbox', { name: 'Sorte A' }).fill('Minze');
    await page.getByLabel('Menge von A').fill('12000');
    await page.getByRole('button', { name: /Nutzen verteilen/ }).click();
    await page.locator('.plan-figures').waitFor();
    await look(page, 'versions');
    await page.getByRole('button', { name: 'Umrisse', exact: true }).click();
    await page.getByRole('button', { name: 'Zeichnung dieses Auftrags hinzufügen' }).click();
    await page.locator('main input[type=file]').first().setInputFiles(sample('label-rounded.svg'));
    await page.getByLabel('Menge von Zeichnung A').fill('9000');
    await page.getByLabel('Menge von Zeichnung B').fill('4000');
    await page.getByRole('button', { name: 'Formen suchen' }).click();
    await page.locator('.outline-plan').waitFor({ timeout: 90_000 });
    await look(page, 'outlines');
    await page.getByRole('button', { name: 'Tasten', exact: true }).first().click();
    await look(page, 'keys');
  });

  test('the library: lists, entries, what a batch found', async () => {
    const page = await open();
    await page.getByRole('button', { name: 'Bibliothek', exact: true }).click();
    const dialog = page.getByRole('dialog', { name: 'Bibliothek' });
    await dialog.getByText('33 gefunden').waitFor();
    await look(page, 'library');
    for (const [kind, id] of [['Reihenlauf', 'new widths'], ['Druckmaschine', 'invented-press'], ['Schachtel', 'FH-102'], ['Stanzform', '4711'], ['Kalkulation', 'Q-1']] as const) {
      await dialog.getByLabel('Art').selectOption(kind);
      await dialog.getByRole('button', { name: 'Suchen' }).click();
      await dialog.locator('.library-cards button', { hasText: id }).click();
      await dialog.getByText('Was es vorher war').waitFor();
      await look(page, `library-${id}`);
      await dialog.getByRole('button', { name: 'Zurück zur Liste' }).click();
    }
  });

  test('what the library refuses is worded by the page', async () => {
    const page = await open();
    await page.route('**/api/library/entry*', (route) => route.fulfill({ status: 404, contentType: 'application/json', body: JSON.stringify({ issues: [{ code: 'library-no-such', severity: 'error', where: 'carton FH-101', message: 'there is none' }] }) }));
    await page.getByRole('button', { name: 'Bibliothek', exact: true }).click();
    await page.locator('.library-cards button', { hasText: 'FH-101' }).click();
    await page.getByText('Die Bibliothek hat nichts dieses Namens.').waitFor();
    desk.forgive('404');
  });
});
