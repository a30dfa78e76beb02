import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { judge } from '../../src/layout/judge.ts';
import { readLayoutFile } from '../../src/layout/layout-file.ts';

/** The real binary, run from another folder. */
const binary = join(import.meta.dirname, '..', '..', 'dist', 'cli', 'main.js');
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'gang-outlines-'));
  drawing('large', 100, 100);
  drawing('small', 100, 50);
  drawing('huge', 900, 900);
  writeFileSync(join(folder, 'oval.svg'), '<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="60mm" viewBox="0 0 90 60"><ellipse id="Cutting" cx="45" cy="30" rx="45" ry="30" fill="none" stroke="#000"/></svg>');
});
afterAll(() => rmSync(folder, { recursive: true }));

function drawing(name: string, width: number, height: number): void {
  writeFileSync(join(folder, `${name}.svg`), `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"><rect id="Cutting" width="${width}" height="${height}" fill="none" stroke="#000"/></svg>`);
}

function run(job: object, ...options: string[]) {
  writeFileSync(join(folder, 'job.json'), JSON.stringify(job));
  const { status, stdout, stderr } = spawnSync(process.execPath, [binary, 'gang', 'job.json', '--effort', 'quick', ...options], { cwd: folder, encoding: 'utf8' });
  return { status, stdout, stderr };
}

/** Twelve large blanks, or twenty-four small ones, cover the sheet. */
const plain = { sheet: '400x300', gap: 0, bleed: 0, gripper: 0, tail: 0, sideMargins: 0, inkGripper: 0, inkTail: 0, inkSides: 0 };
const large = { file: 'large.svg', quantity: 600 };
const small = { file: 'small.svg', quantity: 1200 };
const job = { ...plain, forms: 2, designs: [large, small] };

interface Answer {
  forms: { counts: Record<string, number>; pressings: number; layout: unknown }[];
  totalPressings: number;
  lowerBound: number;
  overs: Record<string, number>;
}

