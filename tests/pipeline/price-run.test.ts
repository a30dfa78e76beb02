import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { priceRun, type RunDesign, type RunToPrice } from '../../src/pipeline/gang/price-run.ts';
import { makeQuote } from '../../src/pipeline/quote.ts';
import { readQuoteJob } from '../../src/pipeline/quote-job.ts';
import { DEMO_RATES } from '../../src/press/demo-rates.ts';
import { englishLanguage } from '../../src/render/messages/english-language.ts';
import { frenchLanguage } from '../../src/render/messages/french-language.ts';
import { germanLanguage } from '../../src/render/messages/german-language.ts';
import { platesOf } from '../../src/render/run-facts.ts';
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

/** 100 × 100 and 100 × 50 mm. */
const outline = (width: number, height: number): RunDesign['outline'] => [[0, 0], [width, 0], [width, height], [0, height]];
const large: RunDesign = { outline: outline(100, 100), inks: [] };
const small: RunDesign = { outline: outline(100, 50), inks: [] };
const pair: RunToPrice = { ids: ['large', 'small'], quantities: [600, 1200], counts: [[6, 12]], planned: [100], designs: [large, small] };
const paidFor = (facts: Awaited<ReturnType<typeof priceRun>>, name: string) => facts.cost.forms.map(({ costs }) => costs.find((one) => one.name === name)!.value);

