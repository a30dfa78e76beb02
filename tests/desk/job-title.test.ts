import { expect, test } from 'vitest';
import { EMPTY_JOB, type Job, type KeptLayout } from '../../src/desk/job/job.ts';
import { jobSummary, jobTitle } from '../../src/desk/job/job-title.ts';
import { wordsIn } from '../../src/desk/words/words.ts';

const words = wordsIn('en');
const layout = (id: string, ups: number) => ({ id, file: { sheet: { width: 1020, height: 720 }, placements: Array(ups).fill({}) } }) as unknown as KeptLayout;

test('a job without a name goes by that of its drawing', () => {
  const drawing = { kind: 'style', style: 'tray', values: { length: 62, width: 31 } } as const;
  expect([jobTitle({ ...EMPTY_JOB, name: 'mint tea', drawing }, words), jobTitle({ ...EMPTY_JOB, drawing }, words), jobTitle(EMPTY_JOB, words)]).toEqual(['mint tea', 'tray 62 31', 'without a name']);
});

test('jobs of one name are told apart by ups and sheet of the layout that is shown', () => {
  const job: Job = { ...EMPTY_JOB, layouts: [layout('a', 16), layout('b', 12)], chosen: 'b' };
  expect(jobSummary(job, words).replace(/\s/g, ' ')).toBe('12 ups, 1020 × 720 mm');
  expect(jobSummary(EMPTY_JOB, words)).toBe('');
});
