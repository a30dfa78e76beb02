import { describe, expect, test } from 'vitest';
import { keptLength, keptSize, sameLength, shownLength, shownSize } from '../../src/desk/job/typed-length.ts';
import { createFormat } from '../../src/render/format.ts';
import { browserIsHere, compareSheets, findings, goTo, picture, sample } from './browser.ts';
import { WITH_AXE, withDesk } from './with-desk.ts';

const [mm, inch, zoll] = [createFormat('en'), createFormat('en', 'in'), createFormat('de', 'in')];

describe('lengths as they are typed', () => {
  test('without a suffix they are kept in millimetres, whatever is shown', () => {
    expect([keptLength('12', mm), keptLength('0.5', inch), keptLength('12mm', inch), keptLength('', inch)]).toEqual(['12', '0.5in', '12mm', '']);
    expect([keptSize('28x40', inch), keptSize('28,5x40', zoll), keptSize('1020x720', mm), keptSize('1020x720mm', inch)]).toEqual(['28x40in', '28.5x40in', '1020x720', '1020x720mm']);
  });

  test('each is shown in the unit asked for, its own text where it has that unit', () => {
    expect([shownLength('12', mm), shownLength('12', inch), shownLength('12', zoll)]).toEqual(['12', '0.472', '0,472']);
    expect([shownLength('0.5in', inch), shownLength('0.in', inch), shownLength('0.5in', mm), shownLength('twelve', mm), shownLength('', inch)]).toEqual(['0.5', '0.', '12.7', 'twelve', '']);
    expect([shownSize('28x40in', inch), shownSize('28xin', inch), shownSize('28x40in', mm), shownSize('1020x720', inch), shownSize('1020x', mm), shownSize('1020x720', mm)]).toEqual(['28 × 40', '28 × ', '711.2 × 1016', '40.157 × 28.346', '1020 × ', '1020 × 720']);
  });

  test('a text that is still being typed says the same as what was kept of it', () => {
    expect([sameLength('4.in', '101.6'), sameLength('4in', '4'), sameLength('x', 'x')]).toEqual([true, false, true]);
  });
});

