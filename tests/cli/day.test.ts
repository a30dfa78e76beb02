import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeLayoutFile } from '../../src/layout/layout-file.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';

/** The real binary, run from another folder. */
const root = join(import.meta.dirname, '..', '..');
const binary = join(root, 'dist', 'cli', 'main.js');
let folder: string;
beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'day-'))));
afterAll(() => rmSync(folder, { recursive: true }));

function run(job: object | string, ...options: string[]) {
  const path = typeof job === 'string' ? job : 'job.json';
  if (typeof job !== 'string') writeFileSync(join(folder, path), JSON.stringify(job));
  const { status, stdout, stderr } = spawnSync(process.execPath, [binary, 'day', path, ...options], { cwd: folder, encoding: 'utf8' });
  return { status, stdout, stderr };
}

const press = { name: 'Press 9', units: 4, coater: false, maxSheet: '1060x760', caliperMax: 0.6, speed: 9000, makereadyMinutes: 20 };
const label = { id: 'label', sheets: 3000, sheet: '720x510', caliper: 0.08, inks: ['black', 'gold'] };
const carton = { id: 'carton', sheets: 4545, sheet: '1020x720', caliper: 0.5, inks: ['black', 'cyan'] };
const carton2 = { id: 'carton 2', sheets: 900, sheet: '1020x720', caliper: 0.5, inks: ['black', 'cyan'] };
const table = { name: 'ours', washUp: 10, inkingUp: 2, inkFamily: 30, coating: 12, sheetSize: 9, caliperClass: 5, die: 0, caliperClasses: [{ name: 'thin', upTo: 0.2 }, { name: 'board' }] };
const job = { press, changeover: table, forms: [carton, label, carton2] };

