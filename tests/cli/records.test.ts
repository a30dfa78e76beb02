import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';

const root = join(import.meta.dirname, '..', '..');
const samples = join(root, 'samples');
const folder = mkdtempSync(join(tmpdir(), 'blankwright-records-'));
afterAll(() => rmSync(folder, { recursive: true }));
const run = (...args: string[]) => spawnSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), ...args], { encoding: 'utf8', cwd: folder });

test('a stock list goes from JSON to a table and back', () => {
  expect(run('records', join(samples, 'sheets', 'stock.json'), '--kind', 'sheets', '--csv', 'stock.csv').stdout).toContain('sound, 9 sheets');
  expect(JSON.parse(run('records', 'stock.csv', '--kind', 'sheets', '--json', '-').stdout).sheets).toEqual(JSON.parse(readFileSync(join(samples, 'sheets', 'stock.json'), 'utf8')).sheets);
});

test('tables stand wherever the records do', () => {
  const tables = join(samples, 'tables');
  const job = { ups: 12, sheet: '1020x720', quantities: [5000], colours: 4, stages: ['die-cutting', 'gluing'], board: join(tables, 'boards.csv#Folding boxboard 300') };
  writeFileSync(join(folder, 'job.json'), JSON.stringify(job));
  const { status, stdout, stderr } = run('quote', 'job.json', '--rates', join(tables, 'rates.csv'), '--json', '-');
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  expect(JSON.parse(stdout).quantities[0].costPerThousand).toBeGreaterThan(100);
  const compared = run('compare', join(samples, 'drawings', 'label-oval.svg'), '--sheets', join(tables, 'stock.csv'), '--board', join(tables, 'boards.csv'), '--effort', 'quick');
  expect(compared).toMatchObject({ status: 2, stderr: expect.stringContaining('which of the boards is meant? Write one of "Folding boxboard 275", "') });
  expect(run('compare', join(samples, 'drawings', 'label-oval.svg'), '--sheets', '500x300', '--board', join(tables, 'boards.csv#GC9')).stderr).toContain('none of the boards is named "GC9"');
});

test('a slip in a stock list is refused wherever the list is read', () => {
  writeFileSync(join(folder, 'slip.json'), JSON.stringify({ sheets: [{ sheet: '1020x720', grian: 'x', pricePerTone: 900 }] }));
  for (const command of [['records', 'slip.json', '--kind', 'sheets'], ['compare', join(samples, 'drawings', 'label-oval.svg'), '--sheets', 'slip.json']]) {
    expect(run(...command)).toMatchObject({ status: 2, stderr: expect.stringContaining('pricePerTonne seems to be meant') });
  }
});

test('a wrong table names line and field and writes nothing; an output that is the input is refused', () => {
  writeFileSync(join(folder, 'bad.csv'), 'sheet,grain\n1020x720,x\nlarge,x\n');
  expect(run('records', 'bad.csv', '--kind', 'sheets', '--json', 'never.json')).toMatchObject({ status: 2, stderr: expect.stringContaining('line 3, sheet') });
  expect(() => readFileSync(join(folder, 'never.json'))).toThrow();
  expect(run('records', 'bad.csv', '--kind', 'sheets', '--csv', 'bad.csv').status).toBe(2);
});
