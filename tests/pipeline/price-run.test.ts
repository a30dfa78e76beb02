import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { priceRun, type RunToPrice } from '../../src/pipeline/gang/price-run.ts';
import { makeQuote } from '../../src/pipeline/quote.ts';
import { readQuoteJob } from '../../src/pipeline/quote-job.ts';
import { englishLanguage } from '../../src/render/messages/english-language.ts';
import { runReport } from '../../src/render/run-report.ts';

const none = () => undefined;
const job = (more: object = {}) => readQuoteJob({ ups: 12, sheet: '1020x720', grammage: 300, quantities: [5000], colours: 4, varnishUnits: 1, stages: ['die-cutting', 'gluing'], boardPricePerTonne: 900, currency: 'EUR', rates: 'demo', ...more }, 'job', none);
const one = (quantity: number, more: Partial<RunToPrice> = {}): RunToPrice => ({ ids: ['mint'], quantities: [quantity], counts: [[12]], ...more });

describe('a run of versions in money', () => {
  test('one version on every station: the sheets and the cost of a quote, to the cent', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 200_000 }), fc.constantFrom([], ['die-cutting'], ['die-cutting', 'gluing'], ['foil', 'die-cutting', 'stripping', 'gluing', 'packing']), async (quantity, stages) => {
        const quoted = job({ quantities: [quantity], stages });
        const [quote] = makeQuote(quoted).quantities;
        const { cost } = await priceRun(one(quantity), quoted);
        expect(cost.forms[0]!.needed.sheets).toBe(quote!.needed.sheets);
        expect(cost.cost.value).toBeCloseTo(quote!.cost.value!, 6);
        expect(cost.pricePerThousand!.value).toBeCloseTo(quote!.pricePerThousand!.value!, 6);
      }),
      { seed: 7, numRuns: 25 },
    );
  });

  test('versions bear the whole cost between them; the published waste, by hand', async () => {
    const facts = await priceRun({ ids: ['mint', 'sage', 'fennel'], quantities: [8000, 4000, 900], counts: [[8, 4, 0], [0, 2, 1]] }, job());
    const { cost, pressings, planned, copies } = facts;
    // Behind the forms only gluing loses: 8 000 ÷ 0.99, 4 000 ÷ 0.99 and 900 ÷ 0.99, each rounded up.
    expect(copies).toEqual([8081, 4041, 910]);
    expect(planned[0]).toBe(1000);
    expect(pressings[0]).toBe(1011);
    expect(pressings[1]).toBe(910);
    // Form 1: ⌈1011 ÷ 0.99⌉ + 40 = 1 062; ⌈1062 ÷ 0.988⌉ + 30 + 4 × 40 + 10 = 1 275. Form 2 is die-cut without set-up: ⌈910 ÷ 0.99⌉ = 920; ⌈920 ÷ 0.988⌉ + 200 = 1 132.
    expect(cost.forms.map(({ needed }) => needed.sheets)).toEqual([1275, 1132]);
    const sum = cost.versions.reduce((all, version) => all + version.cost.value!, 0);
    expect(sum).toBeCloseTo(cost.cost.value!, 6);
    // Fennel has one of three printing stations of form 2, and nothing of form 1.
    expect(cost.versions[2]!.cost.formula).toMatch(/^form 2 × 1 ÷ 3 \+ die/);
    // Two forms: plates twice, the die once.
    expect(cost.forms.map(({ costs }) => costs.find(({ name }) => name === 'plates')!.value)).toEqual([90, 90]);
    expect(cost.rest.map(({ name }) => name)).toEqual(['die', 'gluer', 'packing material', 'freight']);
  });

  test('least overs are made and glued too; greatest ones hold for what is left', async () => {
    const plain = await priceRun(one(5000), job());
    const over = await priceRun(one(5000, { limits: [{ least: 500 }] }), job());
    expect(over.copies).toEqual([5556]);
    expect(over.cost.cost.value!).toBeGreaterThan(plain.cost.cost.value!);
    // A thousand ordered, not a thousand made.
    expect(over.cost.costPerThousand.value).toBeCloseTo(over.cost.cost.value! / 5, 6);
  });

  test('a rate that is missing leaves costs open and is named; sheets and board stay', async () => {
    const facts = await priceRun({ ids: ['a', 'b'], quantities: [5000, 300], counts: [[11, 1]] }, job({ rates: { press: { speed: 9000, makereadyMinutes: 30, hourlyRate: 140 } } }));
    expect(facts.cost.cost.value).toBeNull();
    expect(facts.missing).toEqual(expect.arrayContaining(['plate price', 'die price', 'die-cutter rate', 'gluer rate']));
    const report = runReport(facts, englishLanguage);
    expect(report.answer).toMatch(/^The whole run: board \d+\.\d\d EUR per 1000, cost open; \d+ sheets on 1 form for 5 300 cartons of 2 versions\.$/);
  });

  test('the report leads with the price and says how it is shared', async () => {
    const report = runReport(await priceRun({ ids: ['a', 'b'], quantities: [5000, 300], counts: [[11, 1]] }, job()), englishLanguage);
    expect(report.answer).toMatch(/^The whole run: price [\d ]+\.\d\d EUR \([\d.]+ EUR per 1000\), cost [\d ]+\.\d\d EUR \([\d.]+ EUR per 1000\); /);
    const [versions, forms, shared] = report.sections;
    expect(versions!.table!.rows.map(([name]) => name)).toEqual(['a', 'b', 'all']);
    expect(forms!.table!.rows).toHaveLength(1);
    expect(shared!.sentences[0]).toContain('By stations');
  });
});
