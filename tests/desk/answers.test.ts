import { describe, expect, test } from 'vitest';
import { pages, quote } from '../../src/desk/engine/answers/quote.ts';

const ask = { job: { name: 'mint', ups: 16, sheet: '1020x720', quantities: [5000, 20000], grammage: 275, stages: ['die-cutting', 'gluing'] }, inventedRates: true };

/** Answers of the engine come in the words of whoever asks. */
describe.each([['de', 'Faltschachteln', 'erfundene Vorführsätze'], ['en', 'cartons', 'invented demonstration rates']] as const)('asked in %s', (locale, products, rates) => {
  const person = { locale, unit: 'mm' } as const;

  test('a quote: report, names of rates, pages to save', () => {
    const { report, ratesName } = quote(ask, person);
    expect(report.language).toBe(locale);
    expect(report.answer).toContain(products);
    expect(ratesName).toBe(rates);
    const files = pages({ ...ask, job: { ...ask.job, rates: { marginPercent: 10 }, boardPricePerTonne: 1000 } }, person);
    expect(files.map(({ name }) => name)).toEqual(['quote.html', 'quote-customer.html']);
    for (const { content } of files) expect(content).toContain(`<html lang="${locale}"`);
  });

  test('rates that nobody gave, by their names', () => {
    const { missing } = quote({ ...ask, inventedRates: false }, person);
    expect(missing).toContain(locale === 'de' ? 'Preis der Stanzform' : 'die price');
  });
});
