import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readCsv } from '../../src/shop/library/csv.ts';
import { openLibrary } from '../../src/shop/library/open-library.ts';
import { entriesOf, entryNamed, historyOf } from '../../src/shop/library/records.ts';
import { binary, rectangle, sample, scratchFolder } from './support.ts';

const folder = scratchFolder();
let made = 0;

function shop() {
  const path = join(folder, `${made++}.blankwright`);
  const run = (...args: string[]) => spawnSync(process.execPath, [binary, 'library', ...args, '--library', path], { encoding: 'utf8', cwd: folder });
  const inside = <Result>(look: (library: ReturnType<typeof openLibrary>) => Result) => {
    const library = openLibrary(path, { create: false });
    try {
      return look(library);
    } finally {
      library.close();
    }
  };
  return { path, run, inside };
}

describe('taking in', () => {
  test('a folder of 500 drawings of which 40 are broken gives 460 cartons and 40 reasons', () => {
    const drawings = join(folder, 'five-hundred');
    mkdirSync(drawings);
    for (let i = 0; i < 500; i++) writeFileSync(join(drawings, `carton-${i}.svg`), i % 25 < 2 ? rectangle(60 + i, 80).slice(0, i % 2 === 0 ? 90 : -8) : rectangle(60 + i, 80));
    const { run, inside } = shop();
    const { status, stdout, stderr } = run('add', drawings, '--json', '-');
    const taken = JSON.parse(stdout);
    expect(status).toBe(1);
    expect(taken).toMatchObject({ format: 'blankwright-taken-in', version: 1, new: 460, changed: 0, unchanged: 0 });
    expect(taken.refused).toHaveLength(40);
    for (const { where, reasons } of taken.refused) expect(reasons.join() && where).toMatch(/carton-\d+\.svg/);
    expect(stderr.match(/carton-\d+\.svg\n {2}error: /g)).toHaveLength(40);
    expect(inside((library) => entriesOf(library, 'carton').length)).toBe(460);
  });

  test('the samples, again, and another state of one of them', () => {
    const { run, inside } = shop();
    expect(run('add', sample('presses'), sample('cutters'), sample('boards'), sample('sheets'), sample('jobs'), sample('drawings', 'tray.svg')).status).toBe(0);
    expect(inside((library) => Object.fromEntries(entriesOf(library).map(({ kind, id }) => [kind, id])))).toEqual({
      board: 'recycled-400', carton: 'tray', cutter: 'b2-hand-stripped', job: 'waste-careful', press: 'b2-five-colours', sheets: 'stock',
    });
    const table = join(folder, 'cartons.csv');
    writeFileSync(table, 'Number;Name;Yearly;Customer;Live\ntray;Gift tray;250 000;Fernhollow;yes\n');
    expect(run('add', table).stdout).toContain('0 new, 1 changed, 0 unchanged, 0 refused');
    expect(run('add', sample('drawings', 'tray.svg'), table).stdout).toContain('0 new, 0 changed, 2 unchanged');
    const [latest, first] = inside((library) => historyOf(library, 'carton', 'tray'));
    expect(latest.content).toEqual({ ...first.content, name: 'Gift tray', yearly: 250_000, customer: 'Fernhollow', live: true });
  });

  test('a table names drawings beside it, which are then no cartons of their own; wrong lines are named', () => {
    const place = join(folder, 'with-table');
    mkdirSync(place);
    writeFileSync(join(place, 'a.svg'), rectangle(60, 90));
    writeFileSync(join(place, 'b.svg'), rectangle(70, 90));
    writeFileSync(join(place, 'dies.csv'), 'number,rack,ups,sheet,dimensions,drawing\n4711,C4,12,1020x720,62x31x118,a.svg\n4712,C5,many,1020x720,,\n4713,C6,9,large,,none.svg\n,C7,9,,,\n');
    const { run, inside } = shop();
    const { status, stderr } = run('add', place);
    expect(status).toBe(1);
    expect(stderr).toMatch(/dies\.csv, line 3\n {2}error: .*ups[\s\S]*line 4\n {2}error: .*sheet[\s\S]*line 5\n {2}error: .*number or id is missing/);
    expect(inside((library) => entriesOf(library).map(({ kind, id }) => [kind, id]))).toEqual([['carton', 'b'], ['die', '4711']]);
  });

  test('the shop’s tables of presses, die-cutters and boards are taken in by name', () => {
    const { run, inside } = shop();
    expect(run('add', ...['presses', 'cutters', 'boards'].map((name) => sample('tables', `${name}.csv`)))).toMatchObject({ status: 0, stderr: '' });
    expect(inside((library) => entryNamed(library, 'press', 'Press 2, five colours'))?.content).toMatchObject({ sideMargins: 5, units: 5, coater: false });
  });

  test('what a file is must be known, and what does not exist is said', () => {
    const { run } = shop();
    writeFileSync(join(folder, 'thing.json'), '{"gripper": 12}');
    expect(run('add', 'thing.json')).toMatchObject({ status: 2, stderr: expect.stringContaining('--as press') });
    expect(run('add', 'thing.json', '--as', 'press').status).toBe(0);
    expect(run('add', 'thing.json', '--as', 'machine')).toMatchObject({ status: 2, stderr: expect.stringContaining('press, cutter, board') });
    expect(run('add', 'nowhere')).toMatchObject({ status: 2, stderr: expect.stringContaining('nowhere: there is no such file') });
    expect(run('show', 'press', 'other')).toMatchObject({ status: 2, stderr: expect.stringContaining('press other') });
  });
});

test('an export is taken in again as the same library', () => {
  const one = shop();
  one.run('add', sample('presses'), sample('sheets'), sample('drawings'));
  writeFileSync(join(folder, 'dies.json'), JSON.stringify([{ number: 'D 1/2', rack: 'A1', ups: 8, drawing: sample('drawings', 'sleeve.svg') }]));
  expect(one.run('add', 'dies.json').status).toBe(0);
  one.run('remove', 'carton', 'tray');
  expect(one.run('export', 'out').status).toBe(0);
  expect(one.run('export', 'out').status).toBe(2);
  const two = shop();
  expect(two.run('add', 'out').stdout).toContain('0 refused');
  const present = (library: Parameters<typeof entriesOf>[0]) => entriesOf(library).map(({ kind, id, content }) => [kind, id, content]);
  expect(two.inside(present)).toEqual(one.inside(present));
  expect(two.inside((library) => entryNamed(library, 'die', 'D 1/2'))).toBeDefined();
  const history = readFileSync(join(folder, 'out', 'history.jsonl'), 'utf8').trimEnd().split('\n').map((line) => JSON.parse(line));
  expect(history.filter(({ id }) => id === 'tray')).toMatchObject([{ revision: 1, removed: false }, { revision: 2, removed: true }]);
  expect(readdirSync(join(folder, 'out', 'drawings')).length).toBe(readdirSync(sample('drawings')).length - 2);
  expect(readdirSync(join(folder, 'out', 'former'))).toHaveLength(1);
});

describe('tables', () => {
  test.each([
    ['commas', 'number,width-is\n1,182\n'],
    ['semicolons and a byte order mark', '\uFEFFNumber;Width is\r\n1;182\r\n'],
    ['tabs', 'number\twidth_is\n1\t182\n\n'],
  ])('%s', (_, text) => {
    expect(readCsv(text, 'x.csv')).toEqual([{ line: 2, fields: { number: '1', widthIs: 182 } }]);
  });

  test('a quote that is never closed is named with its line', () => {
    expect(() => readCsv('number,name\n1,"open\n', 'x.csv')).toThrow('csv-not-valid');
  });
});
