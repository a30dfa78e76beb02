import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, describe, expect, test } from 'vitest';
import * as api from '../../src/api/index.ts';
import { browserIsHere, launch, root, sample } from '../browser/browser.ts';

const folder = mkdtempSync(join(tmpdir(), 'blankwright-api-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const label = readFileSync(sample('label-rounded.svg'));
const request = { drawing: label, name: 'label-rounded', sheet: '520x360', effort: 'quick' } as const;

describe('the front door', () => {
  test('nest gives the file that the command writes, to the byte', async () => {
    const { layoutText } = await api.nest(request);
    const { stdout } = spawnSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), 'nest', sample('label-rounded.svg'), '--sheet', '520x360', '--effort', 'quick', '--json', '-'], { encoding: 'utf8' });
    expect(layoutText()).toBe(stdout);
  });

  test('what was read can be laid out; settings and rotations are heard', async () => {
    const drawing = await api.read(label.toString());
    const plain = await api.nest({ ...request, drawing });
    const wide = await api.nest({ ...request, drawing, settings: { gap: 30 } });
    expect(wide.ups).toBeLessThan(plain.ups);
    expect(plain.layouts[0].designs[0].rotations).toEqual([0, 180]);
    expect((await api.nest({ ...request, rotations: [90] })).layouts[0].designs[0].rotations).toEqual([90]);
    expect(() => plain.svg(1)).toThrow(RangeError);
    expect(plain.html()).toContain('<!doctype html>');
  });

  test('judge believes nobody', async () => {
    const { layoutText } = await api.nest(request);
    const layout = JSON.parse(layoutText());
    expect(api.judge(layout).state).toBe('sound');
    layout.placements[1].x = layout.placements[0].x + 1;
    expect(api.judge(layout).state).toBe('faulty');
    expect(() => api.judge({})).toThrow(api.InputError);
  });

  test.each([
    ['called off', 'interrupted', () => {
      const abort = new AbortController();
      setTimeout(() => abort.abort(), 400);
      return abort.signal;
    }],
    ['whose time is up', 'seconds', () => AbortSignal.timeout(400)],
  ])('a search %s ends with the best so far, and says why', async (_, why, signal) => {
    const { stopped, ups } = await api.nest({ ...request, drawing: readFileSync(sample('tray.svg')), sheet: '1020x720', effort: 'thorough', signal: signal() });
    expect(stopped).toBe(why);
    expect(ups).toBeGreaterThan(0);
  });

  test.each([
    ['a sheet of nonsense', { ...request, sheet: 'large' }],
    ['a rotation that is no quarter turn', { ...request, rotations: [45] }],
    ['a setting of nonsense', { ...request, settings: { gap: 'wide' } }],
    ['a setting of an unknown name', { ...request, settings: { grip: 20 } }],
    ['a press with a slip in a name', { ...request, press: { griper: 20 } }],
    ['a drawing that is none', { ...request, drawing: 'hello' }],
  ])('%s: an InputError whose issues make sentences', async (_, wrong) => {
    const error = await api.nest(wrong).then(() => undefined, (thrown: unknown) => thrown);
    expect(error).toBeInstanceOf(api.InputError);
    expect(api.sentences((error as api.InputError).issues).join('')).toMatch(/\w+/);
  });

  test('a quote that names a file needs somebody to load it', () => {
    expect(() => api.quote({ layout: 'sheet.json', quantities: [1] })).toThrow('give load');
  });
});

test('a program in TypeScript sees the types, and mistakes', () => {
  mkdirSync(join(folder, 'node_modules'));
  symlinkSync(root, join(folder, 'node_modules', 'blankwright'));
  writeFileSync(join(folder, 'package.json'), '{"type": "module"}');
  const compile = (code: string) => {
    writeFileSync(join(folder, 'program.ts'), `import { nest, quote, type NestReply } from 'blankwright';\n${code}`);
    const compiler = createRequire(import.meta.url).resolve('typescript/bin/tsc');
    return spawnSync(process.execPath, [compiler, '--noEmit', '--strict', '--skipLibCheck', '--module', 'nodenext', '--target', 'es2022', 'program.ts'], { cwd: folder, encoding: 'utf8' });
  };
  expect(compile(`const reply: NestReply = await nest({ drawing: '<svg/>', sheet: '1020x720' });\nexport const ups: number = reply.ups;\nexport const kg: number = quote({}).quantities[0].boardKg;`)).toMatchObject({ status: 0, stdout: '' });
  expect(compile(`await nest({ drawing: '<svg/>', sheet: 1020 });`).stdout).toContain('error TS');
});

test.runIf(browserIsHere())('in a browser it gives the same bytes', async () => {
  const bundle = join(folder, 'bundle.js');
  await build({ entryPoints: [join(root, 'dist', 'api', 'index.js')], outfile: bundle, bundle: true, format: 'esm', platform: 'browser', external: ['node:module'], logLevel: 'error' });
  const files: Record<string, [type: string, content: () => Buffer]> = {
    '/': ['text/html', () => Buffer.from('<!doctype html><title>page</title>')],
    '/bundle.js': ['text/javascript', () => readFileSync(bundle)],
    '/highs.wasm': ['application/wasm', () => readFileSync(createRequire(import.meta.url).resolve('highs/runtime'))],
  };
  const server = createServer(({ url }, reply) => {
    const [type, content] = files[url ?? '/'] ?? ['text/plain', () => Buffer.from('')];
    reply.setHeader('content-type', type).end(content());
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const browser = await launch();
  try {
    const page = await browser.newPage();
    await page.goto(`http://127.0.0.1:${(server.address() as { port: number }).port}/`);
    const text = await page.evaluate(`import('/bundle.js').then(async ({ nest, prepareLinearPrograms }) => {
      await prepareLinearPrograms({ locateFile: () => '/highs.wasm' });
      return (await nest({ drawing: ${JSON.stringify(label.toString())}, name: 'label-rounded', sheet: '520x360', effort: 'quick' })).layoutText();
    })`);
    expect(text).toBe((await api.nest(request)).layoutText());
  } finally {
    await browser.close();
    server.close();
  }
});

test('what a registry would get holds the front door and its types', () => {
  const { exports } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  for (const file of Object.values<string>(exports['.'])) expect(() => readFileSync(join(root, file))).not.toThrow();
  const listed = JSON.parse(execFileSync('npm', ['pack', '--dry-run', '--json', '--ignore-scripts'], { cwd: root, encoding: 'utf8' }))[0].files.map(({ path }: { path: string }) => path);
  expect(listed).toContain('dist/api/index.d.ts');
  expect(listed.filter((path: string) => /^(src|tests|bench)\//.test(path))).toEqual([]);
});
