import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { judge } from '../../src/layout/judge.ts';
import { readLayoutFile } from '../../src/layout/layout-file.ts';

/** The real binary, run from another folder. */
const root = join(import.meta.dirname, '..', '..');
const binary = join(root, 'dist', 'cli', 'main.js');
const samples = join(root, 'samples');
let folder: string;
beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'guillotine-'))));
afterAll(() => rmSync(folder, { recursive: true }));

function nest(drawing: string, ...options: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [binary, 'nest', join(samples, 'drawings', `${drawing}.svg`), '--effort', 'quick', ...options], { cwd: folder, encoding: 'utf8' });
  return { status, stdout, stderr };
}

const BARE = ['--gap', '0', '--bleed', '0', '--gripper', '0', '--tail', '0', '--side-margins', '0', '--ink-gripper', '0', '--ink-tail', '0', '--ink-sides', '0'];

describe('nest --cut guillotine', () => {
  test('15 × 12 on 100 × 70 cm: 36 by straight cuts, 37 die-cut; sound, with a cut list and both pictures', () => {
    const { status, stdout, stderr } = nest('label-straight', '--sheet', '1000x700', ...BARE, '--rotations', '0,90', '--cut', 'guillotine', '--guillotine', join(samples, 'guillotines', 'g1-137.json'), '--board', join(samples, 'boards', 'label-80.json'), '--json', 'sheet.json', '--svg', 'sheet.svg', '--html', 'sheet.html');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout.replace(/\s+/g, ' ')).toContain('36 ups on 1000 × 700 mm by straight cuts; no pattern of straight cuts holds more; die-cut, 37 go on;');
    expect(stdout).toContain('1 333 sheets, 100 mm at 0.075 mm');
    expect(stdout.match(/guard/g)).toHaveLength(1);
    const layout = readLayoutFile(JSON.parse(readFileSync(join(folder, 'sheet.json'), 'utf8')), 'sheet.json');
    expect(judge(layout).state).toBe('sound');
    expect(layout.placements).toHaveLength(36);
    expect(layout.result).toMatchObject({ ups: 36, upperBound: 37, source: 'straight cuts', cut: { by: 'guillotine', optimal: true, dieCutUps: 37 } });
    expect(readFileSync(join(folder, 'sheet-cuts.svg'), 'utf8')).toContain('<svg');
    expect(readFileSync(join(folder, 'sheet.html'), 'utf8').match(/<svg/g)).toHaveLength(2);
  });

  test('grain kept: a grid, margins cut off, a gap takes two cuts', () => {
    const { status, stdout } = nest('label-straight', '--sheet', '1020x720', '--gap', '4', '--cut', 'guillotine', '--json', '-');
    const { placements, result } = JSON.parse(stdout);
    expect(status).toBe(0);
    expect(placements).toHaveLength(30);
    // Six columns, five rows: five gaps along one side and four along the other, each two cuts, and four margins.
    expect(result.cut.steps.map(({ places }: { places: number[] }) => places.length)).toEqual([10, 12]);
  });

  test.each([
    ['a shape', ['label-oval', '--cut', 'guillotine'], 'label-oval cannot be guillotined: its outline is not a rectangle'],
    ['a guillotine narrower than the sheet', ['label-straight', '--cut', 'guillotine', '--guillotine', 'narrow.json'], 'cuts 300 mm wide'],
    ['a guillotine without width', ['label-straight', '--cut', 'guillotine', '--guillotine', 'empty.json'], 'empty.json: width'],
    ['a guillotine for a die-cut job', ['label-straight', '--guillotine', 'narrow.json'], 'contradict'],
    ['a forced grid', ['label-straight', '--cut', 'guillotine', '--grid', '2x2'], 'contradict'],
    ['a way to cut that is none', ['label-straight', '--cut', 'laser'], 'die or guillotine is wanted'],
  ] as const)('%s: exit 2, nothing written', (_, [drawing, ...options], named) => {
    writeFileSync(join(folder, 'narrow.json'), JSON.stringify({ width: 300, liftHeight: 100, secondsPerCut: 8, secondsPerTurn: 9, secondsPerLift: 60, setUpMinutes: 10 }));
    writeFileSync(join(folder, 'empty.json'), '{}');
    const { status, stdout, stderr } = nest(drawing, '--sheet', '1020x720', '--json', 'none.json', ...options);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain(named);
    expect(existsSync(join(folder, 'none.json'))).toBe(false);
  });
});
