import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;
const binary = join(root, 'dist', 'cli', 'main.js');
const folder = mkdtempSync(join(tmpdir(), 'blankwright-nest-'));
const carton = join(root, 'samples', 'drawings', 'straight-tuck-small.svg');
afterAll(() => rmSync(folder, { recursive: true }));

function run(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [binary, ...args], { encoding: 'utf8', cwd: folder });
  return { status, stdout, stderr };
}

const nest = (...args: string[]) => run('nest', carton, '--sheet', '520x360', '--effort', 'quick', ...args);

describe('nest', () => {
  test('writes a layout that the judge finds sound, and says what it is', () => {
    const { stdout } = nest('--json', 'sheet.json', '--svg', 'sheet.svg', '--pdf', 'sheet.pdf', '--html', 'sheet.html', '--history', 'history.json', '--explain-limit', 'limit.json');
    const layout = JSON.parse(readFileSync(join(folder, 'sheet.json'), 'utf8'));
    expect(layout).toMatchObject({ format: 'blankwright-layout', version: 1, units: 'mm', usable: { x: 6, y: 13, width: 508, height: 337 } });
    expect(layout.placements.length).toBe(layout.result.ups);
    expect(layout.result.upperBound).toBeGreaterThanOrEqual(layout.result.ups);
    expect(stdout).toContain(`${layout.result.ups} ups on 520 × 360 mm`);
    expect(run('judge', 'sheet.json', '--limit', 'limit.json').status).toBe(0);
    const limit = JSON.parse(readFileSync(join(folder, 'limit.json'), 'utf8'));
    writeFileSync(join(folder, 'brave.json'), JSON.stringify({ ...limit, ups: limit.ups - 1 }));
    expect(run('judge', 'sheet.json', '--limit', 'brave.json')).toMatchObject({ status: 1, stdout: expect.stringContaining('does not hold') });
    expect(run('judge', 'sheet.json', '--limit', 'sheet.json').status).toBe(2);
    expect(readFileSync(join(folder, 'sheet.svg'), 'utf8')).toMatch(/^<svg|^<\?xml/);
    expect(readFileSync(join(folder, 'sheet.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
    expect(JSON.parse(readFileSync(join(folder, 'history.json'), 'utf8')).improvements.length).toBeGreaterThan(0);
    expect(JSON.parse(readFileSync(join(folder, 'limit.json'), 'utf8')).ups).toBe(layout.result.upperBound);
  });

  test('a rule for stripping: the same bytes for any number of workers, and judge says whether it holds', () => {
    // Six columns fit 4 mm apart, five 5 mm apart; the limits are met at once.
    writeFileSync(join(folder, 'bar.svg'), '<svg xmlns="http://www.w3.org/2000/svg" width="164.6mm" height="100mm" viewBox="0 0 164.6 100"><path id="cut" d="M0 0H164.6V100H0Z" fill="none" stroke="#000"/></svg>');
    const bars = (...args: string[]) => run('nest', 'bar.svg', '--sheet', '1020x720', '--rotations', '0', '--gap', '4', '--bleed', '2', '--effort', 'quick', ...args);
    const [one, two] = ['1', '2'].map((workers) => bars('--stripping', 'with-tools', '--stripping-rule', 'must', '--json', '-', '--workers', workers).stdout);
    expect(two).toBe(one);
    writeFileSync(join(folder, 'clean.json'), one!);
    expect(run('judge', 'clean.json', '--stripping', 'with-tools')).toMatchObject({ status: 0, stdout: expect.stringContaining('keeps it') });
    const wide = run('judge', 'clean.json', '--stripping', 'with-tools', '--least-strip', '30', '--json', 'wide.json');
    expect(wide).toMatchObject({ status: 1, stdout: expect.stringContaining('narrower than 30 mm') });
    expect(JSON.parse(readFileSync(join(folder, 'wide.json'), 'utf8')).stripping).toMatchObject({ kept: false, mode: 'with-tools' });
    writeFileSync(join(folder, 'cutter.json'), JSON.stringify({ stripping: 'with-tools', strippingRule: 'must' }));
    expect(bars('--cutter', 'cutter.json', '--json', '-').stdout).toBe(one);
    expect(bars('--stripping-rule', 'must')).toMatchObject({ status: 2, stderr: expect.stringContaining('--stripping') });
    expect(bars('--stripping', 'by-hand', '--cut', 'guillotine').status).toBe(2);
    run('handover', 'clean.json', '--to', 'clean');
    expect(readFileSync(join(folder, 'clean', 'stripping.html'), 'utf8')).toMatch(/This layout keeps it[\s\S]*30 ups take 20\.0.% more sheets/);
  });

  test('backs on one half of the sheet are laid out beside a library too, and not kept', () => {
    const backs = ['--back', 'work-and-turn', '--json', '-'];
    const { stdout, stderr } = nest(...backs, '--library', 'shop.db');
    expect(stdout).toBe(nest(...backs).stdout);
    expect(new Set(JSON.parse(stdout).placements.map((one: { design: string }) => one.design)).size).toBe(2);
    expect(stderr).toContain('not kept');
  });

  test('the least sheet for so many ups', () => {
    const sleeve = join(root, 'samples', 'drawings', 'sleeve.svg');
    const least = (...args: string[]) => run('nest', sleeve, '--sheet', '1020x720', '--effort', 'quick', ...args);
    const { status, stdout } = least('--ups', '6', '--step', '5', '--json', 'least.json');
    expect(status).toBe(0);
    const layout = JSON.parse(readFileSync(join(folder, 'least.json'), 'utf8'));
    expect(layout.placements.length).toBeGreaterThanOrEqual(6);
    expect(layout.result.leastSheet).toMatchObject({ ups: 6, least: 'depth', stepMm: 5 });
    expect(layout.sheet.height).toBeLessThan(400);
    expect(stdout).toContain(`${layout.sheet.height} mm deep`);
    expect(run('judge', 'least.json').status).toBe(0);
    expect(least('--ups', '400')).toMatchObject({ status: 2, stderr: expect.stringContaining('at most 12 can be') });
    expect(least('--least', 'area')).toMatchObject({ status: 2, stderr: expect.stringContaining('--ups') });
    expect(least('--ups', '6', '--grid', '2x3')).toMatchObject({ status: 2, stderr: expect.stringContaining('contradict') });
  });

  test('the same bytes for any number of workers; with - standard output holds JSON only', () => {
    const [one, two] = ['1', '2'].map((workers) => nest('--json', '-', '--workers', workers).stdout);
    expect(JSON.parse(one!).result.seed).toBe(1);
    expect(two).toBe(one);
  });

  test('a cut by the clock is said and is no failure', () => {
    const { status, stdout } = run('nest', carton, '--sheet', '1020x720', '--effort', 'thorough', '--seconds', '0.5', '--json', '-');
    expect(JSON.parse(stdout).result.stopped).toBe('seconds');
    expect(status).not.toBe(2);
  });

  test('grain turns the blank; both ways of saying rotations contradict each other', () => {
    const across = JSON.parse(nest('--grain', 'x', '--sheet-grain', 'y', '--json', '-').stdout);
    expect(across.designs[0].rotations).toEqual([90, 270]);
    expect(nest('--grain', 'x', '--sheet-grain', 'y', '--rotations', '0').status).toBe(2);
  });

  test('locked blanks stay', () => {
    nest('--json', 'first.json');
    const layout = JSON.parse(readFileSync(join(folder, 'first.json'), 'utf8'));
    const kept = layout.placements.slice(0, 2);
    writeFileSync(join(folder, 'kept.json'), JSON.stringify({ ...layout, placements: kept }));
    const again = JSON.parse(nest('--locked', 'kept.json', '--json', '-').stdout);
    for (const placed of kept) expect(again.placements).toContainEqual(placed);
  });
});

describe('what nest refuses: exit code 2, the place and the remedy named, nothing written', () => {
  const press = join(folder, 'press.json');
  writeFileSync(press, '{ "gripper": -3, "bar": "middle:6" }');
  test.each([
    ['no sheet', [], /--sheet/],
    ['a sheet of nonsense', ['--sheet', 'large'], /--sheet large: a size/],
    ['a length of nonsense', ['--sheet', '520x360', '--gap', 'wide'], /--gap wide: a length/],
    ['two faults at once', ['--sheet', '520x360', '--gap', '-1', '--seed', 'x'], /--gap -1[\s\S]*--seed x/],
    ['bleeds that overlap', ['--sheet', '520x360', '--gap', '4', '--bleed', '3'], /--bleed-meeting cut/],
    ['a blank too large', ['--sheet', '150x150'], /turned by 0°[\s\S]*too wide/],
    ['margins that leave nothing', ['--sheet', '520x20'], /nothing is left of the sheet/],
    ['long grain of a square', ['--sheet', '520x520', '--grain', 'x', '--sheet-grain', 'long'], /the sheet is square/],
    ['a wrong record', ['--sheet', '520x360', '--press', press], /gripper[\s\S]*bar/],
    ['a record that is not there', ['--sheet', '520x360', '--cutter', 'none.json'], /none.json: there is no such file/],
    ['an output over the drawing', ['--sheet', '520x360', '--svg', carton], /overwrite an input/],
    ['an output in no folder', ['--sheet', '520x360', '--effort', 'quick', '--svg', join(folder, 'no', 'x.svg')], /cannot write/],
  ])('%s', (_, args, message) => {
    const before = readdirSync(folder).sort();
    const { status, stderr } = run('nest', carton, ...args, '--json', 'refused.json');
    expect(status).toBe(2);
    expect(stderr).toMatch(message);
    expect(readdirSync(folder).sort()).toEqual(before);
  });

  test('a drawing that is none', () => {
    writeFileSync(join(folder, 'broken.svg'), '<svg><path d="M0 0');
    expect(run('nest', 'broken.svg', '--sheet', '520x360').status).toBe(2);
    expect(run('nest', 'missing.svg', '--sheet', '520x360').stderr).toContain('missing.svg: there is no such file');
  });
});

test('the help of every command can be read and names its options', () => {
  const help = execFileSync(process.execPath, [binary, 'nest', '--help'], { encoding: 'utf8' });
  for (const option of ['--sheet', '--gripper', '--bar', '--rotations', '--effort', '--locked', '--explain-limit']) expect(help).toContain(option);
});
