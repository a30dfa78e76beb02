import { describe, expect, test } from 'vitest';
import { DEMO_RATES } from '../../src/press/demo-rates.ts';
import { pages, quote } from '../../src/desk/engine/answers/quote.ts';

const ask = { job: { name: 'mint', ups: 16, sheet: '1020x720', quantities: [5000, 20000], grammage: 275, stages: ['die-cutting', 'gluing'], rates: { ...DEMO_RATES, marginPercent: undefined } }, sources: { 'die price': { kind: 'invented' }, 'press rate': { kind: 'record', name: 'Press 3' }, 'plate price': { kind: 'typed' } } } as const;

/** Answers of the engine come in the words of whoever asks. */
describe.each([
  ['de', 'Faltschachteln', 'Zum Ausprobieren erfunden: Preis der Stanzform. Aus dem Datensatz Press 3: Stundensatz Druckmaschine. Wie eingegeben: Preis einer Druckplatte.'],
  ['en', 'cartons', 'Invented for trying out: die price. From the record Press 3: press rate. As typed: plate price.'],
] as const)('asked in %s', (locale, products, rates) => {
  const person = { locale, unit: 'mm' } as const;

  test('a quote: report, names of rates, pages to save', () => {
    const { report, rates: said } = quote(ask, person);
    expect(report.language).toBe(locale);
    expect(report.answer).toContain(products);
    expect(said).toBe(rates);
    expect(report.sections.find(({ id }) => id === 'assumed')?.sentences).toContain(rates);
    const files = pages({ ...ask, job: { ...ask.job, rates: { ...DEMO_RATES, marginPercent: 10 }, boardPricePerTonne: 1000 } }, person);
    expect(files.map(({ name }) => name)).toEqual(['quote.html', 'quote-customer.html']);
    for (const { content } of files) expect(content).toContain(`<html lang="${locale}"`);
  });

  test('rates that nobody gave, by their names', () => {
    const { missing } = quote({ job: { ...ask.job, rates: {} } }, person);
    expect(missing).toContainEqual({ figure: 'die price', text: locale === 'de' ? 'Preis der Stanzform' : 'die price' });
  });
});
