import { beforeAll, describe, expect, test } from 'vitest';
import type { Blank } from '../../src/dieline/dieline.ts';
import { dielineOfStyle, styledBlank } from '../../src/dieline/styles/dieline-of-style.ts';
import { judge } from '../../src/layout/judge.ts';
import { inlineRunner } from '../../src/nesting/tasks.ts';
import { nearMisses, type NearMissTerms } from '../../src/pipeline/near-misses.ts';
import { changesOf, type StyledSource } from '../../src/pipeline/near-miss-changes.ts';
import { nest, type NestJob } from '../../src/pipeline/nest.ts';
import type { NearMissFacts } from '../../src/render/near-miss-facts.ts';
import { englishLanguage } from '../../src/render/messages/english-language.ts';
import { nearMissSection } from '../../src/render/near-miss-section.ts';
import { polyline } from '../../src/render/shapes.ts';

const search = { effort: 'quick', seed: 1, runner: inlineRunner(), stop: () => undefined } as const;
const terms: NearMissTerms = { yearly: 1_000_000, grammage: 300, pricePerTonne: 1000, rates: {}, currency: 'EUR' };

function rectangle(width: number, height: number): Blank {
  const corners = [{ x: 0, y: 0 }, { x: width, y: 0 }, { x: width, y: height }, { x: 0, y: height }];
  return { number: 1, outline: polyline(corners, true), openings: [], rules: [], box: { minX: 0, minY: 0, maxX: width, maxY: height }, areaMm2: width * height };
}

/** `only` names what is changed: everything takes long. */
async function missesOf(more: Partial<NestJob>, { style, asked = terms, only, watching }: { style?: StyledSource; asked?: NearMissTerms; only?: RegExp; watching?: Partial<Parameters<typeof nearMisses>[2]> } = {}): Promise<NearMissFacts> {
  const job: NestJob = { id: 'blank', blank: rectangle(50, 80), drawing: { fingerprint: 'f' }, settings: {}, machines: {}, layouts: 1, sheet: { width: 330, height: 230 }, ...more };
  const { problem, layouts } = await nest(job, search);
  const changes = changesOf(job, problem, style).filter(({ thing }) => !only || only.test(thing));
  return nearMisses({ job, problem, placements: layouts[0].ranked.placements, style }, asked, { ...search, ...watching }, changes);
}

/**
 * Rectangles that are not turned a quarter: rows and columns are the most there is, so every near miss can be worked out.
 * 50 × 80 with gap 6 on 330 × 230: usable 318 × 207, 5 columns and 2 rows; six columns need 6 × 50 + 5 gaps.
 */
describe('a rectangle whose near misses are known', () => {
  let facts: NearMissFacts;
  beforeAll(async () => {
    facts = await missesOf({});
  });
  const miss = (thing: string, ups = 12) => facts.found.find((one) => one.thing === thing && one.ups === ups);

  test('ten as it is', () => expect(facts.ups).toBe(10));

  test.each([
    ['gap', 6, 3.6, 12, '318 − 6 × 50 = 5 × 3.6'],
    ['sheet-width', 330, 342, 12, '6 × 56 − 6 + 12'],
    ['sheet-height', 230, 275, 15, '3 × 86 − 6 + 23'],
    ['edge-left', 50, 48, 12, '(318 + 6) ÷ 6 − 6'],
    ['edge-right', 50, 48, 12, '(318 + 6) ÷ 6 − 6'],
  ])('%s: %f → %f mm brings %i', (thing, from, to, ups) => expect(miss(thing, ups)).toMatchObject({ from, to, ups }));

  test('a common knife takes no gap at all: six columns', () => {
    expect(miss('common-knife')).toMatchObject({ ups: 12 });
    expect(miss('common-knife')!.layout.rules.commonKnife).toBe(true);
  });

  test('what brings nothing is listed with how far it was tried', () => {
    expect(facts.notFound.map(({ thing }) => thing)).toEqual(['gripper', 'tail', 'sides', 'edge-top', 'edge-bottom']);
    expect(facts.notFound[0]).toMatchObject({ from: 13, to: 7 });
  });

  test('every claim has its own judged layout', () => {
    for (const { layout, ups } of facts.found) {
      expect(layout.placements).toHaveLength(ups);
      expect(judge(layout).state).toBe('sound');
    }
  });

  test('worth a year: 330 × 230 ÷ 10 less ÷ 12 is 1.265 m² a thousand, 379.5 kg and 379.5 EUR a year', () => {
    const { saved } = miss('gap')!;
    expect(saved.m2PerThousand).toBeCloseTo(1.265, 9);
    expect(saved.m2PerYear).toBeCloseTo(1265, 6);
    expect(saved.kgPerYear).toBeCloseTo(379.5, 6);
    expect(saved.moneyPerYear).toBeCloseTo(379.5, 6);
  });

  test('the section says bleeds are cut where the gap goes below twice the bleed, and how fine the search was', () => {
    const { sentences, table } = nearMissSection(facts, englishLanguage);
    const rows = table!.rows.map(([change]) => change);
    expect(rows).toContain('gap 2.4 mm narrower (6 → 3.6 mm, bleeds cut at the middle (1.8 mm each))');
    expect(sentences.join(' ')).toContain('steps of 0.1 mm');
  });
});