describe.skipIf(!browserIsHere())('the desk in inches', { timeout: 120_000 }, () => {
  const desk = withDesk([sample('reverse-tuck-small.svg')]);

  test('one switch: fields, figures, rulers and tables; what was typed keeps its meaning; remembered', async () => {
    const page = await desk.open(WITH_AXE);
    await goTo(page, 'Limits');
    await page.getByLabel('Gap, knife to knife').fill('8');
    await page.locator('.ticket', { hasText: 'gap 8 mm' }).waitFor();
    await page.getByLabel('Lengths in').selectOption('in');
    await page.locator('.ticket', { hasText: 'gap 0.315 in' }).waitFor();
    expect(await page.getByLabel('Gap, knife to knife').inputValue()).toBe('0.315');
    await page.getByLabel('Gap, knife to knife').fill('');
    await page.getByLabel('Gap, knife to knife').pressSequentially('0.25');
    await page.locator('.ticket', { hasText: 'gap 0.25 in' }).waitFor();
    expect(await findings(page)).toEqual([]);

    await goTo(page, 'Sheet');
    await page.getByLabel('Sheet size').fill('');
    await page.getByLabel('Sheet size').pressSequentially('28x40');
    await page.locator('.ticket', { hasText: '28 × 40 in' }).waitFor();
    await goTo(page, 'Layouts found');
    await page.locator('.card.chosen', { hasText: '28 × 40 in' }).waitFor();
    await page.locator('.hand-ruler text').first().waitFor();
    const figures = (await page.locator('.hand-ruler-along text').allTextContents()).map((text) => Number(text.replace('−', '-')));
    expect(Math.max(...figures)).toBeLessThanOrEqual(60);
    await page.getByText(/stations as a table/).click();
    await page.getByRole('columnheader', { name: 'x, in' }).waitFor();
    await picture(page, 'inches-layouts');

    await page.getByText('kept in this browser').waitFor();
    await page.waitForTimeout(500);
    await page.reload();
    await page.locator('.ticket', { hasText: '28 × 40 in' }).waitFor();
    await page.getByLabel('Lengths in').selectOption('mm');
    await page.locator('.ticket', { hasText: 'gap 6.35 mm' }).waitFor();
    await goTo(page, 'Sheet');
    expect(await page.getByLabel('Sheet size').inputValue()).toBe('711.2 × 1016');
  });

  test('German commas; what could be read in two ways is refused with one sentence; a suffix goes in every unit and field', async () => {
    const page = await desk.open({ locale: 'de-DE' });
    await goTo(page, 'Grenzen');
    const gap = page.getByLabel('Abstand von Messer zu Messer');
    await gap.fill('7,5');
    await page.locator('.ticket', { hasText: '7,5 mm' }).waitFor();
    await gap.fill('1.234');
    await page.getByText('„1.234“ lässt sich auf zwei Arten lesen').waitFor();
    await gap.fill('0,25in');
    await page.locator('.ticket', { hasText: '6,35 mm' }).waitFor();
    await gap.press('Tab');
    expect(await gap.inputValue()).toBe('6,35');

    await page.locator('.ticket').getByRole('button', { name: /\bBogen/ }).click();
    const size = page.getByLabel('Bogenformat');
    await size.fill('711,2x1016');
    await page.locator('.ticket', { hasText: '711,2 × 1016 mm' }).waitFor();
    await size.fill('1.020x720');
    await page.getByText('„1.020x720“ lässt sich auf zwei Arten lesen').waitFor();
    await size.fill('28x40in');
    await size.press('Tab');
    expect(await size.inputValue()).toBe('711,2 × 1016');

    await goTo(page, 'Zeichnung');
    const width = page.getByLabel('Bekannte Breite des Zuschnitts');
    await width.pressSequentially('7,5in');
    await page.locator('.ticket', { hasText: '190,5 × ' }).waitFor();
    await width.fill('breit');
    await page.getByText('Gesucht ist eine Länge wie 12 oder 0,5 in.').waitFor();

    await goTo(page, 'Geld');
    const price = page.getByLabel('Kartonpreis');
    await price.fill('1.234,5');
    await page.getByText('„1.234,5“ lässt sich auf zwei Arten lesen').waitFor();
    await price.fill('1234,5');
    await price.press('Tab');
    await page.getByLabel('Sprache').selectOption('en');
    expect(await page.getByLabel('Board price').inputValue()).toBe('1234.5');
  });

  test('board of compared sheets is in ft²; formulas of the quote count in inches', async () => {
    const page = await desk.open();
    await page.getByLabel('Lengths in').selectOption('in');
    await page.locator('.ticket .state-sound').waitFor();
    const board = await compareSheets(page);
    await board.locator('.sheets > li').first().waitFor({ timeout: 60_000 });
    expect(await board.innerText()).not.toMatch(/m²|\d\s+mm/);
    expect(await board.locator('.sheets > li').first().innerText()).toMatch(/[\d\s.]+\sft² of board/);
    await picture(page, 'inches-compared');
    await goTo(page, 'Money');
    const formulas = page.locator('details', { hasText: 'Every figure with its formula' });
    await formulas.locator('summary').click();
    await formulas.locator('.formula', { hasText: '÷ 10.76391 ×' }).first().scrollIntoViewIfNeeded();
    await formulas.getByText(/^In inches and pounds: .*\slb per 1000\sft²/).first().waitFor();
    await picture(page, 'inches-money');
  });

  test('remarks and faults are read in inches too', async () => {
    const page = await desk.open();
    await page.getByLabel('Lengths in').selectOption('in');
    await goTo(page, 'Limits');
    await page.getByLabel('Gap, knife to knife').fill('4mm');
    await page.getByLabel('Bleed', { exact: true }).fill('3 mm');
    await page.getByText(/gap of 0\.157\sin is under twice the bleed \(0\.118\sin\): .* Type a gap of 0\.236\sin or more/).first().waitFor();
    await goTo(page, 'Sheet');
    await page.getByText('28 × 40 or 1020 × 720 mm').waitFor();
    expect(await page.locator('main').innerText()).not.toMatch(/\d\smm(?!\W+x is read)/);
  });
});
