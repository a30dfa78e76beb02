import { describe, expect, test } from 'vitest';
import { STYLES } from '../../src/dieline/styles/styles.ts';
import { showComparison } from '../../src/pipeline/compare-showing.ts';
import { STAGES } from '../../src/press/stages.ts';
import type { CompareFacts, ComparedSheetFacts } from '../../src/render/compare-facts.ts';
import { createFormat } from '../../src/render/format.ts';
import { LANGUAGES } from '../../src/render/messages/languages.ts';
import type { NearMiss, NearMissFacts } from '../../src/render/near-miss-facts.ts';
import { englishLanguage } from '../../src/render/messages/english-language.ts';
import { nearMissPicture, nearMissSection } from '../../src/render/near-miss-section.ts';
import type { Report } from '../../src/render/report.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';
import { englishLeft, numbersIn, OTHER_LANGUAGES, saidIn } from '../support/report-words.ts';

const layout = layoutWith([rectangle('FH', 100, 60)], [at('FH', 10, 10)]);

/** A sheet whose cost per thousand is `fixed` shared out over the quantity plus `running`. */
function sheet(width: number, fixed: number, running: number, more: Partial<ComparedSheetFacts> = {}): ComparedSheetFacts {
  const costAt = (quantity: number) => (1000 * fixed) / quantity + running;
  return {
    sheet: { width, height: 700 }, grain: 'x', origin: { kind: 'stock' }, die: undefined, ups: 8, upperBound: 9, searched: 'full', boardM2PerThousand: width / 8, boardM2WithWaste: [width / 6, width / 7], sheetsToOrder: [1, 2],
    costPerThousand: [costAt(5000), costAt(100_000)], boardCostPerThousand: [1, 1], fromCartons: undefined, leastSheet: { width, height: 700 }, sheetToOrder: { width: width + 2, height: 702 }, layout,
    curve: [2500, 20_000, 200_000].map((quantity) => ({ quantity, cost: costAt(quantity) })), ...more,
  };
}

const full: CompareFacts = {
  name: 'FH', quantities: [5000, 100_000], currency: 'EUR', ratesName: 'invented demonstration rates', measure: 'money', leastBoard: 4, skipped: 2, missing: ['press rate', 'grammage', 'board price'], toleranceMm: 2,
  sheets: [
    sheet(1000, 900, 40),
    sheet(900, 700, 60, { origin: { kind: 'parent', parent: { width: 900, height: 1400 }, parts: 2 } as ComparedSheetFacts['origin'], searched: 'few-rows' }),
    sheet(800, 1000, 30, { origin: { kind: 'reel', width: 800 } as ComparedSheetFacts['origin'], searched: 'rows' }),
    sheet(780, 2000, 90, { origin: { kind: 'made-to-order' } as ComparedSheetFacts['origin'], searched: 'patterns', fromCartons: 20_000, costPerThousand: [null, 110] }),
    sheet(700, 2000, 91, { die: { number: 'D-1' }, searched: 'die' }),
    sheet(710, 2000, 92, { die: { number: undefined }, costPerThousand: [null, null], curve: [] }),
  ],
  winners: [{ fromQuantity: 0, candidate: 1 }, { fromQuantity: 20_000, candidate: 2 }],
  route: { colours: 4, varnishUnits: 1, stages: STAGES.slice(1) }, wasteTable: 'published German table',
  notes: [
    { code: 'compare-quantities-assumed', severity: 'note', facts: { quantities: '5000, 100000' } },
    { code: 'compare-route-assumed', severity: 'note', facts: { what: 'colours', value: 4 } },
    { code: 'compare-route-assumed', severity: 'note', facts: { what: 'stages', value: 'die-cutting, gluing' } },
  ],
};
const won = (candidate: number) => [{ fromQuantity: 0, candidate }];
const board = { ...full, measure: 'board' } as const;

const COMPARISONS: Readonly<Record<string, CompareFacts>> = {
  'the winner takes over within the quantities': full,
  'up to a quantity': { ...full, quantities: [5000], winners: [{ fromQuantity: 0, candidate: 1 }, { fromQuantity: 20_000, candidate: 0 }] },
  'from one quantity to another': { ...full, winners: [{ fromQuantity: 0, candidate: 0 }, { fromQuantity: 9000, candidate: 2 }, { fromQuantity: 200_000, candidate: 0 }] },
  'the usual one wins in money': { ...full, winners: won(0) },
  'the usual one wins in board': { ...board, winners: won(0) },
  'least board at a quantity': { ...board, winners: won(4), toleranceMm: 0 },
  'least board, no quantity asked': { ...board, quantities: [], winners: won(4), ratesName: undefined },
  'nothing to be had': { ...full, winners: [{ fromQuantity: 200_000, candidate: 2 }] },
  'the cost of the usual one unknown': { ...full, sheets: full.sheets.map((one, i) => (i === 0 ? { ...one, costPerThousand: [null, null], curve: [] } : one)), winners: won(2) },
  'one sheet alone, no further stages': { ...full, sheets: full.sheets.slice(0, 1), winners: won(0), leastBoard: 0, skipped: 1, route: { colours: 1, varnishUnits: 0, stages: [] } },
};

