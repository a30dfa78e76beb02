import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

/** The real binary, run from another folder. */
const binary = join(import.meta.dirname, '..', '..', 'dist', 'cli', 'main.js');
let folder: string;
beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'gang-'))));
afterAll(() => rmSync(folder, { recursive: true }));

function run(content: object, ...options: string[]) {
  writeFileSync(join(folder, 'job.json'), JSON.stringify(content));
  const { status, stdout, stderr } = spawnSync(process.execPath, [binary, 'gang', 'job.json', ...options], { cwd: folder, encoding: 'utf8' });
  return { status, stdout, stderr };
}

/** The report's first sentence, its lines joined. */
function said(stdout: string): string {
  return stdout.split('\n\n')[0]!.replaceAll('\n', ' ').trim();
}

const flavours = { stations: 9, versions: [250, 255, 260, 500, 500, 800, 1100].map((quantity, i) => ({ id: `v${i + 1}`, quantity })), forms: 2 };

describe('gang', () => {
  test('fewest pressings, proved; demand met within the stations', () => {
    const { status, stdout, stderr } = run(flavours, '--json', '-');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    const answer = JSON.parse(stdout);
    expect(answer).toMatchObject({ objective: 'pressings', totalPressings: 418, totalCost: null, lowerBound: 418, optimal: true });
    for (const { id, quantity } of flavours.versions) {
      const made = answer.forms.reduce((sum: number, form: { counts: Record<string, number>; pressings: number }) => sum + form.counts[id]! * form.pressings, 0);
      expect(made - quantity).toBe(answer.overs[id]);
      expect(answer.overs[id]).toBeGreaterThanOrEqual(0);
    }
  });

  test('least cost; the report begins with the answer', () => {
    const covers = { stations: 4, versions: [4500, 9000, 16000].map((quantity, i) => ({ id: `cover ${i + 1}`, quantity })), forms: 3, costs: { form: 18676, pressing: 13.44 } };
    const { status, stdout } = run(covers);
    expect(status).toBe(0);
    expect(said(stdout)).toBe('7 375 pressings on 2 forms, cost 136 472 in units of the job’s costs; nothing costs less with 3 forms allowed.');
    expect(said(run({ ...covers, currency: 'eur' }).stdout)).toBe('7 375 pressings on 2 forms, cost 136 472 EUR; nothing costs less with 3 forms allowed.');
    expect(said(run({ ...covers, currency: 'EUR', costs: { form: 2.5, pressing: 0.01 } }).stdout)).toMatch(/ cost \d+\.\d\d EUR;/);
  });

  test('greatest overs for all, least overs for one version; what was allowed stands beside what is over', () => {
    const { status, stdout } = run({ ...flavours, forms: 3, overs: { greatest: 10 }, versions: flavours.versions.map((version, i) => (i === 0 ? { ...version, overs: { least: 2, greatest: 30 } } : version)) }, '--json', 'plan.json');
    expect(status).toBe(0);
    const { overs, optimal, totalPressings } = JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8'));
    expect(optimal).toBe(true);
    // Without limits 408 are the fewest.
    expect(totalPressings).toBeGreaterThanOrEqual(408);
    expect(overs.v1).toBeGreaterThanOrEqual(2);
    for (const id of ['v2', 'v3', 'v4', 'v5', 'v6', 'v7']) expect(overs[id]).toBeLessThanOrEqual(10);
    expect(stdout).toContain('allowed: 2 to 30 over');
  });

  test('with the terms of a quote the run is priced: forms with their waste, what each version bears; an open rate asks', () => {
    const quote = { sheet: '1020x720', grammage: 300, colours: 4, varnishUnits: 1, stages: ['die-cutting', 'gluing'], boardPricePerTonne: 900, rates: 'demo' };
    const { status, stdout } = run({ ...flavours, quote }, '--json', 'money.json');
    expect(status).toBe(0);
    expect(said(stdout)).toMatch(/The whole run: price [\d ]+\.\d\d EUR \([\d ]+\.\d\d EUR per 1000\), cost /);
    const { money, forms } = JSON.parse(readFileSync(join(folder, 'money.json'), 'utf8'));
    expect(money.forms.map(({ pressings }: { pressings: number }) => pressings)).toEqual(forms.map(({ pressings }: { pressings: number }) => pressings));
    const versions = Object.values(money.versions as Record<string, { cost: number }>);
    expect(versions.reduce((sum, { cost }) => sum + cost, 0)).toBeCloseTo(money.cost, 6);
    expect(run({ ...flavours, quote: { ...quote, rates: {} } }).status).toBe(1);
    const without = run({ ...flavours, quote: { ...quote, grammage: undefined } });
    expect(without.status).toBe(2);
    expect(without.stderr).toContain('quote');
  });

  test('a field of the job’s own is noted', () => {
    expect(run({ ...flavours, remark: 'for May' }).stdout).toContain('the field "remark" is not known');
  });

  test.each([
    ['overs that no plan keeps', { ...flavours, overs: { greatest: 5 } }, 'no plan keeps the least and greatest overs'],
    ['greatest overs under the least', { ...flavours, overs: { least: 9, greatest: 5 } }, 'the greatest overs are under the least'],
    ['a slip of a field', { ...flavours, statoins: 9 }, 'statoins: there is no such field; stations'],
    ['a slip within a version', { ...flavours, versions: [{ id: 'a', quantity: 1, quantitty: 2 }] }, 'quantity seems to be meant'],
    ['more versions than stations', { ...flavours, stations: 3 }, '3 forms or more'],
    ['a quantity of zero', { ...flavours, versions: [{ id: 'a', quantity: 0 }] }, 'versions.0.quantity'],
    ['an id given twice', { ...flavours, versions: [{ id: 'a', quantity: 1 }, { id: 'a', quantity: 2 }] }, 'a is given twice'],
    ['a negative price', { ...flavours, costs: { form: -1, pressing: 1 } }, 'costs.form'],
  ])('%s: exit 2', (_, job, named) => {
    const { status, stdout, stderr } = run(job);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain(named);
  });
});
