import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
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
    expect(stdout.startsWith('7 375 pressings on 2 forms, cost 136 472.00; nothing costs less with 3 forms allowed.')).toBe(true);
  });

  test.each([
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
