import { describe, expect, test } from 'vitest';
import { EMPTY_JOB, type Job } from '../../src/desk/job/job.ts';
import { jobFromFile, jobToFile } from '../../src/desk/job/job-file.ts';
import { outlinesJobOf, type Outlines } from '../../src/desk/job/outlines.ts';
import { oversOf } from '../../src/desk/job/overs.ts';

const TWO: Outlines = {
  list: [
    { id: 'a', name: 'mint', quantity: '1 000', source: { kind: 'file', name: 'mint.svg', bytes: Uint8Array.of(60, 255, 0), options: { roles: [] } }, drawnFrom: 'inside' },
    { id: 'b', name: '', quantity: '30', source: { kind: 'style', style: 'reverse-tuck', values: { length: 60 } }, drawnFrom: 'printed' },
  ],
  forms: '2', formCost: '90', pressingCost: '', overs: { least: '1,5%', greatest: '' }, plan: undefined,
};
const LAYING = { sheet: { width: 720, height: 1020 }, settings: {}, machines: {} };
const there = (job: Job) => jobFromFile(JSON.parse(jobToFile(job)) as Record<string, unknown>)!;

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
