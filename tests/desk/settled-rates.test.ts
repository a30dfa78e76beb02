import { describe, expect, test } from 'vitest';
import { EMPTY_JOB } from '../../src/desk/job/job.ts';
import { quoteOf } from '../../src/desk/job/quote-of.ts';
import { NO_RECORDS, type Records } from '../../src/desk/job/records.ts';
import { askedRates } from '../../src/desk/job/rate-fields.ts';
import { settleRates } from '../../src/desk/job/settled-rates.ts';
import { makeQuote } from '../../src/pipeline/quote.ts';
import { readQuoteJob } from '../../src/pipeline/quote-job.ts';

const records: Records = {
  ...NO_RECORDS,
  presses: [{ id: 'p3', record: { name: 'Press 3', makereadyMinutes: 35 } }],
  rates: [{ id: 'ours', own: 'remembered', record: { name: 'Ours', gluer: { hourlyRate: 80 }, diePrice: 1500, press: { hourlyRate: 120 } } }],
};
const sheet = { ...EMPTY_JOB.sheet, press: 'p3' };
const money = { ...EMPTY_JOB.money, grammage: '300', boardPrice: '900', quantities: '5000' };
const noFile = () => ({});

describe('where a rate comes from', () => {
  test('typed above the record of rates, that above the record of the press, invented below all', () => {
    const { settled } = settleRates({ ...money, inventedRates: true, diePrice: '1 700,50' }, sheet, records);
    expect(settled.get('diePrice')).toEqual({ value: 1700.5, source: { kind: 'typed' } });
    expect(settled.get('gluerRate')).toEqual({ value: 80, source: { kind: 'record', name: 'Ours' } });
    expect(settled.get('pressMakeready')).toEqual({ value: 35, source: { kind: 'record', name: 'Press 3' } });
    expect(settled.get('inkPrice')?.source).toEqual({ kind: 'invented' });
    expect(settleRates(money, sheet, records).settled.has('inkPrice')).toBe(false);
    expect(settleRates({ ...money, ratesRecord: 'none' }, sheet, records).settled.has('gluerRate')).toBe(false);
  });

  test('the press is as long made ready with invented rates as without', () => {
    const hours = (inventedRates: boolean) => {
      const asked = quoteOf({ ...EMPTY_JOB, sheet, money: { ...money, pressSpeed: '9000', inventedRates } }, records, { ups: 8, sheet: { width: 1020, height: 720 } });
      return 'job' in asked ? makeQuote(readQuoteJob(asked.job, 'quote', noFile)).quantities[0]!.pressHours!.value : undefined;
    };
    expect(hours(true)).toBeGreaterThan(35 / 60);
    expect(hours(true)).toBe(hours(false));
  });

  test('by the command line too: invented rates do not replace what the record of the press says', () => {
    const job = { ups: 8, sheet: '1020x720', quantities: [5000], grammage: 300, colours: 4, stages: ['die-cutting'], press: { name: 'Press 3', makereadyMinutes: 35, speed: 9000 } };
    const [quoted] = makeQuote(readQuoteJob(job, 'job.json', noFile, 'demo')).quantities;
    expect(quoted!.hours[0]!.inputs['makeready']).toBe(35);
  });
});

test.each(['4', '0'])('everything that a quote says is missing has a field, %s colours', (colours) => {
  const all = { ...money, colours, varnishUnits: '1', stages: ['coating', 'foil', 'embossing', 'die-cutting', 'stripping', 'gluing', 'packing'] };
  const fields = [...askedRates(all).map(({ figure }) => figure), 'board price'];
  const given: Record<string, string> = {};
  // What is given one at a time uncovers what else is asked for.
  for (let round = 0; round < 40; round++) {
    const asked = quoteOf({ ...EMPTY_JOB, money: { ...all, ...given, boardPrice: '' } }, NO_RECORDS, { ups: 8, sheet: { width: 1020, height: 720 } });
    const { missing } = makeQuote(readQuoteJob('job' in asked ? asked.job : {}, 'quote', noFile));
    expect(missing.filter((figure) => !fields.includes(figure))).toEqual([]);
    const next = askedRates(all).find(({ figure }) => missing.includes(figure));
    if (!next) break;
    given[next.name] = '1';
  }
  expect(Object.keys(given).length).toBeGreaterThan(20);
});
