import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), 'blankwright-compare-'));
const label = join(root, 'samples', 'drawings', 'label-rounded.svg');
afterAll(() => rmSync(folder, { recursive: true }));

function run(...args: string[]) {
  return spawnSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), ...args, '--effort', 'quick'], { encoding: 'utf8', cwd: folder });
}

interface Answer {
  readonly candidates: { sheet: { width: number; height: number; grain: string | null }; ups: number; upperBound: number; boardM2PerThousand: number; searched: string; leastSheet: { width: number; height: number } }[];
  readonly winners: { fromQuantity: number; candidate: number; turns?: number[] }[];
  readonly sentence: string;
  readonly missing: string[];
  readonly measure: string;
}

interface Priced {
  readonly costPerThousand: (number | null)[];
  readonly boardM2PerThousandWithWaste: number[];
  readonly existingDie?: string;
  readonly fromCartons?: number;
}
type MoneyAnswer = Omit<Answer, 'candidates'> & { readonly candidates: (Answer['candidates'][number] & Priced)[] };

const board = join(root, 'samples', 'boards', 'label-80.json');
const winnerOf = ({ winners }: Pick<Answer, 'winners'>, quantity: number) => winners.findLast(({ fromQuantity }) => fromQuantity <= quantity)!.candidate;

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

describe('money', () => {
  const quantities = [2000, 20_000, 400_000];

  test('cost per thousand at each quantity; the winner at a quantity costs least there; charts and page are written', () => {
    const { status, stdout } = run('compare', label, '--sheets', '320x230,480x330,660x460', '--board', board, '--rates', 'demo', '--quantities', quantities.join(), '--json', '-', '--svg', 'charts.svg', '--html', 'page.html');
    expect(status).toBe(0);
    const answer = JSON.parse(stdout) as MoneyAnswer;
    expect(answer.measure).toBe('money');
    quantities.forEach((quantity, i) => {
      const costs = answer.candidates.map(({ costPerThousand }) => costPerThousand[i]!);
      expect(costs[winnerOf(answer, quantity)]).toBe(Math.min(...costs));
    });
    for (const { costPerThousand } of answer.candidates) expect(costPerThousand).toEqual(costPerThousand.toSorted((a, b) => b! - a!));
    expect(answer.winners[0]!.fromQuantity).toBe(0);
    expect(answer.sentence).toMatch(/cost|saves/);
    expect(readFileSync(join(folder, 'charts.svg'), 'utf8')).toContain('EUR per 1000');
    expect(readFileSync(join(folder, 'page.html'), 'utf8').match(/<svg/g)).toHaveLength(3);
  });

  test('without rates board decides, makeready included; the sentence speaks of board', () => {
    const answer = JSON.parse(run('compare', label, '--sheets', '320x230,660x460', '--quantities', '500,400000', '--json', '-').stdout) as MoneyAnswer;
    expect(answer.candidates.map(({ costPerThousand }) => costPerThousand)).toEqual([[null, null], [null, null]]);
    expect(answer).toMatchObject({ measure: 'board', missing: ['grammage'] });
    [500, 400_000].forEach((quantity, i) => {
      const bought = answer.candidates.map(({ boardM2PerThousandWithWaste }) => boardM2PerThousandWithWaste[i]!);
      expect(bought[winnerOf(answer, quantity)]).toBe(Math.min(...bought));
    });
    expect(answer.sentence).toContain('board');
  });

  test('a die that stands costs no die: it wins small lots, the larger sheet from its break-even on', () => {
    run('nest', label, '--sheet', '480x330', '--json', 'standing.json');
    writeFileSync(join(folder, 'die.json'), JSON.stringify({ number: 'D-7', layout: 'standing.json' }));
    const { stdout } = run('compare', label, '--sheets', '660x460', '--die', 'die.json', '--board', board, '--rates', 'demo', '--quantities', '1000,5000000', '--json', '-');
    const answer = JSON.parse(stdout) as MoneyAnswer;
    expect(answer.candidates[1]!.existingDie).toBe('D-7');
    // Between them they take turns, sheet by sheet.
    expect(answer.winners.filter(({ turns }) => !turns).map(({ candidate }) => candidate)).toEqual([1, 0]);
    const other = run('compare', join(root, 'samples', 'drawings', 'label-oval.svg'), '--sheets', '660x460', '--die', 'die.json');
    expect({ status: other.status, stderr: other.stderr }).toMatchObject({ status: 2, stderr: expect.stringContaining('another outline') });
  });

  test('sizes made to order just fit: a step less and a row or column is lost; the mill’s minimum is counted in cartons', () => {
    const list = { toleranceMm: 2, sheets: [{ sheet: '480x330' }], madeToOrder: { least: '300x250', greatest: '480x330', step: 5, minimumTonnes: 2 } };
    writeFileSync(join(folder, 'order.json'), JSON.stringify(list));
    const answer = JSON.parse(run('compare', label, '--sheets', 'order.json', '--board', board, '--rates', 'demo', '--quantities', '1000,4000000', '--json', '-').stdout) as MoneyAnswer;
    const made = answer.candidates.slice(1);
    expect(made.length).toBeGreaterThan(0);
    for (const { sheet, leastSheet, costPerThousand, fromCartons } of made) {
      for (const side of ['width', 'height'] as const) {
        expect(sheet[side] % 5).toBe(0);
        expect(leastSheet[side]).toBeLessThanOrEqual(sheet[side]);
        expect(sheet[side] - leastSheet[side]).toBeLessThan(Math.max(7, sheet[side] === 300 || sheet[side] === 250 ? Infinity : 0));
      }
      expect(fromCartons).toBeGreaterThan(1000);
      expect(costPerThousand[0]).toBeNull();
      expect(costPerThousand[1] === null).toBe(fromCartons! > 4_000_000);
    }
  });
});

test.each([
  ['a quantity of zero', ['--sheets', '480x330', '--quantities', '0'], /--quantities 0: whole quantities/],
  ['a million million', ['--sheets', '480x330', '--quantities', '1000000000000'], /--quantities/],
  ['an unknown stage', ['--sheets', '480x330', '--stages', 'ironing'], /ironing is not known/],
  ['no list', [], /--sheets/],
  ['a list that is not there', ['--sheets', 'none.json'], /none.json: there is no such file/],
  ['only sheets that are too small', ['--sheets', '60x60,70x70'], /none of the 2 sheets/],
])('%s is refused', (_, args, message) => {
  const { status, stderr } = run('compare', label, ...args);
  expect(status).toBe(2);
  expect(stderr).toMatch(message);
});

test('a size beyond the machine is said of --sheets, the option of this command', () => {
  const { status, stderr } = run('compare', join(root, 'samples', 'drawings', 'tray.svg'), '--sheets', '3000x2000', '--press', join(root, 'samples', 'presses', 'b0-seven-colours.json'));
  expect(status).toBe(2);
  expect(stderr).toMatch(/--sheets: sheet 3000 × 2000 mm is larger/);
});
