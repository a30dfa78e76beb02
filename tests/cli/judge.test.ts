import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeLayoutFile } from '../../src/layout/layout-file.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';

/** The real binary, run from another folder. */
const binary = join(import.meta.dirname, '..', '..', 'dist', 'cli', 'main.js');
let folder: string;
beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'judge-'))));
afterAll(() => rmSync(folder, { recursive: true }));

function run(content: string, ...options: string[]) {
  writeFileSync(join(folder, 'layout.json'), content);
  const { status, stdout, stderr } = spawnSync(process.execPath, [binary, 'judge', 'layout.json', ...options], { cwd: folder, encoding: 'utf8' });
  return { status, stdout, stderr };
}

const box = rectangle('box', 100, 60);
const sound = writeLayoutFile(layoutWith([box], [at('box', 10, 10), at('box', 116, 10)]));
const faulty = writeLayoutFile(layoutWith([box], [at('box', 10, 10), at('box', 115.99, 10)]));

describe('judge', () => {
  test('a sound layout: exit 0', () => {
    const { status, stdout, stderr } = run(sound);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toBe('layout.json: sound. 2 ups, every distance kept on the true curves.\n');
  });

  test('a faulty one: exit 1, and JSON alone on stdout', () => {
    const { status, stdout } = run(faulty, '--json', '-');
    expect(status).toBe(1);
    expect(JSON.parse(stdout)).toMatchObject({ state: 'faulty', faults: [{ kind: 'gap', blanks: [0, 1], byMm: 0.01 }] });
    expect(run(faulty).stdout).toContain('Stations 1 and 2: the knives are 0.01 mm too near one another.');
  });

  test('what the maker says is not believed', () => {
    const boasting = JSON.stringify({ ...JSON.parse(faulty), result: { ups: 40, state: 'sound' }, judgement: { state: 'sound' } });
    expect(run(boasting).status).toBe(1);
  });

  test('JSON into a file, text on stdout', () => {
    const { status, stdout } = run(sound, '--json', 'judged.json');
    expect({ status, stdout }).toMatchObject({ status: 0, stdout: expect.stringContaining('sound') });
    expect(JSON.parse(readFileSync(join(folder, 'judged.json'), 'utf8'))).toEqual({ format: 'blankwright-judgement', version: 1, state: 'sound', faults: [], cutShort: false });
  });

  const spoiled = (change: (file: any) => void) => {
    const file = JSON.parse(sound);
    change(file);
    return JSON.stringify(file);
  };
  test.each([
    ['text', 'not JSON', 'this is not valid JSON'],
    ['another file', '{"format":"x"}', 'this is not a layout file'],
    ['a later version', spoiled((f) => (f.version = 9)), 'version 9'],
    ['no placements', spoiled((f) => (f.placements = [])), 'places no blank'],
    ['an unknown design', spoiled((f) => (f.placements[1].design = 'bag')), 'placements[1]: there is no design "bag"'],
    ['a slanting rotation', spoiled((f) => (f.placements[1].rotation = 45)), 'placements[1]: rotation 45 is not a multiple of 90'],
    ['an endless number', sound.replace('"x": 116', '"x": 1e999'), 'placements[1].x must be a finite number'],
    ['a bow tie', spoiled((f) => (f.designs[0].outline = [[0, 0], [10, 10], [10, 0], [0, 10]])), 'design box: outline'],
  ])('cannot judge %s: exit 2, nothing on stdout', (_, content, message) => {
    const { status, stdout, stderr } = run(content, '--json', '-');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain(message);
  });

  test('refuses to write over the layout', () => {
    expect(run(sound, '--json', 'layout.json').status).toBe(2);
    expect(readFileSync(join(folder, 'layout.json'), 'utf8')).toBe(sound);
  });
});
