import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), 'blankwright-compare-'));
const label = join(root, 'samples', 'drawings', 'label-rounded.svg');
afterAll(() => rmSync(folder, { recursive: true }));

function run(...args: string[]) {
  return spawnSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), ...args, '--effort', 'quick'], { encoding: 'utf8', cwd: folder });
}

interface Answer {
  readonly candidates: { sheet: { width: number; height: number; grain: string | null }; ups: number; upperBound: number; boardM2PerThousand: number; searched: string; leastSheet: { width: number; height: number } }[];
  readonly winners: { fromQuantity: number; candidate: number }[];
  readonly sentence: string;
}

test('every sheet has its ups, limit and board; the winner takes least board; nest gives the same on it', () => {
  const { stdout, stderr } = run('compare', label, '--sheets', '320x230,480x330,450x320', '--json', '-');
  expect(stderr).not.toContain('error');
  const { candidates, winners, sentence } = JSON.parse(stdout) as Answer;
  expect(candidates).toHaveLength(3);
  for (const { sheet, ups, upperBound, boardM2PerThousand, leastSheet } of candidates) {
    expect(upperBound).toBeGreaterThanOrEqual(ups);
    expect(boardM2PerThousand).toBeCloseTo((sheet.width * sheet.height) / 1000 / ups, 2);
    expect(leastSheet.width).toBeLessThanOrEqual(sheet.width);
    expect(leastSheet.height).toBeLessThanOrEqual(sheet.height);
  }
  const winner = candidates[winners[0]!.candidate]!;
  expect(winner.searched).toBe('full');
  const fullySearched = candidates.filter(({ searched }) => searched === 'full').map(({ boardM2PerThousand }) => boardM2PerThousand);
  expect(winner.boardM2PerThousand).toBe(Math.min(...fullySearched));
  expect(sentence).toContain('mm');
  run('nest', label, '--sheet', `${winner.sheet.width}x${winner.sheet.height}`, '--json', 'winner.json');
  expect(JSON.parse(readFileSync(join(folder, 'winner.json'), 'utf8')).placements).toHaveLength(winner.ups);
});

test('grain of the drawing decides which way it lies on each sheet', () => {
  writeFileSync(join(folder, 'sheets.json'), JSON.stringify({ sheets: [{ sheet: '480x330', grain: 'both' }] }));
  const { candidates } = JSON.parse(run('compare', label, '--sheets', 'sheets.json', '--grain', 'x', '--json', '-').stdout) as Answer;
  expect(candidates.map(({ sheet }) => sheet.grain)).toEqual(['x', 'y']);
});

test.each([
  ['no list', [], /--sheets/],
  ['a list that is not there', ['--sheets', 'none.json'], /none.json: there is no such file/],
  ['only sheets that are too small', ['--sheets', '60x60,70x70'], /none of the 2 sheets/],
])('%s is refused', (_, args, message) => {
  const { status, stderr } = run('compare', label, ...args);
  expect(status).toBe(2);
  expect(stderr).toMatch(message);
});
