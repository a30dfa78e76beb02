import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

const root = join(import.meta.dirname, '..', '..');
const folder = mkdtempSync(join(tmpdir(), 'blankwright-near-'));
afterAll(() => rmSync(folder, { recursive: true }));
const run = (...args: string[]) => spawnSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), ...args], { encoding: 'utf8', cwd: folder });

// The label is drawn from dimensions: 50 × 80, on 330 × 130 five in one row.
beforeAll(() => void run('blank', 'rounded-label', '50', '80', '--svg', 'label.svg'));
const nest = (...more: string[]) => run('nest', 'label.svg', '--sheet', '330x130', '--rotations', '0', '--effort', 'quick', ...more);

test('the section stands in text, page and layout file; the drawing’s own dimension is named', () => {
  const { status, stdout } = nest('--near-misses', '--yearly', '1000000', '--board', join(root, 'samples', 'boards', 'label-80.json'), '--json', 'sheet.json', '--html', 'sheet.html');
  expect(status).toBe(0);
  expect(stdout).toContain('gap 2.4 mm narrower');
  expect(stdout).toContain('width 2 mm less (50 → 48 mm)');
  expect(stdout).toContain('EUR a year');
  const { result } = JSON.parse(readFileSync(join(folder, 'sheet.json'), 'utf8')) as { result: { nearMisses: { found: { thing: string; ups: number; layout: { placements: unknown[] } }[] } } };
  for (const { ups, layout } of result.nearMisses.found) expect(layout.placements).toHaveLength(ups);
  expect(readFileSync(join(folder, 'sheet.html'), 'utf8')).toContain('id="near-misses"');
  expect(run('judge', 'sheet.json').status).toBe(0);
});

test('not asked for, there are none; a yearly volume alone is refused', () => {
  expect(nest().stdout).not.toContain('Near misses');
  expect(nest('--yearly', '1000')).toMatchObject({ status: 2, stderr: expect.stringContaining('--near-misses') });
  expect(nest('--near-misses', '--grid', '1x2')).toMatchObject({ status: 2, stderr: expect.stringContaining('contradict') });
});