test('a flap of a blank drawn from dimensions is named; a dimension counts too', async () => {
  const { values } = styledBlank('rounded-label', { width: 50, height: 80 });
  const facts = await missesOf({ blank: dielineOfStyle('rounded-label', values).blanks[0] }, { style: { id: 'rounded-label', values }, only: /^flap:width/ });
  expect(facts.found.find(({ thing }) => thing === 'flap:width')).toMatchObject({ from: 50, to: 48, ups: 12 });
});

test('the colour bar’s place: at the tail it takes a row, elsewhere not', async () => {
  // Two rows take 166 mm. A bar at the tail takes 3 mm for the ink, its height, and 3 mm to the knives: 230 − 13 − 6 − 46 is 165.
  const facts = await missesOf({ settings: { bar: { place: 'tail', height: 46 } } }, { only: /^bar-(none|height)/ });
  expect(facts.ups).toBeLessThan(10);
  expect(facts.found.find(({ thing }) => thing === 'bar-none')).toMatchObject({ ups: 10 });
  expect(facts.found.find(({ thing, ups }) => thing === 'bar-height' && ups === 10)).toMatchObject({ from: 46, to: 45, ups: 10 });
});

test('money is open without a price; press and die-cutter count where their rates are given', async () => {
  expect((await missesOf({}, { asked: { ...terms, pricePerTonne: undefined }, only: /^gap/ })).found[0].saved.moneyPerYear).toBeUndefined();
  const machine = { speed: 9000, hourlyRate: 90 };
  const facts = await missesOf({}, { asked: { ...terms, rates: { press: machine, cutter: machine } }, only: /^gap/ });
  expect(facts.counts).toBe('board and machines');
  // Board 0.02277 and 2 × 90 ÷ 9000 a sheet: a million cartons on 10 less on 12 ups.
  expect(facts.found.find(({ thing }) => thing === 'gap')!.saved.moneyPerYear).toBeCloseTo((0.02277 + 0.02) * 1e6 * (1 / 10 - 1 / 12), 6);
});

describe('while changes are tried', () => {
  const size = (one: NearMissFacts) => [one.tried, one.found.length, one.notFound.length];
  /** Told of every step; stopped once `isEnough` says so. */
  const watched = async (isEnough: (soFar: NearMissFacts) => boolean) => {
    const told: NearMissFacts[] = [];
    let isStopped = false;
    const onProgress = (soFar: NearMissFacts) => {
      told.push(soFar);
      isStopped ||= isEnough(soFar);
    };
    const stop = () => (isStopped ? ('interrupted' as const) : undefined);
    return { told, facts: await missesOf({}, { only: /^(gap|gripper|sheet-.*)$/, watching: { onProgress, stop } }) };
  };

  test('each near miss is told as soon as it is found, the best first; the last word is the answer', async () => {
    const { told, facts } = await watched(() => false);
    expect(size(facts)).toEqual([4, 3, 1]);
    expect(facts.changes).toBe(4);
    expect(told.map(size)).toEqual([[0, 0, 0], [0, 1, 0], [1, 1, 0], [2, 1, 1], [2, 2, 1], [3, 2, 1], [3, 3, 1]]);
    expect(told.at(-1)!.found).toEqual(facts.found);
    for (const { found } of told) expect(found).toEqual(found.toSorted((a, b) => b.saved.m2PerThousand - a.saved.m2PerThousand));
    expect(nearMissSection(facts, englishLanguage).sentences.join(' ')).not.toContain('Stopped');
  });

  test('stopped, what was found stays and it says that not all was tried; nothing cut short is called of no use', async () => {
    const { facts } = await watched(({ tried }) => tried === 1);
    expect(size(facts)).toEqual([1, 1, 0]);
    expect(facts.found[0]).toMatchObject({ thing: 'gap', to: 3.6, ups: 12 });
    expect(nearMissSection(facts, englishLanguage).sentences).toContain('Stopped before all was tried: 1 of 4 changes.');
  });
});
