import { describe, expect, test } from 'vitest';
import { EMPTY_JOB, type Job } from '../../src/desk/job/job.ts';
import { jobFromFile, jobToFile } from '../../src/desk/job/job-file.ts';
import { letterOf, pastedRows, printedRows, versionsJobOf, type Versions } from '../../src/desk/job/versions.ts';

const TEAS: Versions = {
  list: [{ id: 'a', name: 'mint', quantity: '12 000' }, { id: 'b', name: '', quantity: '800' }],
  forms: '2', formCost: '', pressingCost: '0,35', overs: { least: '', greatest: '5%' }, plan: { forms: [['a', 'b', '']], asked: 'whatever', lowerBound: 9 },
};
const there = (job: Job) => jobFromFile(JSON.parse(jobToFile(job)) as Record<string, unknown>)!;

describe('versions of a job', () => {
  test('a job file keeps versions and stations; what was proved is not taken over', () => {
    expect(there({ ...EMPTY_JOB, versions: TEAS }).versions).toEqual({ ...TEAS, plan: { forms: [['a', 'b', '']], asked: '', lowerBound: 0 } });
  });

  test.each([null, 'x', { list: 'x' }, { list: [{ id: '' }] }, { list: [{ id: 'a', name: 'n', quantity: '1' }, { id: 'a', name: 'm', quantity: '1' }] }, { list: [{ id: 'a', name: 7, quantity: '1' }] }])('nonsense is passed over: %j', (versions) => {
    expect(there({ ...EMPTY_JOB, versions: versions as unknown as Versions }).versions).toEqual(EMPTY_JOB.versions);
  });

  test('as the engine reads it: numbers as people type them, a letter for a name', () => {
    expect(versionsJobOf(TEAS, 3)).toEqual({ ask: { stations: 3, versions: [{ id: 'mint', quantity: 12000, overs: { least: 0, greatest: 600 } }, { id: 'B', quantity: 800, overs: { least: 0, greatest: 40 } }], forms: 2, costs: { form: 0, pressing: 0.35 } } });
    expect(versionsJobOf({ ...TEAS, forms: '1.5', formCost: 'x', list: [...TEAS.list, { id: 'c', name: 'mint', quantity: '0' }] }, 3)).toEqual({
      faults: [{ field: 'name', row: 2 }, { field: 'quantity', row: 2 }, { field: 'forms' }, { field: 'formCost' }],
    });
  });

  test('a version with overs of its own: they hold for it, field by field; a file keeps them; what cannot be used is named by its row', () => {
    const own = { ...TEAS, list: TEAS.list.with(1, { ...TEAS.list[1]!, overs: { least: '10', greatest: '' } }) };
    const job = versionsJobOf(own, 3);
    if (!('ask' in job)) throw new Error('not readable');
    expect(job.ask.versions.map(({ overs }) => overs)).toEqual([{ least: 0, greatest: 600 }, { least: 10, greatest: 40 }]);
    expect(there({ ...EMPTY_JOB, versions: own }).versions.list).toEqual(own.list);
    expect(versionsJobOf({ ...own, list: own.list.with(1, { ...own.list[1]!, overs: { least: '50', greatest: '' } }) }, 3)).toEqual({ faults: [{ field: 'ownOvers', row: 1 }] });
  });

  test('stations beyond the plan, and those of a version that is gone, print nothing', () => {
    expect(printedRows({ ...TEAS, list: TEAS.list.slice(1) }, 4)).toEqual([[undefined, 0, undefined, undefined]]);
  });

  test('letters go on after Z; a pasted table is rows of name and quantity', () => {
    expect([0, 25, 26, 51, 52].map(letterOf)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA']);
    expect(pastedRows('mint\t12 000\r\nlemon balm;800\n\nsage   5\n')).toEqual([{ name: 'mint', quantity: '12 000' }, { name: 'lemon balm', quantity: '800' }, { name: 'sage', quantity: '5' }]);
  });
});
