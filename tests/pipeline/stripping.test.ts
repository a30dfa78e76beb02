import { describe, expect, test } from 'vitest';
import { strippingOf } from '../../src/estimate/stripping.ts';
import { brokenConditions } from '../../src/estimate/stripping-conditions.ts';
import { judgeStripping } from '../../src/layout/judge-stripping.ts';
import { judge } from '../../src/layout/judge.ts';
import { compareSheets, type CompareJob } from '../../src/pipeline/compare.ts';
import { factsOfComparison } from '../../src/pipeline/compare-showing.ts';
import { leastSheet } from '../../src/pipeline/least-sheet.ts';
import { nearMisses } from '../../src/pipeline/near-misses.ts';
import { nest, prepareNest, type NestJob } from '../../src/pipeline/nest.ts';
import { showNest } from '../../src/pipeline/nest-showing.ts';
import { squareMetres } from '../../src/press/sheet-candidates.ts';
import type { StrippingMode } from '../../src/press/stripping.ts';
import { GERMAN_TABLE } from '../../src/press/waste-table.ts';
import { englishLanguage } from '../../src/render/messages/english-language.ts';
import { barJob, quickSearch } from '../support/bar-job.ts';
import { at, grid, layoutWith, polygonDesign, rectangle } from '../support/layouts.ts';
import { readSample } from '../support/sample-figures.ts';

const wish = (mode: StrippingMode, rule: 'prefer' | 'must') => ({ mode, rule, leastStrip: 5 });

