import { expect, test } from 'vitest';
import { evaluate } from '../../src/estimate/formula.ts';
import { makeQuote } from '../../src/pipeline/quote.ts';
import { readQuoteJob } from '../../src/pipeline/quote-job.ts';
import { DEMO_RATES } from '../../src/press/demo-rates.ts';
import { createFormat } from '../../src/render/format.ts';
import { englishLanguage } from '../../src/render/messages/english-language.ts';
import { quoteReport } from '../../src/render/quote-report.ts';

const job = { ups: 12, sheet: '1020x720', grammage: 300, caliper: 0.457, quantities: [5000], colours: 4, varnishUnits: 1, currency: 'EUR', board: { grade: 'GC1', toleranceMm: 1 }, stages: ['die-cutting'] };
const facts = makeQuote(readQuoteJob(job, 'job.json', () => undefined));
const whole = makeQuote(readQuoteJob(
  { ...job, blankArea: 21_530, stages: ['die-cutting', 'gluing'], board: { ...job.board, pricePerTonne: 900, pallet: 1800, reelWidth: 720 }, rates: { ...DEMO_RATES, casePrice: 1, packingPerThousand: undefined }, packing: { caseLength: 690, rows: 2, caseSize: '700x200', caseHeight: 180, caseKg: 0.45, palletSize: '1200x800', palletHeight: 1200, palletKg: 25 } },
  'job.json',
  () => undefined,
));

const reportIn = (unit: 'mm' | 'in', of = facts) => quoteReport(of, englishLanguage, createFormat('en', unit));
const sentencesIn = (unit: 'mm' | 'in') => reportIn(unit).sections.flatMap(({ sentences }) => sentences);
const formulasIn = (unit: 'mm' | 'in') => reportIn(unit, whole).sections.find(({ id }) => id === 'q5000')!.figures.filter(({ note }) => note !== undefined);

test('the line to order by has one unit throughout', () => {
  const lineIn = (unit: 'mm' | 'in') => sentencesIn(unit).find((sentence) => sentence.includes('GC1'))!;
  expect(lineIn('mm')).toMatch(/^1020 × 720 mm, GC1, 300 g\/m², 0\.457 mm, ± 1 mm, /);
  expect(lineIn('in')).toMatch(/^40\.157 × 28\.346 in, GC1, 300 g\/m², 0\.018 in, ± 0\.039 in, /);
});

test('with inches the order is told in pounds and points as well', () => {
  expect(sentencesIn('mm').join(' ')).not.toContain('lb');
  expect(sentencesIn('in').find((sentence) => sentence.startsWith('In inches'))).toMatch(/ 18 pt, 61\.4 lb per 1000 ft², .* a thousand sheets .* lb\.$/);
});

test.each(['mm', 'in'] as const)('in %s what a formula shows comes to what stands beside it', (unit) => {
  const shown = formulasIn(unit);
  for (const { label, value, formula } of shown) {
    const told = Number(/[−\d. ]+/.exec(value)![0].replaceAll(' ', '').replace('−', '-'));
    const comes = evaluate(formula!.replaceAll(/(?<=\d) (?=\d)/g, ''), {});
    // Half of the last decimal that is told, and what seven figures of each input leave open.
    const rounding = value.endsWith('EUR') ? 0.005 : 0.0005;
    expect(Math.abs(comes - told), `${label}: ${formula} = ${value}`).toBeLessThanOrEqual(rounding + 4e-7 * Math.abs(told));
  }
  expect(shown.length).toBeGreaterThan(25);
});

test('with inches no formula has a millimetre or a square metre in it but where an area is weighed', () => {
  const shown = new Map(formulasIn('in').map(({ label, value, formula, note }) => [label, [value, formula, note]]));
  expect([...shown.values()].filter(([value]) => /\bmm\b/.test(value!))).toEqual([]);
  expect(shown.get('thickness glued flat')).toEqual(['0.036 in', '2 × 0.01799213', 'layers of board × caliper']);
  expect(shown.get('cartons per case')![1]).toBe('⌊27.16535 ÷ 0.05397638⌋ × 2');
  expect(shown.get('board weight')![1]).toMatch(/^[\d ]+ × 7\.905016 ÷ 10\.76391 × 300 ÷ 1000$/);
  expect(shown.get('board weight')![2]).toBe('sheets × sheet area ÷ 10.76391 × grammage ÷ 1000');
  expect(shown.get('board yield')![1]).not.toContain('10.76391');
  expect(reportIn('in', whole).sections.find(({ id }) => id === 'assumed')!.sentences.join(' ')).toContain('10.76391 ft² make a m²');
});

test('a value is the same in either unit, whatever its formula is shown in', () => {
  const values = (unit: 'mm' | 'in') => formulasIn(unit).filter(({ value }) => !/ (mm|in)$/.test(value)).map(({ value }) => value);
  expect(values('in')).toEqual(values('mm'));
});
