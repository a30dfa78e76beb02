import { describe, expect, test } from 'vitest';
import { EMPTY_JOB, type MoneyFields } from '../../src/desk/job/job.ts';
import { rangeOf, type MoneyFigure } from '../../src/desk/job/money-ranges.ts';
import { moneyFaults, quoteOf } from '../../src/desk/job/quote-of.ts';
import { RATE_FIELDS } from '../../src/desk/job/rate-fields.ts';
import { NO_RECORDS } from '../../src/desk/job/records.ts';
import { rangeSentence } from '../../src/desk/words/range-sentence.ts';
import { wordsIn } from '../../src/desk/words/words.ts';
import { makeQuote } from '../../src/pipeline/quote.ts';
import { readQuoteJob } from '../../src/pipeline/quote-job.ts';
import { STAGES } from '../../src/press/stages.ts';

const FIGURES: readonly MoneyFigure[] = ['grammage', 'boardPrice', 'colours', 'varnishUnits', ...RATE_FIELDS.map(({ name }) => name)];
const job = (money: Partial<MoneyFields>) => ({ ...EMPTY_JOB, money: { ...EMPTY_JOB.money, grammage: '300', varnishUnits: '1', stages: [...STAGES], ...money } });
const faultsOf = (money: Partial<MoneyFields>) => moneyFaults(job(money), NO_RECORDS);

/** What a quote would refuse is said at its field, before a quote is asked for. */
describe('figures typed into the money panel', () => {
  test.each(FIGURES)('%s: both ends of its range make a quote; what lies beyond, no number or a negative one is a fault of that field', (figure) => {
    const { least, most, isWhole } = rangeOf(figure);
    for (const end of [least, most]) {
      const asked = quoteOf(job({ [figure]: String(end) }), NO_RECORDS, { ups: 8, sheet: { width: 1020, height: 720 } });
      expect(asked).toHaveProperty('job');
      expect(makeQuote(readQuoteJob('job' in asked ? asked.job : {}, 'quote', () => ({}))).quantities).toHaveLength(3);
    }
    const beyond = [String(least - 0.5), String(most + 1), '-3', 'many', ...(isWhole ? [String(least + 0.5)] : [])];
    expect(beyond.map((text) => faultsOf({ [figure]: text }))).toEqual(beyond.map(() => [figure]));
  });

  test('quantities, their number and the currency likewise', () => {
    expect([faultsOf({ quantities: '1000000001' }), faultsOf({ quantities: Array(51).fill('5000').join(', ') }), faultsOf({ currency: 'EURO' })]).toEqual([['quantities'], ['quantities'], ['currency']]);
    expect([faultsOf({ currency: 'usd' }), faultsOf({ currency: '' })]).toEqual([[], []]);
  });

  test('a rate that the job does not ask for has no field, and so no fault', () => {
    expect([faultsOf({ packerSpeed: '0' }), faultsOf({ packerSpeed: '0', stages: ['die-cutting'] })]).toEqual([['packerSpeed'], []]);
  });

  test('the sentence names both ends in the language of the page', () => {
    expect([rangeSentence(rangeOf('grammage'), wordsIn('en')), rangeSentence(rangeOf('colours'), wordsIn('de'))].map((text) => text.replace(/\s/g, ' '))).toEqual(['A number from 5 to 2 000 is wanted.', 'Gesucht ist eine ganze Zahl von 0 bis 20.']);
  });
});
