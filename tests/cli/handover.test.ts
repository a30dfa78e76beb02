import { createHash } from 'node:crypto';
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeLayoutFile } from '../../src/layout/layout-file.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';
import { box as pdfBox, pdf } from '../support/pdf-bytes.ts';

/** The real binary, run from another folder. */
const binary = join(import.meta.dirname, '..', '..', 'dist', 'cli', 'main.js');
let folder: string;
beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'handover-'))));
afterAll(() => rmSync(folder, { recursive: true }));

function run(content: string, ...options: string[]) {
  writeFileSync(join(folder, 'layout.json'), content);
  const { status, stdout, stderr } = spawnSync(process.execPath, [binary, 'handover', 'layout.json', ...options], { cwd: folder, encoding: 'utf8' });
  return { status, stdout, stderr };
}

const sha256 = (content: string | Uint8Array) => createHash('sha256').update(content).digest('hex');
const drawing = '<svg>the drawing</svg>';
const box = { ...rectangle('tea-box', 100, 60), drawing: { fingerprint: sha256(drawing), paths: [{ role: 'Creasing', d: 'M20 0 L20 60' }] } };
const placements = [at('tea-box', 10, 10), at('tea-box', 116, 10)];
const sound = writeLayoutFile(layoutWith([box], placements));
const left = () => readdirSync(folder).filter((name) => name !== 'layout.json' && !name.endsWith('.svg')).toSorted();

describe('handover', () => {
  test('the folder holds a file for everybody, and a manifest of their fingerprints', () => {
    writeFileSync(join(folder, 'box.svg'), drawing);
    const { status, stderr } = run(sound, '--to', 'out', '--drawing', 'box.svg', '--layout-number', 'L-7', '--revision', 'B', '--approved-by', 'M. Fern', '--date', '2026-11-25');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    const manifest = JSON.parse(readFileSync(join(folder, 'out', 'manifest.json'), 'utf8'));
    expect(manifest).toMatchObject({ layout: { number: 'L-7' }, dieline: { revision: 'B', drawings: [{ design: 'tea-box', fingerprint: sha256(drawing) }] }, approvedBy: 'M. Fern', date: '2026-11-25' });
    const names = manifest.files.map(({ name }: { name: string }) => name);
    expect(readdirSync(join(folder, 'out')).toSorted()).toEqual([...names, 'manifest.json'].toSorted());
    for (const file of manifest.files) expect(sha256(readFileSync(join(folder, 'out', file.name)))).toBe(file.sha256);
    expect(left()).toEqual(['out']);
    rmSync(join(folder, 'out'), { recursive: true });
  });

  test('the same layout gives the same bytes', () => {
    run(sound, '--to', 'first');
    run(sound, '--to', 'second');
    for (const name of readdirSync(join(folder, 'first'))) expect(sha256(readFileSync(join(folder, 'second', name)))).toBe(sha256(readFileSync(join(folder, 'first', name))));
    rmSync(join(folder, 'first'), { recursive: true });
    rmSync(join(folder, 'second'), { recursive: true });
  });

  const unknown = { ...box, drawing: { paths: [{ role: 'Unknown', d: 'M20 0 L20 60' }] } };
  test.each([
    ['a faulty layout', writeLayoutFile(layoutWith([box], [at('tea-box', 10, 10), at('tea-box', 115.9, 10)])), [], 'the layout is faulty (1 faults)'],
    ['lines of unknown kind', writeLayoutFile(layoutWith([unknown], placements)), [], '--role Creasing='],
    ['another drawing', sound, ['--drawing', 'layout.json'], 'not the drawing that the layout was made from'],
    ['a wrong number', sound, ['--nicks', 'many'], '--nicks many'],
    ['a language without words', sound, ['--language', 'constructor'], 'en, de, fr are known'],
    ['no layout', '{}', [], 'not a layout file'],
  ])('nothing is written for %s: exit 2', (_, content, options, message) => {
    const { status, stdout, stderr } = run(content, '--to', 'out', ...options);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain(message);
    expect(left()).toEqual([]);
  });

  test('artwork and the back: the folder holds them, exit 1 where they ask for a decision', () => {
    writeFileSync(join(folder, 'art.svg'), pdf('0 1 0 rg 0 0 100 60 re f', { page: `/MediaBox ${pdfBox(0, 0, 100, 60)}` }));
    const { status, stderr } = run(sound, '--to', 'out', '--artwork', 'tea-box=art.svg', '--back', 'perfecting');
    expect(status).toBe(1);
    expect(stderr.split('\n')[0]).toBe('warning: art.svg: on the lower edge, over 100 mm from (0, 0) to (100, 0) of the blank, 3 mm of the 3 mm bleed are missing. Draw the print on to there.');
    expect(readdirSync(join(folder, 'out'))).toEqual(expect.arrayContaining(['sheet-artwork.pdf', 'sheet-back.pdf', 'sheet-back.svg']));
    rmSync(join(folder, 'out'), { recursive: true });
    for (const [options, message] of [
      [['--artwork', 'layout.json'], 'artwork is placed from PDF and SVG'],
      [['--artwork', 'art.svg', '--artwork-page', '2'], 'There is no page 2'],
      [['--artwork', 'lid=art.svg'], 'no station prints lid'],
      [['--artwork', 'art.svg', '--artwork-at', '3'], '--artwork-at 3'],
      [['--artwork-back', 'art.svg'], 'Give --back'],
      [['--bar-code', '10,10,300,20'], 'the box lies outside of tea-box'],
      [['--ink', 'Green'], 'a name and a colour are wanted'],
    ] as const) {
      expect(run(sound, '--to', 'out', ...options)).toMatchObject({ status: 2, stdout: '', stderr: expect.stringContaining(message) });
    }
    rmSync(join(folder, 'art.svg'));
    expect(left()).toEqual([]);
  });

  test('a plan of versions says what each station prints; one for another number of stations is refused', () => {
    const plan = (counts: object) => writeFileSync(join(folder, 'plan.json'), JSON.stringify({ forms: [{ counts: { mint: 2 } }, { counts }] }));
    plan({ mint: 1, lemon: 1 });
    expect(run(sound, '--to', 'out', '--gang', 'plan.json', '--form', '2')).toMatchObject({ status: 0, stderr: '' });
    expect(readFileSync(join(folder, 'out', 'placements.csv'), 'utf8')).toContain(',lemon\r\n');
    rmSync(join(folder, 'out'), { recursive: true });
    plan({ mint: 3 });
    expect(run(sound, '--to', 'out', '--gang', 'plan.json', '--form', '2')).toMatchObject({ status: 2, stderr: expect.stringContaining('form 2 prints 3 blanks, the layout has 2 stations') });
    expect(run(sound, '--to', 'out', '--gang', 'plan.json', '--form', '3')).toMatchObject({ status: 2, stderr: expect.stringContaining('there is no form 3') });
    rmSync(join(folder, 'plan.json'));
    expect(left()).toEqual([]);
  });

  test('a folder that holds something is left alone, an empty one is filled', () => {
    mkdirSync(join(folder, 'taken'));
    expect(run(sound, '--to', 'taken').status).toBe(0);
    const before = readdirSync(join(folder, 'taken'));
    const { status, stderr } = run(sound, '--to', 'taken');
    expect(status).toBe(2);
    expect(stderr).toContain('taken: this is a file, or a folder that holds something');
    expect(readdirSync(join(folder, 'taken'))).toEqual(before);
    rmSync(join(folder, 'taken'), { recursive: true });
  });
});