describe('day', () => {
  test('forms alike stand together; minutes by cause by hand; clock times', () => {
    const { status, stdout, stderr } = run(job, '--json', '-');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    const day = JSON.parse(stdout);
    // Label and cartons differ in one ink (10 + 2), sheet size 9 and one class 5; the clean press takes two inks.
    expect(day).toMatchObject({ changeoverMinutes: 30, lowerBound: 30, optimal: true, byCause: { washUp: 10, inkingUp: 6, sheetSize: 9, caliperClass: 5 }, asListed: { changeoverMinutes: 56 }, missing: [] });
    const cartons = day.order.map(({ id }: { id: string }) => id).join(' ');
    expect(['label carton carton 2', 'label carton 2 carton', 'carton carton 2 label', 'carton 2 carton label']).toContain(cartons);
    // 4 545 sheets at 9 000 an hour.
    expect(day.order.find(({ id }: { id: string }) => id === 'carton').runMinutes).toBe(30.3);
  });

  test('a due time comes before the least changeover', () => {
    const { stdout } = run({ ...job, start: '08:00', forms: [{ ...carton, due: '08:56' }, label, { ...carton2, sheets: 1500 }] }, '--json', '-');
    const day = JSON.parse(stdout);
    expect(day.order[0]).toMatchObject({ id: 'carton', from: '08:00', to: '08:54', lateMinutes: 0 });
    expect(day.lateMinutes).toBe(0);
  });

  test('an ink family that the food record names is the form’s: its change adds a wash-up', () => {
    run({ ...job, forms: [{ ...carton, food: { inkFamily: 'low migration', batch: 'B-1' } }, { ...carton2, food: { inkFamily: 'standard' } }] }, '--json', 'food.json', '--html', 'food.html');
    expect(JSON.parse(readFileSync(join(folder, 'food.json'), 'utf8')).byCause.inkFamily).toBe(30);
    expect(readFileSync(join(folder, 'food.html'), 'utf8')).toContain('ink family: low migration; batch: B-1');
  });

  test('late forms ask for a decision: exit 1', () => {
    const { status, stdout } = run({ ...job, start: '08:00', forms: [{ ...carton, due: '08:40' }, label] });
    expect(status).toBe(1);
    expect(stdout).toContain('1 form late, 14.3 min in all; no order is less late.');
  });

  test('without speeds the order stands and clock times are open: exit 1', () => {
    const { status, stdout } = run({ ...job, press: { name: 'Press 9' } }, '--json', '-');
    expect(status).toBe(1);
    expect(JSON.parse(stdout)).toMatchObject({ changeoverMinutes: 30, missing: ['press speed', 'press makeready'], order: [{ from: null }, { from: null }, { from: null }] });
  });

  test('the page: timeline, a ticket for each form, the sheet of a form whose layout is known', () => {
    writeFileSync(join(folder, 'layout.json'), writeLayoutFile(layoutWith([rectangle('box', 100, 60)], [at('box', 10, 10), at('box', 116, 10)])));
    const { status } = run({ ...job, forms: [carton, label, { ...carton2, sheet: undefined, layout: 'layout.json', food: 'dry food' }] }, '--html', 'day.html');
    const page = readFileSync(join(folder, 'day.html'), 'utf8');
    expect(status).toBe(0);
    expect(page.match(/class="own-page"/g)).toHaveLength(3);
    expect(page.match(/<svg/g)).toHaveLength(2);
    expect(page).toContain('dry food');
    expect(page.replaceAll('\u00a0', ' ')).toContain('2 ups, blank 100 × 60');
    expect(new Set(page.match(/ id="[^"]+"/g))).toHaveLength(page.match(/ id="[^"]+"/g)!.length);
  });

  test('Fernhollow’s day: labels on light stock first, then the cartons on board', () => {
    const { status, stdout } = run(join(root, 'samples', 'jobs', 'day-fernhollow.json'), '--json', '-');
    const day = JSON.parse(stdout);
    expect({ status, optimal: day.optimal }).toEqual({ status: 0, optimal: true });
    expect(day.order.slice(0, 2).map(({ id }: { id: string }) => id)).toEqual(['honey labels', 'jar labels']);
    expect(day.changeoverMinutes).toBeLessThan(day.asListed.changeoverMinutes / 1.5);
  });

  test.each([
    ['no forms', { ...job, forms: [] }, 'at least one form'],
    ['a form twice', { ...job, forms: [carton, carton] }, 'carton is given twice'],
    ['no sheets', { ...job, forms: [{ ...carton, sheets: 0 }] }, 'forms.0.sheets'],
    ['a time that is none', { ...job, forms: [{ ...carton, due: '25:61' }] }, 'forms.0.due'],
    ['more inks than units', { ...job, forms: [{ ...carton, inks: ['a', 'b', 'c', 'd', 'e'] }] }, 'form carton: 5 inks are more than the 4 units of Press 9'],
    ['an ink twice', { ...job, forms: [{ ...carton, inks: ['black', 'black'] }] }, 'black is named twice'],
    ['a coating without coater', { ...job, forms: [{ ...carton, coating: 'gloss' }] }, 'no coater'],
    ['a sheet beyond the press', { ...job, forms: [{ ...carton, sheet: '1200x800' }] }, 'form carton: sheet 1200 × 800 mm is larger than Press 9 takes'],
    ['a board beyond the press', { ...job, forms: [{ ...carton, caliper: 0.9 }] }, 'form carton: the board is 0.9 mm thick'],
    ['a form without sheet', { ...job, forms: [{ ...carton, sheet: undefined }] }, 'the sheet is missing'],
    ['a field misspelt', { ...job, forms: [{ ...carton, colour: 4 }] }, 'colour'],
    ['classes out of order', { ...job, changeover: { ...table, caliperClasses: [{ name: 'a', upTo: 0.5 }, { name: 'b', upTo: 0.2 }] } }, 'thin to thick'],
    ['negative minutes', { ...job, changeover: { ...table, washUp: -1 } }, 'washUp'],
    ['a table that is not there', { ...job, changeover: 'nowhere.json' }, 'nowhere.json'],
  ])('%s: exit 2, nothing on stdout', (_, content, named) => {
    const { status, stdout, stderr } = run(content);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain(named);
  });

  test('in German and French: words and decimal sign, the same data; a language that is not there is refused', () => {
    expect(run(job, '--language', 'de', '--json', 'de.json', '--html', 'de.html').stdout).toMatch(/^3 Formen, .* 30 min Umrüsten[\s\S]*30,3 min/);
    expect(run(job, '--language', 'fr', '--json', 'fr.json').stdout).toMatch(/^3 formes, .* 30 min de changements/);
    expect(readFileSync(join(folder, 'fr.json'), 'utf8')).toBe(readFileSync(join(folder, 'de.json'), 'utf8'));
    expect(readFileSync(join(folder, 'de.html'), 'utf8')).toMatch(/<html lang="de">[\s\S]*>Fortdruck<[\s\S]*Laufzettel 3/);
    expect(run(job, '--language', 'xx')).toMatchObject({ status: 2, stderr: expect.stringContaining('en, de, fr') });
  });

  test('an output that names an input is refused', () => {
    const { status, stderr } = run(job, '--json', 'job.json');
    expect(status).toBe(2);
    expect(stderr).toContain('would overwrite an input');
  });
});