describe('six blanks of 164.6 mm that fit only 4 mm apart', () => {
  test('as a rule: 30 clean ups beside 36 awkward ones, each figure kept apart', async () => {
    const outcome = await nest({ ...barJob, stripping: wish('with-tools', 'must') }, quickSearch);
    const [first] = outcome.layouts;
    expect(first!.file.placements).toHaveLength(30);
    expect(first!.file.rules.gap).toBe(4);
    expect(judge(first!.file).state).toBe('sound');
    expect(judgeStripping(first!.file, wish('with-tools', 'must'))).toEqual([]);
    // The limit without the rule stays the sheet's; under the rule 30 is proved.
    expect(first!.file.result).toMatchObject({ ups: 30, upperBound: 36, optimal: false, stripping: { kept: true, upperBound: 30, other: { ups: 36, kept: false } } });
    const { report, html } = showNest(outcome, first!, { name: 'bar', seed: 1, history: [] });
    expect(report.answer).toMatch(/36 ups are possible, but 35 strips are narrower than 5 mm: 30 keep the rule/);
    // 10 000 ÷ 30 = 333.3, 10 000 ÷ 36 = 277.8, 36 ÷ 30 = 1.2.
    expect(report.sections.find(({ id }) => id === 'stripping')!.sentences.join(' ')).toMatch(/20\.0 % more sheets \(334 instead of 278/);
    expect(html()).toContain('36 ups, does not strip cleanly');
  });

  test('as a preference: 36 ups, said what they break and what the rule would cost', async () => {
    const { layouts, stripping } = await nest({ ...barJob, stripping: wish('with-tools', 'prefer') }, quickSearch);
    expect(layouts[0]!.file.placements).toHaveLength(36);
    expect([stripping!.broken.map(({ condition }) => condition), stripping!.other!.file.placements.length, stripping!.limit!.ups]).toEqual([['strips'], 30, 30]);
  });

  test('without a wish nothing changes', async () => {
    const { layouts, stripping } = await nest(barJob, quickSearch);
    expect([stripping, layouts[0]!.file.result!['stripping']]).toEqual([undefined, undefined]);
  });

  test('a rule that nothing keeps is refused, with what to do', async () => {
    await expect(nest({ ...barJob, sheet: { width: 180, height: 124 }, settings: { gap: 4, bleed: 2, sideMargins: [2, 2], inkSides: 0, inkTail: 0, inkGripper: 0, gripper: 10, tail: 2 }, stripping: wish('with-tools', 'must') }, quickSearch)).resolves.toBeDefined();
    await expect(nest({ ...barJob, sheet: { width: 172, height: 124 }, settings: { gap: 4, bleed: 2, sideMargins: [2, 2], inkSides: 0, inkTail: 0, inkGripper: 0, gripper: 10, tail: 2 }, stripping: wish('with-tools', 'must') }, quickSearch)).rejects.toMatchObject({ issues: [{ code: 'stripping-rule-impossible' }] });
  });
});

/** A die-cutter whose waste must come off with tools. */
const tools = { cutter: { stripping: 'with-tools', strippingRule: 'must', leastStrip: 5 } } as const;

describe('what the record of the die-cutter asks holds wherever blanks are laid out', () => {
  const candidates = [[1020, 720], [1020, 620]].map(([width, height]) => ({ sheet: { width: width!, height: height! }, grain: undefined, origin: { kind: 'stock' as const }, boughtM2: squareMetres({ width: width!, height: height! }) }));
  const compareJob: CompareJob = { ...barJob, machines: tools, candidates, ranges: [], toleranceMm: 0, terms: { quantities: [], route: { colours: 4, varnishUnits: 0, stages: [] }, grammage: undefined, pricePerTonne: undefined, currency: 'EUR', waste: GERMAN_TABLE, rates: {} } };

  test('nest takes it from the record, what is said for the job stands above it, and straight cuts leave nothing to strip', async () => {
    const ups = async (job: Partial<NestJob>) => (await nest({ ...barJob, machines: tools, ...job }, quickSearch)).layouts[0]!.file.placements.length;
    expect([await ups({}), await ups({ stripping: { rule: 'prefer' } }), await ups({ stripping: { leastStrip: 4 } }), await ups({ stripping: 'none' })]).toEqual([30, 36, 36, 36]);
  });

  test('compared sheets, looked at or searched, keep it; the limit stays that of the sheet; it is said', async () => {
    const comparison = await compareSheets(compareJob, quickSearch);
    expect(comparison.compared.map(({ ups, upperBound }) => [ups, upperBound])).toEqual([[30, 36], [25, 30]]);
    for (const { layout } of comparison.compared) expect([judge(layout).state, judgeStripping(layout, wish('with-tools', 'must'))]).toEqual(['sound', []]);
    const [note] = factsOfComparison('bar', compareJob, comparison, []).notes;
    expect(englishLanguage.issues.sentence(note!)).toBe('Only layouts that keep what stripping with tools asks are taken, with strips of waste of 5 mm or more.');
    const freely = await compareSheets({ ...compareJob, machines: {} }, quickSearch);
    expect(freely.compared.map(({ ups }) => ups)).toEqual([36, 30]);
  });

  test('a sheet that was only looked at keeps it too', async () => {
    const widths = [1020, 1019, 1018, 1017].map((width) => ({ ...candidates[0]!, sheet: { width, height: 720 }, boughtM2: squareMetres({ width, height: 720 }) }));
    const { compared } = await compareSheets({ ...compareJob, candidates: widths }, quickSearch);
    expect(compared.filter(({ searched }) => searched !== 'full').length).toBeGreaterThan(0);
    expect(compared.map(({ ups }) => ups)).toEqual([30, 30, 30, 30]);
  });

  test('a least sheet and near misses are those under the rule', async () => {
    // Six columns 5 mm apart need 1012.6 mm and 12 mm of margins: 36 ups want 1024.6 mm.
    const { sheet } = (await leastSheet({ ...barJob, machines: tools, sheet: { width: 1100, height: 720 } }, { ups: 36, least: 'width', stepMm: 1 }, quickSearch)).job;
    expect(sheet.width).toBe(1025);
    const job = { ...barJob, machines: tools };
    const { problem } = prepareNest(job);
    const standing = (await nest(job, quickSearch)).layouts[0]!.ranked.placements;
    const { found } = await nearMisses({ job, problem, placements: standing, style: undefined }, { yearly: undefined, currency: 'EUR', grammage: undefined, pricePerTonne: undefined, rates: {} }, quickSearch);
    expect(found.length).toBeGreaterThan(0);
    for (const { layout } of found) expect(judgeStripping(layout, wish('with-tools', 'must'))).toEqual([]);
  });
});

test('blanking takes only cells between straight ways, and the figures and the judge agree on it', async () => {
  const carton = readSample('straight-tuck-medium.svg');
  const job: NestJob = { id: 'carton', blank: carton.blanks[0]!, drawing: carton, sheet: { width: 1020, height: 720 }, settings: {}, machines: {}, layouts: 1, stripping: wish('with-blanking', 'must') };
  const { layouts, stripping } = await nest(job, quickSearch);
  const { file } = layouts[0]!;
  // Boxes of 285.3 × 252 mm, 6 mm apart, upright on 1008 × 697: three columns, two rows.
  expect(file.placements).toHaveLength(6);
  expect(strippingOf(file, 5).blanksInGridCell).toBe(1);
  expect(judgeStripping(file, wish('with-blanking', 'must'))).toEqual([]);
  expect(stripping!.other!.broken.map(({ condition }) => condition)).toEqual(['ways']);
});

describe('conditions, told alike by figures and judge', () => {
  const card = rectangle('card', 100, 60);
  const sheet = { sheet: { width: 300, height: 200 } };
  const cards = (gap: number, from: readonly [number, number] = [20, 30]) => layoutWith([card], grid(card, { columns: 2, rows: 2, step: [100 + gap, 60 + gap], from }), { ...sheet, rules: { gap: 2, bleed: 1, bleedMeeting: 'apart', commonKnife: false } });
  const both = (layout: ReturnType<typeof cards>, mode: StrippingMode) => [brokenConditions(strippingOf(layout, 5), mode).map(({ condition }) => condition), [...new Set(judgeStripping(layout, { mode, leastStrip: 5 }).map(({ condition }) => condition))]];

  test.each([
    ['6 mm apart', cards(6), [[], [], []]],
    ['4 mm apart', cards(4), [['strips'], ['strips'], ['strips']]],
    ['4 mm of frame on the left', cards(6, [4, 30]), [[], ['frame'], ['frame']]],
    ['a pinwheel without a straight way', layoutWith([card], [at('card', 20, 20), at('card', 190, 20, 90), at('card', 90, 126), at('card', 84, 86, 90)], { sheet: { width: 300, height: 300 } }), [[], [], ['ways']]],
  ] as const)('%s', (_, layout, [hand, tools, blanking]) => {
    expect(both(layout, 'by-hand')).toEqual([hand, hand]);
    expect(both(layout, 'with-tools')).toEqual([tools, tools]);
    expect(both(layout, 'with-blanking')).toEqual([blanking, blanking]);
  });

  test('a slot of the blank itself is in every layout and breaks nothing', () => {
    const slotted = polygonDesign('slotted', [[0, 0], [100, 0], [100, 60], [52, 60], [52, 20], [48, 20], [48, 60], [0, 60]]);
    const { slivers } = strippingOf(layoutWith([slotted], grid(slotted, { columns: 2, rows: 2, step: [106, 66], from: [20, 30] }), sheet), 5);
    expect(slivers.map(({ inBlank }) => inBlank)).toEqual([true, true, true, true]);
  });

  test('by hand an island between blanks is pushed out; a pin takes a wide one, not a narrow one', () => {
    const stick = rectangle('stick', 60, 20);
    const ring = (inner: number) => layoutWith([stick], [at('stick', 20, 20), at('stick', 80 + 20, 20, 90), at('stick', 20 + inner, 80), at('stick', 40, 40, 90)], { ...sheet, rules: { gap: 0, bleed: 0, bleedMeeting: 'apart', commonKnife: true } });
    const broken = (mode: StrippingMode) => brokenConditions(strippingOf(ring(20), 5), mode).map(({ condition }) => condition);
    expect([broken('by-hand'), broken('with-tools')]).toEqual([['islands'], []]);
  });
});
