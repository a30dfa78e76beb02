import { expect, test } from 'vitest';
import { makeQuote } from '../../src/pipeline/quote.ts';
import { readQuoteJob } from '../../src/pipeline/quote-job.ts';
import { createFormat } from '../../src/render/format.ts';
import { englishLanguage } from '../../src/render/messages/english-language.ts';
import { quoteReport } from '../../src/render/quote-report.ts';

const job = { ups: 12, sheet: '1020x720', grammage: 300, caliper: 0.457, quantities: [5000], colours: 4, varnishUnits: 1, currency: 'EUR', board: { grade: 'GC1', toleranceMm: 1 }, stages: ['die-cutting'] };
const facts = makeQuote(readQuoteJob(job, 'job.json', () => undefined));

test('the line to order by has one unit throughout', () => {
  const lineIn = (unit: 'mm' | 'in') => quoteReport(facts, englishLanguage, createFormat('en', unit)).sections.flatMap(({ sentences }) => sentences).find((sentence) => sentence.includes('GC1'))!;
  expect(lineIn('mm')).toMatch(/^1020 × 720 mm, GC1, 300 g\/m², 0\.457 mm, ± 1 mm, /);
  expect(lineIn('in')).toMatch(/^40\.157 × 28\.346 in, GC1, 300 g\/m², 0\.018 in, ± 0\.039 in, /);
});