describe('gang, several outlines', () => {
  test('rectangles that fill the sheet: one form, as few pressings as the area allows, every layout sound', () => {
    const { status, stdout, stderr } = run(job, '--json', '-');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    const answer = JSON.parse(stdout) as Answer;
    expect(answer).toMatchObject({ totalPressings: 100, lowerBound: 100, optimal: true, objective: 'pressings', separate: { forms: 2, totalPressings: 100 }, overs: { large: 0, small: 0 }, apart: [] });
    expect(answer.forms).toHaveLength(1);
    expect(answer.forms[0]!.counts).toEqual({ large: 6, small: 12 });
    const layout = readLayoutFile(answer.forms[0]!.layout, 'form');
    expect(judge(layout).state).toBe('sound');
    expect(layout.placements).toHaveLength(18);
  });

  test('quantities that do not divide: enough of all, never under the bound; the same for any number of workers', () => {
    const odd = { ...job, designs: [{ ...large, quantity: 1111 }, { ...small, quantity: 777 }] };
    const one = run(odd, '--json', '-', '--workers', '1').stdout;
    const answer = JSON.parse(one) as Answer;
    for (const [id, quantity] of [['large', 1111], ['small', 777]] as const) {
      const made = answer.forms.reduce((sum, { counts, pressings }) => sum + counts[id]! * pressings, 0);
      expect(made - quantity).toBe(answer.overs[id]);
      expect(answer.overs[id]).toBeGreaterThanOrEqual(0);
    }
    expect(answer.totalPressings).toBeGreaterThanOrEqual(answer.lowerBound);
    // 1 111 ÷ 12 + 777 ÷ 24 = 124.96
    expect(answer.lowerBound).toBe(125);
    expect(run(odd, '--json', '-', '--workers', '2').stdout).toBe(one);
  });

  test('a dear form is left out; cost and bound in money', () => {
    const { stdout } = run({ ...job, costs: { form: 5000, pressing: 2 }, designs: [{ ...large, quantity: 601 }, small] }, '--json', '-');
    const answer = JSON.parse(stdout);
    expect(answer.forms).toHaveLength(1);
    expect(answer.objective).toBe('cost');
    expect(answer.totalCost).toBe(5000 + 2 * answer.totalPressings);
    expect(answer.lowerBound).toBeLessThanOrEqual(answer.totalCost);
  });

  test('overs keep their limits', () => {
    const { stdout, status } = run({ ...job, designs: [{ ...large, overs: { least: 10, greatest: 40 } }, { ...small, quantity: 1000, overs: { greatest: 30 } }] }, '--json', '-');
    expect(status).toBe(0);
    const { overs } = JSON.parse(stdout) as Answer;
    expect(overs['large']).toBeGreaterThanOrEqual(10);
    expect(overs['large']).toBeLessThanOrEqual(40);
    expect(overs['small']).toBeLessThanOrEqual(30);
  });

  test('designs of another coating do not share, and the report says why', () => {
    const apart = { ...job, coating: 'gloss', designs: [large, { ...small, coating: 'matt' }] };
    const { stdout } = run(apart, '--json', 'apart.json');
    const answer = JSON.parse(readFileSync(join(folder, 'apart.json'), 'utf8'));
    expect(answer.apart).toEqual([{ designs: ['large', 'small'], because: 'coating', says: ['gloss', 'matt'] }]);
    expect(answer.forms.map(({ counts }: Answer['forms'][number]) => Object.values(counts).filter((count) => count > 0).length)).toEqual([1, 1]);
    expect(stdout).toContain('large and small: coating gloss and matt.');
  });

  test('more inks than units do not share', () => {
    const inks = { ...job, press: { name: 'Press 9', units: 4 }, designs: [{ ...large, inks: ['a', 'b', 'c'] }, { ...small, inks: ['c', 'd', 'e'] }] };
    const answer = JSON.parse(run(inks, '--json', '-').stdout);
    expect(answer.apart).toEqual([{ designs: ['large', 'small'], because: 'inks', says: ['5', '4'] }]);
  });

  test('labels by guillotine: straight cuts on every form, a cut list, the fewest pressings proved', () => {
    const labels = { ...job, cut: 'guillotine', designs: [{ ...large, quantity: 720 }, { ...small, quantity: 960, rotations: [0, 90] }] };
    const { status, stdout } = run(labels, '--json', '-');
    expect(status).toBe(0);
    const answer = JSON.parse(stdout) as Answer;
    // 720 ÷ 12 + 960 ÷ 24
    expect(answer).toMatchObject({ totalPressings: 100, lowerBound: 100, optimal: true });
    for (const { layout } of answer.forms) {
      const read = readLayoutFile(layout, 'form');
      expect(judge(read).state).toBe('sound');
      expect(read.result).toMatchObject({ cut: { by: 'guillotine' } });
    }
  });

  test('page with a picture of each form, and pictures by themselves', () => {
    expect(run(job, '--html', 'gang.html', '--svg', 'gang.svg').status).toBe(0);
    expect(readFileSync(join(folder, 'gang.html'), 'utf8').match(/<svg/g)).toHaveLength(1);
    expect(readFileSync(join(folder, 'gang-1.svg'), 'utf8')).toContain('<svg');
    expect(existsSync(join(folder, 'gang-2.svg'))).toBe(false);
  });

  test.each([
    ['no designs', { ...job, designs: [] }, 'at least one design'],
    ['a quantity of zero', { ...job, designs: [{ ...large, quantity: 0 }] }, 'designs.0.quantity'],
    ['a drawing that is not there', { ...job, designs: [{ ...large, file: 'none.svg' }] }, 'none.svg: there is no such file'],
    ['a blank larger than the sheet', { ...job, designs: [{ file: 'huge.svg', quantity: 5 }] }, 'huge'],
    ['the same id twice', { ...job, designs: [large, large] }, 'large is given twice'],
    ['a rotation that is no quarter turn', { ...job, designs: [{ ...large, rotations: [45] }] }, 'quarter turns'],
    ['more groups than forms', { ...job, forms: 1, designs: [{ ...large, board: 'x' }, { ...small, board: 'y' }] }, '2 groups that may not share'],
    ['overs the wrong way round', { ...job, designs: [{ ...large, overs: { least: 9, greatest: 3 } }] }, 'greatest overs'],
    ['a field misspelt', { ...job, gapp: 5 }, 'gapp'],
    ['a shape for the guillotine', { ...job, cut: 'guillotine', designs: [{ file: 'oval.svg', quantity: 5 }] }, 'oval cannot be guillotined'],
    ['a guillotine narrower than the sheet', { ...job, cut: 'guillotine', guillotine: { width: 100, liftHeight: 80, secondsPerCut: 8, secondsPerTurn: 8, secondsPerLift: 60, setUpMinutes: 9 } }, 'cuts 100 mm wide'],
    ['bleeds that overlap', { ...job, gap: 4, bleed: 3 }, 'bleeds of neighbours would overlap'],
  ])('%s: exit 2, nothing on stdout', (_, content, named) => {
    const { status, stdout, stderr } = run(content);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain(named);
  });

  test('with the terms of a quote the run is priced: what each design bears, forms with sheets and plates; an open rate asks', () => {
    const quote = { grammage: 300, colours: 4, stages: ['die-cutting', 'gluing'], boardPricePerTonne: 900, rates: 'demo' };
    const { status, stdout } = run({ ...job, quote }, '--json', 'money.json');
    expect(status).toBe(0);
    expect(stdout.replaceAll(/\s+/g, ' ')).toMatch(/The whole run: price .* for 1 800 cartons of 2 designs\./);
    expect(stdout).toContain('What each design costs');
    const { money } = JSON.parse(readFileSync(join(folder, 'money.json'), 'utf8'));
    // ⌈607 ÷ 6⌉ = ⌈1 213 ÷ 12⌉ = 102 good sheets; ⌈102 ÷ 0.99⌉ + 40 = 144; ⌈144 ÷ 0.989⌉ + 30 + 4 × 40 = 336.
    expect(money).toMatchObject({ sheets: 336, forms: [{ pressings: 100, goodSheets: 102, sheets: 336, plates: 4 }], missing: [] });
    const { large: one, small: other } = money.designs;
    expect(one.cost + other.cost).toBeCloseTo(money.cost, 6);
    const open = run({ ...job, quote: { ...quote, rates: {} } });
    expect(open.status).toBe(1);
    expect(open.stdout).toContain('die price: not given');
  });

  test('terms that contradict the job, or lack a figure, are refused by field and nothing is written', () => {
    const quote = { grammage: 300, stages: ['die-cutting'] };
    const refused = (more: object) => {
      const { status, stdout, stderr } = run({ ...job, ...more }, '--json', 'refused.json');
      expect({ status, stdout, written: existsSync(join(folder, 'refused.json')) }).toEqual({ status: 2, stdout: '', written: false });
      return stderr;
    };
    expect(refused({ quote: { stages: [] } })).toContain('job.json: quote');
    expect(refused({ quote: { ...quote, sheet: '1000x700' } })).toContain('"sheet": "1000x700"');
    expect(refused({ quote, cut: 'guillotine' })).toContain('want no die');
    expect(refused({ designs: [{ ...large, inks: ['gold'] }, small], quote: { ...quote, inks: [{ name: 'black', coverage: 0.2 }] } })).toContain('the quote has no ink "gold"');
  });
});