const textsOf = (svg: string) => svg.match(/(?<=<(?:text|title)[^>]*>)[^<]+/g) ?? [];
/** The charts as a report, for its words and figures. */
const asReport = (language: string, svg: string): Report => ({ language, title: '', answer: '', caution: { heading: '', text: '' }, sections: [{ id: '', heading: '', sentences: textsOf(svg), figures: [] }] });

describe.each(Object.entries(COMPARISONS))('%s', (_, facts) => {
  test.each(OTHER_LANGUAGES)('in %s: report and charts without an English word, the same figures', (tag) => {
    const [english, own] = [showComparison(facts), showComparison(facts, undefined, LANGUAGES[tag])];
    for (const [said, meant] of [[english.report, own.report], [asReport('en', english.svg()), asReport(tag, own.svg())]] as const) {
      expect(englishLeft(said, meant, ['nest', facts.currency])).toEqual([]);
      expect(saidIn(meant).map(numbersIn)).toEqual(saidIn(said).map(numbersIn));
    }
  });
});

const PARTS = Object.values(STYLES).flatMap(({ allowances, dimensions }) => [...allowances.filter(({ name }) => /flap/i.test(name)), ...dimensions].map(({ name }) => `flap:${name}`));
const THINGS = ['gap', 'gripper', 'tail', 'sides', 'bar-height', 'sheet-width', 'sheet-height', 'edge-top', 'edge-bottom', 'edge-left', 'edge-right', ...new Set(PARTS)];
const ALLOWED = ['rotations', 'common-knife', 'bar-tail', 'bar-gripper', 'bar-centre', 'bar-none'];
const changed = (thing: string) => (ALLOWED.includes(thing) ? { thing } : { thing, from: 6, to: 5.4 });
const miss = (thing: string): NearMiss => ({ ...changed(thing), ups: 24, boardM2PerThousand: 5, saved: { m2PerThousand: 0.86, m2PerYear: 1714, kgPerYear: 137, moneyPerYear: 185 }, layout: { ...layout, rules: { ...layout.rules, bleedMeeting: 'cut', bleed: 3 } } });
const near: NearMissFacts = { ups: 21, sheet: { width: 450, height: 320 }, yearly: 2_000_000, currency: 'EUR', counts: 'board and machines', found: [...THINGS, ...ALLOWED].map(miss), notFound: [...THINGS, ...ALLOWED].map(changed), tried: 2, changes: 3, stepMm: 0.1, work: 1 };

describe('near misses', () => {
  const NEAR: Readonly<Record<string, NearMissFacts>> = { 'every change': near, 'board alone': { ...near, counts: 'board' }, 'none found': { ...near, found: [] }, 'no year': { ...near, yearly: undefined, found: [{ ...miss('gap'), saved: { m2PerThousand: 1, m2PerYear: undefined, kgPerYear: undefined, moneyPerYear: undefined } }] } };
  test.each(Object.keys(NEAR).flatMap((name) => OTHER_LANGUAGES.map((tag) => ({ name, tag }))))('$name, in $tag', ({ name, tag }) => {
    const facts = NEAR[name]!;
    const page = (language: string, section: Report['sections'][number]): Report => ({ language, title: '', answer: '', caution: { heading: '', text: '' }, sections: [section] });
    const [english, own] = [page('en', nearMissSection(facts, englishLanguage)), page(tag, nearMissSection(facts, LANGUAGES[tag]))];
    expect(englishLeft(english, own, facts.currency)).toEqual([]);
    expect(saidIn(own).map(numbersIn)).toEqual(saidIn(english).map(numbersIn));
    const [drawn, picture] = [nearMissPicture(facts, englishLanguage), nearMissPicture(facts, LANGUAGES[tag])];
    if (drawn) expect(englishLeft(asReport('en', drawn), asReport(tag, picture!), facts.currency)).toEqual([]);
  });

  test('every thing that may change has words in every language', () => {
    for (const tag of OTHER_LANGUAGES) for (const thing of [...THINGS, ...ALLOWED]) expect(LANGUAGES[tag]!.nearMiss.change(changed(thing), createFormat(tag))).not.toContain(thing.replace('flap:', ''));
  });
});
