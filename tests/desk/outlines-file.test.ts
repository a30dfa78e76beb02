import { describe, expect, test } from 'vitest';
import { EMPTY_JOB, type Job, type KeptLayout } from '../../src/desk/job/job.ts';
import { foundInFile } from '../../src/desk/job/found-in-file.ts';
import { jobFromFile, jobToFile } from '../../src/desk/job/job-file.ts';
import { layoutFromFile } from '../../src/desk/job/layouts.ts';
import { outlinesJobOf, type Outlines, type OutlinesPlan } from '../../src/desk/job/outlines.ts';
import { oversOf } from '../../src/desk/job/overs.ts';
import { readLayoutFile } from '../../src/layout/layout-file.ts';

const TWO: Outlines = {
  list: [
    { id: 'a', name: 'mint', quantity: '1 000', source: { kind: 'file', name: 'mint.svg', bytes: Uint8Array.of(60, 255, 0), options: { roles: [] } }, drawnFrom: 'inside' },
    { id: 'b', name: '', quantity: '30', source: { kind: 'style', style: 'reverse-tuck', values: { length: 60 } }, drawnFrom: 'printed' },
  ],
  forms: '2', formCost: '90', pressingCost: '', overs: { least: '1,5%', greatest: '' }, plan: undefined,
};
const LAYING = { sheet: { width: 720, height: 1020 }, settings: {}, machines: {} };
const there = (job: Job) => jobFromFile(JSON.parse(jobToFile(job)) as Record<string, unknown>)!;

describe('what a job file says was found', () => {
  const FILE = { sheet: { width: 200, height: 100 }, usable: { x: 0, y: 0, width: 200, height: 100 }, printable: { x: 0, y: 0, width: 200, height: 100 }, lay: 'left', keepOut: [], rules: { gap: 0, bleed: 0, bleedMeeting: 'apart', commonKnife: false }, designs: [{ id: 'a', outline: [[0, 0], [10, 0], [10, 10], [0, 10]], openings: [], rotations: [0] }], placements: [{ design: 'a', rotation: 0, x: 5, y: 5 }] } as const;
  const layout: KeptLayout = { ...layoutFromFile(FILE, 'sound', 'hand'), id: 'one', inputs: '[1]', byHand: true, locked: [0], limit: { ups: 1, by: 'area' } };
  const plan: OutlinesPlan = { forms: [{ counts: [1], pressings: 7, file: FILE }], overs: [0], cost: undefined, lowerBound: 7, separate: undefined, doubtful: [], asked: 'so', names: ['a'], quantities: [7] };
  const content = JSON.parse(jobToFile({ ...EMPTY_JOB, layouts: [layout], chosen: 'one', outlines: { ...TWO, plan } })) as Record<string, unknown>;

  test('layouts and forms come as contents of layout files, without what would have to be believed', () => {
    const found = foundInFile(content);
    expect(found).toMatchObject({ chosen: 'one', asked: 'so', layouts: [{ id: 'one', inputs: '[1]', byHand: true, locked: [0] }] });
    expect(Object.keys(found.layouts[0]!).toSorted()).toEqual(['byHand', 'id', 'inputs', 'layout', 'locked', 'source']);
    for (const one of [found.layouts[0]!.layout, found.forms[0]]) expect(readLayoutFile(one, 'job')).toEqual(FILE);
    expect(jobFromFile(content)).toMatchObject({ layouts: [], outlines: { plan: undefined } });
  });

  test.each([{ layouts: 7, forms: 'x' }, { layouts: [{ id: 'a' }, null, { id: 7, inputs: '', layout: {} }], forms: { layouts: {}, asked: 7 } }])('nonsense is passed over: %j', (nonsense) => {
    expect(foundInFile({ ...content, chosen: {}, ...nonsense })).toEqual({ layouts: [], chosen: undefined, forms: [], asked: '' });
  });
});

