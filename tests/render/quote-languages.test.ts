import { describe, expect, test } from 'vitest';
import { writeLayoutFile } from '../../src/layout/layout-file.ts';
import { makeQuote } from '../../src/pipeline/quote.ts';
import { readQuoteJob } from '../../src/pipeline/quote-job.ts';
import { DEMO_RATES } from '../../src/press/demo-rates.ts';
import { STAGES } from '../../src/press/stages.ts';
import { createFormat } from '../../src/render/format.ts';
import { englishLanguage } from '../../src/render/messages/english-language.ts';
import { FIGURE_NAMES, figureName } from '../../src/render/messages/figure-names.ts';
import { frenchFigures } from '../../src/render/messages/french-figures.ts';
import { germanFigures } from '../../src/render/messages/german-figures.ts';
import { LANGUAGES } from '../../src/render/messages/languages.ts';
import { customerReport, inkPicture, quoteReport } from '../../src/render/quote-report.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';
import { englishLeft, numbersIn, OTHER_LANGUAGES, saidIn } from '../support/report-words.ts';

const layout = JSON.parse(writeLayoutFile(layoutWith([rectangle('box', 100, 60)], [at('box', 10, 10), at('box', 216, 70, 180)]))) as unknown;
const plain = { name: 'FH-1', ups: 12, sheet: '1020x720', grammage: 300, caliper: 0.45, quantities: [1, 5000, 50_000, 5000], colours: 4, varnishUnits: 1, stages: STAGES.filter((stage) => stage !== 'printing'), currency: 'EUR' };
const board = { grade: 'GC1', pricePerTonne: 900, packet: 100, pallet: 1800, minimumTonnes: 3, toleranceMm: 1, reelWidth: 720, leadDays: 12, strange: 1 };
const waste = { name: 'FH-2', printing: { setUpPerMachine: 20, colours: [{ fromColours: 1, setUpPerPlate: 40, runningPercent: 1.2 }], varnish: { setUpPerUnit: 0, setUpPerPlate: 0, runningPercent: 0 } }, stages: Object.fromEntries(plain.stages.map((stage) => [stage, { setUp: 40, runningPercent: 1 }])) };
const inCases = { perCase: 500, casesPerPallet: 30, caseKg: 0.5, palletKg: 25, cartonGrams: 6.5 };
const filled = { caseLength: 690, rows: 1, caseSize: '700x200', caseHeight: 180, caseKg: 0.45, palletSize: '1200x800', palletHeight: 1200, palletKg: 25 };
const standing = { number: 'D-1', rack: 'C3', ups: 10, strokes: 1, mostStrokes: 500, maxSheet: '500x400' };

/** Values that a remark tells to write. */
const FIELD_VALUES = ['stages', 'die-cutting', 'gluing'];

/** Between them every figure, every open rate and every remark that a quote can show. */
const JOBS: Readonly<Record<string, object>> = {
  'all rates, packed by thickness, a worn die, other layouts': { ...plain, waste, board, blankArea: 21_530, rates: { ...DEMO_RATES, packingPerThousand: undefined, casePrice: 1, palletPrice: 9, freightPerPallet: 40, freightPerTonne: undefined }, packing: filled, existingDie: standing, alternatives: [{ ups: 6, sheet: '720x510' }, { name: 'FH-3', ups: 14, ownDie: true }], units: 'inch', customer: 'FH-4', date: '1. 2.', validUntil: '3. 4.' },
  'no rate at all': { ...plain, waste, board: { grade: 'GC1', strange: 1 }, packing: { rows: 1 }, existingDie: standing, food: { contact: 'FH-5', printSide: 'FH-5', inkFamily: 'FH-5', fibre: 'FH-5', person: 'FH-5', batch: 'FH-5' } },
  'labels on a faulty layout, board by the thousand sheets': { ...plain, ups: undefined, sheet: undefined, product: 'label', layout: 'layout.json', colours: undefined, inks: [{ name: 'K', coverage: 0.25 }, { name: 'P', coverage: [[1, 0]], gramsPerM2: 2, pricePerKg: 30 }], stages: [], rates: 'demo', packing: inCases },
  'blanks, machines known in part': { ...plain, product: 'blank', waste, rates: { press: { speed: 9000 }, cutter: {}, inkPricePerKg: 1, coatingPricePerKg: 1 }, packing: { thickness: 0.9, casesPerPallet: 2 } },
};

describe.each(Object.entries(JOBS))('%s', (_, job) => {
  const facts = makeQuote(readQuoteJob(job, 'job.json', () => layout));
  const priced = facts.quantities.every(({ pricePerThousand }) => pricePerThousand?.value != null);

  test.each(OTHER_LANGUAGES)('in %s: no English word, the same figures', (tag) => {
    const language = LANGUAGES[tag]!;
    const format = createFormat(language.locale);
    for (const report of [quoteReport, ...(priced ? [customerReport] : [])]) {
      const [english, own] = [report(facts), report(facts, language, format)];
      expect(englishLeft(english, own, [job, 'job.json', FIELD_VALUES])).toEqual([]);
      expect(saidIn(own).map(numbersIn)).toEqual(saidIn(english).map(numbersIn));
      expect(own.sections.map(({ id }) => id)).toEqual(english.sections.map(({ id }) => id));
    }
    const words = (svg: string): readonly string[] => svg.match(/(?<=>)[^<>\n]+(?=<)/g) ?? [];
    const [chart, own] = [inkPicture(facts)[0], inkPicture(facts, language, format)[0]];
    if (chart) expect(words(chart.svg).filter((text) => /\p{L}{5}/u.test(text) && words(own!.svg).includes(text))).toEqual([]);
  });
});

test('every figure and every open rate of a quote has its name in the tables', () => {
  const named = new Set(Object.values(JOBS).flatMap((job) => {
    const facts = makeQuote(readQuoteJob(job, 'job.json', () => layout));
    const figures = facts.quantities.flatMap(({ boardWeight, boardCostPerThousand, hours, materials, costs, cost, costPerThousand, pricePerThousand, packed }) => [boardWeight, boardCostPerThousand, ...hours, ...materials, ...(packed?.figures ?? []), ...costs, cost, costPerThousand, ...(pricePerThousand ? [pricePerThousand] : [])]);
    return [...figures.flatMap(({ name, inputs, missing }) => [name, ...Object.keys(inputs), ...missing]), ...facts.missing];
  }));
  const isOpen = (name: string) => [germanFigures, frenchFigures].some((words) => figureName(name, words, '') === name);
  expect([...named].filter((name) => isOpen(name) && name !== 'grammage')).toEqual([]);
  // Names that no quote shows are not kept; form, version and design are those of common forms.
  expect(FIGURE_NAMES.filter((name) => !named.has(name) && !/invented|published|^form$|^version$|^design$/.test(name))).toEqual([]);
});

test('English says names of figures as formulas write them', () => {
  const words = englishLanguage.quote('carton');
  expect(FIGURE_NAMES.map(words.named)).toEqual(FIGURE_NAMES);
  expect(englishLanguage.quote('label').named('cartons per case')).toBe('labels per case');
});