describe('a run of outlines in money', () => {
  test('one outline alone on a form: the sheets and the cost of a quote, to the cent', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 200_000 }), fc.constantFrom([], ['die-cutting'], ['foil', 'die-cutting', 'stripping', 'gluing', 'packing']), fc.boolean(), async (quantity, stages, ownDie) => {
        const quoted = job({ quantities: [quantity], stages, ownDie });
        const [quote] = makeQuote(quoted).quantities;
        const { cost } = await priceRun({ ...one(quantity), designs: [large] }, quoted);
        expect(cost.forms[0]!.needed.sheets).toBe(quote!.needed.sheets);
        expect(cost.cost.value).toBeCloseTo(quote!.cost.value!, 6);
        expect(cost.versions[0]!.cost.value).toBeCloseTo(quote!.cost.value!, 6);
      }),
      { seed: 7, numRuns: 20 },
    );
  });

  test('two outlines on one form, by hand: the sheets, and the form borne by area', async () => {
    const facts = await priceRun(pair, job());
    // Gluing loses 1 %: ⌈600 ÷ 0.99⌉ = 607 and ⌈1 200 ÷ 0.99⌉ = 1 213 must come off the form: ⌈607 ÷ 6⌉ = 102, ⌈1 213 ÷ 12⌉ = 102.
    expect(facts.copies).toEqual([607, 1213]);
    expect(facts.pressings).toEqual([102]);
    expect(facts.planned).toEqual([100]);
    // ⌈102 ÷ 0.99⌉ + 40 = 144; ⌈144 ÷ 0.988⌉ + 30 + 4 × 40 + 10 = 346.
    expect(facts.cost.forms[0]!.needed.sheets).toBe(346);
    // 6 × 0.01 m² and 12 × 0.005 m²: half the form each.
    const form = facts.cost.forms[0]!.cost.value!;
    const [first, second] = facts.cost.versions;
    expect(first!.cost.formula).toBe('form 1 × 6 × blank area 1 ÷ (6 × blank area 1 + 12 × blank area 2) + gluer × ' + first!.cost.formula.split('gluer × ')[1]);
    expect(first!.cost.inputs).toMatchObject({ 'blank area 1': 0.01, 'blank area 2': 0.005 });
    const { rest } = facts.cost;
    expect(rest.map(({ name }) => name)).toEqual(['gluer', 'packing material', 'freight']);
    // The gluer is set up for each: its makeready twice.
    const gluer = DEMO_RATES.gluer!;
    const hours = (607 + 1213) / gluer.speed! + (2 * gluer.makereadyMinutes!) / 60;
    expect(rest[0]!.value).toBeCloseTo(hours * gluer.hourlyRate!, 6);
    const own = (copies: number) => (copies / gluer.speed! + gluer.makereadyMinutes! / 60) * gluer.hourlyRate!;
    // 600 and 1 200 cartons: a third and two thirds of the packing material; by area of what is ordered half the freight.
    expect(first!.cost.value).toBeCloseTo(form / 2 + own(607) + rest[1]!.value! / 3 + rest[2]!.value! / 2, 6);
    expect(second!.cost.value).toBeCloseTo(form / 2 + own(1213) + (2 * rest[1]!.value!) / 3 + rest[2]!.value! / 2, 6);
    expect(first!.costPerThousand.value).toBeCloseTo(first!.cost.value! / 0.6, 6);
  });

  test('what the designs bear sums to the whole; every form has its die, its plates and its set-up', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(fc.integer({ min: 1, max: 9000 }), fc.integer({ min: 20, max: 200 }), fc.integer({ min: 0, max: 5 }), fc.integer({ min: 1, max: 5 })), { minLength: 1, maxLength: 4 }), fc.boolean(), async (designs, isPacked) => {
        const facts = await priceRun(
          { ids: designs.map((_, i) => `d${i}`), quantities: designs.map(([quantity]) => quantity), counts: [designs.map(([, , a]) => a), designs.map(([, , , b]) => b)], designs: designs.map(([, side]) => ({ outline: outline(side, 90), inks: [] })) },
          job(isPacked ? { packing: { perCase: 200, casesPerPallet: 40, caseKg: 0.5, palletKg: 20 } } : {}),
        );
        const { cost } = facts;
        expect(cost.versions.reduce((all, version) => all + version.cost.value!, 0)).toBeCloseTo(cost.cost.value!, 4);
        expect(paidFor(facts, 'die')).toEqual(facts.numbers.map(() => DEMO_RATES.diePrice));
        facts.copies.forEach((copies, i) => expect(facts.made[i]).toBeGreaterThanOrEqual(copies));
      }),
      { seed: 11, numRuns: 25 },
    );
  });

  test('two forms: the die-cutter is set up for both; inks that the designs name are the plates of their form', async () => {
    const inks = { large: ['black'], small: ['black', 'P 485', 'gold'] };
    const run: RunToPrice = { ...pair, counts: [[12, 0], [0, 24]], planned: [50, 50], designs: [{ ...large, inks: inks.large }, { ...small, inks: inks.small }] };
    const facts = await priceRun(run, job({ varnishUnits: 0 }));
    expect(platesOf(facts)).toEqual([1, 3]);
    // ⌈607 ÷ 12⌉ = 51 and ⌈1 213 ÷ 24⌉ = 51, each ⌈51 ÷ 0.99⌉ + 40 = 92. In one colour ⌈92 ÷ 0.994⌉ + 30 + 15 = 138, in three ⌈92 ÷ 0.992⌉ + 30 + 3 × 25 = 198.
    expect(facts.cost.forms.map(({ needed }) => needed.sheets)).toEqual([138, 198]);
    expect(paidFor(facts, 'plates')).toEqual([DEMO_RATES.platePrice!, 3 * DEMO_RATES.platePrice!]);
    // One that names none has the four of the quote.
    expect(platesOf(await priceRun({ ...run, designs: [large, { ...small, inks: inks.small }] }, job({ varnishUnits: 0 })))).toEqual([4, 3]);
    // Together on a form: the union.
    expect(platesOf(await priceRun({ ...pair, designs: run.designs }, job({ varnishUnits: 1 })))).toEqual([4]);
  });

  test('inks with what they cover: ink is weighed by the blanks that carry it', async () => {
    const quoted = job({ colours: undefined, varnishUnits: 0, inks: [{ name: 'black', coverage: 0.5, gramsPerM2: 2 }, { name: 'gold', coverage: 0.1, gramsPerM2: 4 }] });
    const [form] = (await priceRun({ ...pair, designs: [{ ...large, inks: ['black'] }, { ...small, inks: ['black', 'gold'] }] }, quoted)).cost.forms;
    // ⌈144 ÷ 0.992⌉ + 30 + 2 × 25 = 226.
    expect(form!.needed.sheets).toBe(226);
    const kilos = form!.materials.filter(({ unit }) => unit === 'kg').map(({ value }) => value!);
    // Black on 6 × 0.01 + 12 × 0.005 m², half of it; gold on 12 × 0.005 m², a tenth.
    expect(kilos[0]).toBeCloseTo((226 * 0.06 * 2) / 1000, 9);
    expect(kilos[1]).toBeCloseTo((226 * 0.006 * 4) / 1000, 9);
  });

  test.each([[englishLanguage, 'What each design costs', 'By area'], [germanLanguage, 'Was jeder Zuschnitt kostet', 'Nach Fläche'], [frenchLanguage, 'Ce que coûte chaque modèle', 'Par surface']] as const)('the report speaks of designs and says how they share', async (language, heading, rule) => {
    const report = runReport(await priceRun(pair, job()), language);
    expect(report.sections[0]!.heading).toBe(heading);
    expect(report.sections.find(({ id }) => id === 'shared')!.sentences[0]).toContain(rule);
    const shown = report.sections.map((section) => ({ ...section, id: '' }));
    expect(JSON.stringify({ ...report, sections: shown })).not.toMatch(/version|Sorte|\bundefined\b/);
    expect(report.sections[1]!.table!.rows[0]![4]).toBe('5');
  });
});