describe('several outlines of a job', () => {
  test('a job file keeps drawings, quantities and limits', () => {
    expect(there({ ...EMPTY_JOB, outlines: TWO }).outlines).toEqual(TWO);
  });

  test.each([null, { list: 7 }, { list: [{ id: 'a' }] }, { list: [TWO.list[1], TWO.list[1]] }, { list: [{ ...TWO.list[1], source: { kind: 'else' } }] }])('nonsense is passed over: %j', (outlines) => {
    expect(jobFromFile({ ...(JSON.parse(jobToFile(EMPTY_JOB)) as object), outlines })!.outlines).toEqual(EMPTY_JOB.outlines);
  });

  test('as the engine reads it; another quantity or sheet is another question, another effort is not', () => {
    const job = outlinesJobOf(TWO, LAYING, 'quick');
    if (!('ask' in job)) throw new Error('not readable');
    expect(job.ask.designs.map(({ id, quantity, overs }) => [id, quantity, overs])).toEqual([['mint', 1000, { least: 15 }], ['B', 30, { least: 1 }]]);
    expect(job.ask.costs).toEqual({ form: 90, pressing: 0 });
    expect(outlinesJobOf(TWO, LAYING, 'thorough')).toHaveProperty('asked', job.asked);
    expect(outlinesJobOf(TWO, { ...LAYING, sheet: { width: 700, height: 1000 } }, 'quick')).not.toHaveProperty('asked', job.asked);
    expect(outlinesJobOf({ ...TWO, list: TWO.list.with(0, { ...TWO.list[0]!, quantity: '1001' }) }, LAYING, 'quick')).not.toHaveProperty('asked', job.asked);
  });

  test('limits of its own and what must agree on a form: asked and kept in a file; strange fields are passed over', () => {
    const own = { ...TWO, list: TWO.list.with(1, { ...TWO.list[1]!, overs: { least: '', greatest: '50%' }, sharing: { inks: 'cyan, black,cyan', coating: ' matt ', board: '' } }) };
    const job = outlinesJobOf(own, LAYING, 'quick');
    if (!('ask' in job)) throw new Error('not readable');
    expect(job.ask.designs[1]).toMatchObject({ overs: { least: 1, greatest: 15 }, inks: ['cyan', 'black'], coating: 'matt' });
    expect(job.ask.designs[1]).not.toHaveProperty('board');
    expect(job.asked).not.toBe((outlinesJobOf(TWO, LAYING, 'quick') as { asked: string }).asked);
    expect(there({ ...EMPTY_JOB, outlines: own }).outlines).toEqual(own);
    const strange = { ...own, list: own.list.map((one) => ({ ...one, sharing: { inks: 7, other: 'x' } })) };
    expect(there({ ...EMPTY_JOB, outlines: strange as unknown as Outlines }).outlines.list[0]!.sharing).toEqual({});
  });

  test('what cannot be used is named', () => {
    const faulty = { ...TWO, forms: '13', formCost: 'x', overs: { least: 'x', greatest: '' }, list: TWO.list.map((one) => ({ ...one, name: 'mint', quantity: '' })) };
    expect(outlinesJobOf(faulty, LAYING, 'quick')).toEqual({ faults: [{ field: 'quantity', row: 0 }, { field: 'name', row: 1 }, { field: 'quantity', row: 1 }, { field: 'forms' }, { field: 'formCost' }, { field: 'overs' }] });
  });
});

describe('overs as typed', () => {
  test.each([
    ['', '', undefined],
    ['200', '', [{ least: 200 }, { least: 200 }]],
    ['', '5%', [{ least: 0, greatest: 50 }, { least: 0, greatest: 1 }]],
    ['1 %', '10 %', [{ least: 10, greatest: 100 }, { least: 1, greatest: 3 }]],
    ['4.5', '', 'fault'],
    ['%', '', 'fault'],
    ['20', '10', 'fault'],
  ])('%j to %j', (least, greatest, expected) => {
    expect(oversOf({ least, greatest }, [1000, 30])).toEqual(expected);
  });
});
