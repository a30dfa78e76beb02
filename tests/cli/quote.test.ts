import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { InputError } from '../../src/base/issue.ts';
import { writeLayoutFile } from '../../src/layout/layout-file.ts';
import { readQuoteJob } from '../../src/pipeline/quote-job.ts';
import { english } from '../../src/render/messages/english.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';

/** The real binary, run from another folder. */
const binary = join(import.meta.dirname, '..', '..', 'dist', 'cli', 'main.js');
let folder: string;
beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'quote-'))));
afterAll(() => rmSync(folder, { recursive: true }));

const job = { ups: 12, sheet: '1020x720', grammage: 300, quantities: [5000, 20000, 50000], colours: 4, varnishUnits: 1, stages: ['die-cutting', 'gluing'], boardPricePerTonne: 900, currency: 'EUR' };

function run(content: object, ...options: string[]) {
  writeFileSync(join(folder, 'job.json'), JSON.stringify(content));
  const { status, stdout, stderr } = spawnSync(process.execPath, [binary, 'quote', 'job.json', ...options], { cwd: folder, encoding: 'utf8' });
  return { status, stdout, stderr };
}

/** The sentences that a person would read. */
function refusal(work: () => unknown): string {
  try {
    work();
  } catch (error) {
    return (error as InputError).issues.map((issue) => english.sentence(issue)).join('\n');
  }
  return 'not refused';
}

describe('quote', () => {
  test('rates missing: exit 1, open figures null and listed', () => {
    const { status, stdout } = run(job, '--json', '-');
    const { quantities, missing } = JSON.parse(stdout);
    expect(status).toBe(1);
    expect(quantities[0]).toMatchObject({ quantity: 5000, sheets: 672, boardKg: 148.06, boardCostPerThousand: 26.65, pressHours: null, costPerThousand: null });
    expect(quantities.map(({ sheets }: { sheets: number }) => sheets)).toEqual([672, 1964, 4545]);
    expect(missing).toContain('press rate');
  });

  test('invented rates are called so; exit 0', () => {
    const { status, stdout, stderr } = run(job, '--rates', 'demo');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toContain('invented demonstration rates');
    expect(stdout.startsWith('5 000 cartons take 672 sheets')).toBe(true);
  });

  test('ups and sheet from a layout, rates and waste from files beside the job', () => {
    writeFileSync(join(folder, 'layout.json'), writeLayoutFile(layoutWith([rectangle('box', 100, 60)], [at('box', 10, 10), at('box', 116, 10)])));
    writeFileSync(join(folder, 'rates.json'), JSON.stringify({ name: 'ours', press: { speed: 9000, makereadyMinutes: 30, hourlyRate: 140 } }));
    const { ups: _, sheet: __, ...rest } = job;
    const { stdout } = run({ ...rest, layout: 'layout.json', rates: 'rates.json' }, '--json', '-');
    const answer = JSON.parse(stdout);
    expect(answer).toMatchObject({ ups: 2, rates: 'ours' });
    expect(answer.quantities[0].pressHours).toBeGreaterThan(0.5);
    expect(answer.missing).not.toContain('press rate');
  });

  test('the customer’s page shows prices and terms but no rate', () => {
    expect(run({ ...job, name: 'FH-1', customer: 'Fernhollow' }, '--rates', 'demo', '--customer', 'customer.html', '--html', 'inside.html').status).toBe(0);
    const [customer, inside] = ['customer.html', 'inside.html'].map((file) => readFileSync(join(folder, file), 'utf8').replace(/<style>.*<\/style>/s, ''));
    expect(customer).toContain('FH-1');
    expect(customer).toContain('per 1000');
    expect(customer).not.toMatch(/hourly|\brates?\b|margin|plate|waste/i);
    expect(inside).toContain('hourly rate');
  });

  test.each([
    ['a quantity of zero', { quantities: [0] }, 'quantities.0'],
    ['a million million', { quantities: [1e12] }, 'quantities.0'],
    ['a negative price', { boardPricePerTonne: -1 }, 'boardPricePerTonne'],
    ['an unknown grade', { grade: 'GX9' }, 'GX9'],
    ['an unknown stage', { stages: ['ironing'] }, 'ironing'],
    ['a sheet beyond the press', { press: { name: 'Press 2', maxSheet: '740x530' } }, 'Press 2'],
    ['a sheet of no size', { sheet: '0x720' }, 'sheet'],
    ['no grammage', { grammage: undefined }, 'grammage'],
    ['more colours than units', { press: { name: 'Press 2', units: 2 } }, 'Press 2'],
  ])('%s is refused and named', (_, change, named) => {
    expect(refusal(() => readQuoteJob({ ...job, ...change }, 'job.json', () => ({})))).toContain(named);
  });

  test('bad input: exit 2, a sentence, nothing written', () => {
    const { status, stdout, stderr } = run({ ...job, quantities: [0] }, '--html', 'never.html');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain('quantities.0');
    expect(existsSync(join(folder, 'never.html'))).toBe(false);
  });

  test('an output that names an input is refused', () => {
    expect(run(job, '--json', 'job.json').status).toBe(2);
    expect(JSON.parse(readFileSync(join(folder, 'job.json'), 'utf8'))).toEqual(job);
  });
});
