import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command, CommanderError } from 'commander';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { registerRead } from '../../src/cli/commands/read.ts';
import { page } from '../dieline/support.ts';

const root = join(import.meta.dirname, '..', '..');
let folder: string;
let before: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'read-'));
  before = process.cwd();
});
afterAll(() => rmSync(folder, { recursive: true }));

interface Run {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** The real binary, run from another folder. */
function runBinary(...args: string[]): Run {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), 'read', ...args], { cwd: folder, encoding: 'utf8' });
  return { status, stdout, stderr };
}

/** The command within this process, which saves a start for each of many runs. Its exit code goes to the process, as in the binary. */
async function run(...args: string[]): Promise<Run> {
  const written = { stdout: '', stderr: '' };
  const spies = (['stdout', 'stderr'] as const).map((stream) =>
    vi.spyOn(process[stream], 'write').mockImplementation((text) => {
      written[stream] += String(text);
      return true;
    }),
  );
  const program = new Command().exitOverride();
  registerRead(program);
  program.commands[0].exitOverride();
  process.exitCode = undefined;
  try {
    process.chdir(folder);
    await program.parseAsync(['read', ...args], { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    process.exitCode = 2;
  } finally {
    process.chdir(before);
    for (const spy of spies) spy.mockRestore();
  }
  const status = Number(process.exitCode);
  process.exitCode = undefined;
  return { status, ...written };
}

function drawing(name: string, svg: string): string {
  writeFileSync(join(folder, name), svg);
  return name;
}

const OUTLINE = '<path class="cut" fill="none" stroke="red" d="M10 10H110V70H10Z"/>';
const clean = () => drawing('clean.svg', page(`${OUTLINE}<circle class="cut" fill="none" stroke="red" cx="30" cy="30" r="5"/><path class="crease" stroke="blue" d="M60 10V70"/>`));
const twoColours = () => drawing('two.svg', page(`<g fill="none"><path stroke="red" d="M10 10H110V70H10Z"/><path stroke="blue" d="M60 10V70"/></g>`));
const pair = () => drawing('pair.svg', page(`${OUTLINE}<path class="cut" fill="none" stroke="red" d="M120 10H160V30H120Z"/>`));

describe('read', () => {
  test('a clean drawing: exit 0, a list for people', async () => {
    const { status, stdout, stderr } = runBinary(clean());
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toMatch(/^clean\.svg: one blank\n/);
    expect(stdout).toMatch(/size +100 × 60 mm\n/);
    expect(stdout).toMatch(/Cutting +351\.42 mm\n +Creasing +60 mm\n/);
    expect(stdout).toMatch(/gaps up to 0\.5 mm are closed/);
  });

  test('JSON alone on stdout, with the fixed fields', async () => {
    const { status, stdout } = await run(clean(), '--json', '-');
    expect(status).toBe(0);
    const json = JSON.parse(stdout);
    expect(json).toMatchObject({
      format: 'blankwright-drawing', version: 1, units: 'mm', blank: 1, areaMm2: 6000, widthMm: 100, heightMm: 60,
      ruleLengthMm: { Cutting: 351.416, Creasing: 60 },
      openings: [{ areaMm2: 78.54 }],
      scale: { mmPerUnit: 1, from: 'unit' },
      grain: null,
      blanks: [{ number: 1, areaMm2: 6000, box: { x: 10, y: 10, width: 100, height: 60 } }],
      issues: [],
    });
    expect(json.fingerprint).toMatch(/^[0-9a-f]{64}$/);
    expect(json.rules.map(({ role }: { role: string }) => role)).toEqual(['Cutting', 'Cutting', 'Creasing']);
  });

  test('in doubt: exit 1, and what to say', async () => {
    const { status, stdout } = await run(twoColours(), '--json', '-');
    expect(status).toBe(1);
    const { ruleLengthMm, issues } = JSON.parse(stdout);
    expect(ruleLengthMm).toEqual({ Cutting: 320, Unknown: 60 });
    expect(issues[0]).toMatchObject({ code: 'role-unknown', severity: 'warning', place: [60, 40], message: expect.stringContaining('--role Creasing=stroke:#0000ff') });
    expect((await run(twoColours(), '--role', 'Creasing=stroke:blue')).status).toBe(0);
  });

  test('a file of rules, asked after the options', async () => {
    writeFileSync(join(folder, 'house.json'), '{"roles": ["Perforating=stroke:blue", "Cutting=stroke:red"]}');
    expect(JSON.parse((await run(twoColours(), '--roles', 'house.json', '--json', '-')).stdout).ruleLengthMm).toEqual({ Cutting: 320, Perforating: 60 });
    expect(JSON.parse((await run(twoColours(), '--roles', 'house.json', '--role', 'Creasing=stroke:blue', '--json', '-')).stdout).ruleLengthMm).toEqual({ Cutting: 320, Creasing: 60 });
  });

  test('several blanks are listed; one can be chosen', async () => {
    const all = JSON.parse((await run(pair(), '--json', '-')).stdout);
    expect(all).toMatchObject({ blank: null, areaMm2: null, blanks: [{ widthMm: 100 }, { widthMm: 40 }] });
    expect((await run(pair())).status).toBe(0);
    expect(JSON.parse((await run(pair(), '--blank', '2', '--json', '-')).stdout)).toMatchObject({ blank: 2, areaMm2: 800 });
    expect(await run(pair(), '--blank', '3')).toMatchObject({ status: 2, stderr: expect.stringContaining('holds 2 blanks') });
  });

  test('scale and width', async () => {
    const svg = drawing('px.svg', page(OUTLINE, 'width="300" height="300"'));
    expect(JSON.parse((await run(svg, '--json', '-')).stdout)).toMatchObject({ widthMm: 26.458, scale: { from: 'assumed 96 per inch' }, issues: [{ code: 'unit-assumed' }] });
    expect(JSON.parse((await run(svg, '--scale', '2', '--json', '-')).stdout)).toMatchObject({ widthMm: 200, scale: { mmPerUnit: 2, from: 'given scale' }, issues: [] });
    expect(JSON.parse((await run(svg, '--width-is', '182', '--json', '-')).stdout)).toMatchObject({ widthMm: 182, scale: { from: 'given width' }, issues: [] });
  });

  test('files: the JSON, and the picture with its numbered faults', async () => {
    const { status, stdout } = await run(twoColours(), '--json', 'out.json', '--svg', 'out.svg');
    expect(status).toBe(1);
    expect(stdout).toContain('  1 warning 1 inner line of one kind');
    expect(JSON.parse(readFileSync(join(folder, 'out.json'), 'utf8')).widthMm).toBe(100);
    const picture = readFileSync(join(folder, 'out.svg'), 'utf8');
    expect(picture).toMatch(/<g id="Unknown"[\s\S]*<g id="faults"[\s\S]*>1<\/text>/);
  });

  test('the same bytes give the same answer', async () => {
    expect(await run(twoColours(), '--json', '-')).toEqual(await run(twoColours(), '--json', '-'));
  });
});

describe('bad usage: exit 2 and nothing written', () => {
  test.each([
    ['no such file', ['none.svg'], 'there is no such file'],
    ['an unknown option', ['clean.svg', '--colour', 'red'], "unknown option '--colour'"],
    ['--json without a file', ['clean.svg', '--json'], 'argument missing'],
    ['a scale of nothing', ['clean.svg', '--scale', '0'], '--scale 0'],
    ['a width in words', ['clean.svg', '--width-is', 'wide'], '--width-is wide'],
    ['scale and width', ['clean.svg', '--scale', '1', '--width-is', '100'], 'contradict'],
    ['a blank that is no number', ['clean.svg', '--blank', 'two'], '--blank two'],
    ['a gap too wide to be one', ['clean.svg', '--close-gaps', '50'], '--close-gaps 50'],
    ['a rule that is none', ['clean.svg', '--role', 'Cutting:red'], 'is no rule'],
    ['a role that is none', ['clean.svg', '--role', 'Slicing=layer:x'], 'Roles are: Cutting'],
    ['a file of rules that is none', ['clean.svg', '--roles', 'clean.svg'], 'not valid JSON'],
    ['an output that is the input', ['clean.svg', '--svg', 'clean.svg'], 'overwrite an input'],
    ['an output in no folder', ['clean.svg', '--json', 'none/out.json'], 'cannot write there'],
  ])('%s', async (_, args, message) => {
    clean();
    const { status, stdout, stderr } = await run(...args);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain(message);
  });

  test('a drawing without a blank says what is wrong and writes no file', async () => {
    const open = drawing('open.svg', page('<path class="cut" stroke="red" d="M10 10H110V70H10V14"/>'));
    const { status, stdout, stderr } = await run(open, '--json', '-', '--svg', 'open-out.svg');
    expect(status).toBe(2);
    expect(JSON.parse(stdout)).toMatchObject({ blanks: [], areaMm2: null, issues: [{ code: 'gap-open', place: [10, 12] }, { code: 'outline-open' }] });
    expect(stderr).toContain('A gap of 4 mm is open. Close it, or raise --close-gaps. (at 10.00, 12.00 mm)');
    expect(existsSync(join(folder, 'open-out.svg'))).toBe(false);
  });
});

describe('broken samples, each with one fault', () => {
  interface Expected {
    readonly exit: number;
    readonly code: string;
    readonly place?: readonly [number, number];
    readonly message: string;
  }
  const samples = join(root, 'samples', 'broken');
  const expected = JSON.parse(readFileSync(join(samples, 'expected.json'), 'utf8')) as Record<string, Expected>;

  test('each is expected', async () => {
    expect(readdirSync(samples).filter((name) => name.endsWith('.svg')).toSorted()).toEqual(Object.keys(expected).toSorted());
  });

  test.each(Object.entries(expected))('%s', async (name, { exit, code, place, message }) => {
    const { status, stdout, stderr } = await run(join(samples, name), '--json', '-');
    expect(status).toBe(exit);
    if (stdout === '') return expect(stderr).toContain(message);
    const { issues } = JSON.parse(stdout) as { issues: { code: string; severity: string; place?: [number, number]; message: string }[] };
    const found = issues.filter((issue) => issue.code === code);
    expect(issues.map((issue) => issue.code)).toContain(code);
    expect(found.some((issue) => issue.message.includes(message))).toBe(true);
    if (place) expect(found.map((issue) => issue.place)).toContainEqual(place);
  });
});

test('a reader that hears only the beginning changes nothing of the exit code', () => {
  const clean = join(root, 'samples', 'drawings', 'straight-tuck-medium.svg');
  const doubtful = drawing('pixels.svg', '<svg xmlns="http://www.w3.org/2000/svg" width="96" height="96"><path d="M10 10H90V90H10Z" fill="none" stroke="#000" id="cut"/></svg>');
  const empty = drawing('no-line.svg', '<svg xmlns="http://www.w3.org/2000/svg" width="96mm" height="96mm" viewBox="0 0 96 96"/>');
  const piped = (path: string) => spawnSync('/bin/sh', ['-c', '( "$0" "$1" read "$2" --json -; echo $? >&2 ) | true', process.execPath, join(root, 'dist', 'cli', 'main.js'), path], { cwd: folder, encoding: 'utf8' }).stderr.trim().split('\n').at(-1);
  for (const [path, code] of [[clean, '0'], [doubtful, '1'], [empty, '2']] as const) for (let i = 0; i < 2; i++) expect(piped(path)).toBe(code);
});

test('the errors of a drawing without a blank are said once', async () => {
  const { stdout, stderr } = await run(drawing('no-line.svg', '<svg xmlns="http://www.w3.org/2000/svg" width="96mm" height="96mm" viewBox="0 0 96 96"/>'));
  expect([stdout.includes('no line that could be a rule'), stderr.match(/no line that could be a rule/g)]).toEqual([false, ['no line that could be a rule']]);
});

test('in German and French: list and picture; the data stay', async () => {
  drawing('two.svg', page('<rect x="5" y="5" width="40" height="30" fill="none" stroke="#000"/><rect x="60" y="5" width="20" height="30" fill="none" stroke="#000"/>'));
  const german = await run('two.svg', '--language', 'de', '--svg', 'two-de.svg', '--json', 'two-de.json');
  expect(german.stdout).toMatch(/^two\.svg: 2 Zuschnitte\n\nZuschnitt 1, Ecke oben links bei 5; 5 mm\n {2}Größe {9}40 × 30 mm\n/);
  expect(readFileSync(join(folder, 'two-de.svg'), 'utf8')).toMatch(/two\.svg, wie verstanden[\s\S]*>Schnitt</);
  const french = await run('two.svg', '--language', 'fr', '--json', 'two-fr.json');
  expect(french.stdout).toContain('Le tracé contient 2 flans');
  expect(readFileSync(join(folder, 'two-fr.json'), 'utf8')).toBe(readFileSync(join(folder, 'two-de.json'), 'utf8'));
});
