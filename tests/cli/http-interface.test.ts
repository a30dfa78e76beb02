import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import createClient from 'openapi-fetch';
import openapiTypes, { astToString } from 'openapi-typescript';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openFiles } from '../../src/cli/desk-files.ts';
import type * as Desk from '../../src/cli/desk-server.ts';
import type * as LibraryAnswers from '../../src/cli/serving/library-answers.ts';
import type * as Serving from '../../src/cli/serving/questions.ts';
import type { Library } from '../../src/shop/library/open-library.ts';
import { historyOf } from '../../src/shop/library/records.ts';
import { openApi } from '../../src/wire/openapi.ts';
import { ROUTES } from '../../src/wire/routes.ts';
import { compiled, root, scratchFolder } from '../shop/support.ts';
import { drawingNamed, shopLibrary } from '../support/shop-library.ts';

/** What `open` answers to other programs, asked by a client that is made from its document. */
const folder = scratchFolder();
let server: Desk.DeskServer;
let library: Library;
let questions: Serving.Questions;
/** Threads need compiled modules; `npm test` builds first. */
const { createQuestions } = (await import(compiled('cli', 'serving', 'questions.js'))) as typeof Serving;
const { serveDesk } = (await import(compiled('cli', 'desk-server.js'))) as typeof Desk;
const { libraryAnswers } = (await import(compiled('cli', 'serving', 'library-answers.js'))) as typeof LibraryAnswers;

beforeAll(async () => {
  mkdirSync(join(folder, 'pages'));
  writeFileSync(join(folder, 'pages', 'index.html'), '<html data-served="no">');
  library = await shopLibrary(join(folder, 'shop.blankwright'));
  questions = createQuestions();
  server = await serveDesk(join(folder, 'pages'), openFiles([]), { must: 0 }, { ...questions.answers, ...libraryAnswers(library) });
}, 120_000);
afterAll(async () => {
  await server.close();
  await questions.close();
  library.close();
});

const rounded = drawingNamed('label-rounded').toString('utf8');
const post = (path: string, body: unknown, to = server) => fetch(`${to.url}api/${path}`, { method: 'POST', body: typeof body === 'string' ? body : JSON.stringify(body) });
const get = (path: string) => fetch(`${server.url}api/${path}`);

test('the published document is the one that is served (UPDATE_SCHEMAS=1 writes it anew)', async () => {
  const path = join(root, 'docs', 'openapi.json');
  const text = `${JSON.stringify(openApi(), null, 1)}\n`;
  if (process.env['UPDATE_SCHEMAS']) writeFileSync(path, text);
  expect(readFileSync(path, 'utf8')).toBe(text);
  expect(await (await get('openapi.json')).json()).toEqual(JSON.parse(text));
});

test('a client made from the document: its types hold, it runs as the page for programs says', { timeout: 120_000 }, async () => {
  // Within the project, so that the client finds its packages.
  const place = join(root, 'out', 'http-client');
  mkdirSync(place, { recursive: true });
  writeFileSync(join(place, 'paths.ts'), astToString(await openapiTypes(JSON.stringify(openApi()), { defaultNonNullable: false })));
  const page = readFileSync(join(root, 'docs', 'for-programs.md'), 'utf8');
  const [, program, output] = /```ts client\.ts\n([\s\S]*?)```\s+```output\n([\s\S]*?)```/.exec(page)!;
  writeFileSync(join(place, 'client.ts'), program!);
  const options = { strict: true, noEmit: true, target: 'es2022', module: 'esnext', moduleResolution: 'bundler', allowImportingTsExtensions: true, skipLibCheck: true, types: ['node'], lib: ['es2022', 'dom'] };
  writeFileSync(join(place, 'tsconfig.json'), JSON.stringify({ compilerOptions: options, files: ['client.ts'] }));
  execFileSync(process.execPath, [join(root, 'node_modules', 'typescript', 'bin', 'tsc'), '-p', place], { stdio: 'pipe' });
  const said: string[] = [];
  const { ask } = (await import(pathToFileURL(join(place, 'client.ts')).href)) as { ask: (address: string, drawing: string, say: (line: string) => void) => Promise<void> };
  await ask(server.url, rounded, (line) => said.push(line));
  expect(`${said.join('\n')}\n`).toBe(output);
});

describe('every way in: the reply is what the document says', () => {
  const body: Readonly<Record<string, unknown>> = {
    read: { drawing: { base64: Buffer.from(rounded).toString('base64') } },
    nest: { drawing: rounded, sheet: { width: 520, height: 360 }, layouts: 2, svg: true, settings: { gap: 4, bleed: 2 } },
    compare: { drawing: rounded, sheets: ['520x360', { sheet: '450x320', grain: 'x' }] },
    quote: { job: { ups: 12, sheet: '720x1020', grammage: 300, quantities: [5000], boardPricePerTonne: 900 } },
    like: { outline: [[0, 0], [100, 0], [100, 60], [0, 60]] },
    keepJob: { id: 'a job', content: { format: 'blankwright-job', any: [1] } },
  };
  const query: Readonly<Record<string, string>> = { entries: '?text=62%20x%2031%20x%20118', entry: '?kind=carton&id=FH-101', file: '?kind=carton&id=FH-101', batch: '?id=new%20widths' };

  test.each(ROUTES.filter(({ name }) => !['judge', 'answer'].includes(name)).map((route) => [route.name, route] as const))('%s', { timeout: 60_000 }, async (name, route) => {
    const response = route.method === 'post' ? await post(route.path, body[name]) : await get(route.path + (query[name] ?? ''));
    expect(response.status).toBe(200);
    if (route.reply) route.reply.parse(await response.json());
    else expect(Buffer.from(await response.arrayBuffer()).equals(drawingNamed('reverse-tuck-small'))).toBe(true);
  });

  test('nest, then judge; a batch, then the layout behind a figure', { timeout: 60_000 }, async () => {
    const client = createClient<Record<string, never>>({ baseUrl: `${server.url}api` }) as unknown as { GET(path: string, ask: object): Promise<{ data: never }>; POST(path: string, ask: object): Promise<{ data: never }> };
    const { data: nested } = (await client.POST('/nest', { body: body['nest'] })) as { data: { ups: number; upperBound: number; layouts: unknown[]; svg: string } };
    expect(nested).toMatchObject({ ups: 36, upperBound: 36, optimal: true, svg: expect.stringMatching(/^<svg/) });
    const [layout] = nested.layouts as { placements: object[] }[];
    expect(await (await post('judge', { layout })).json()).toEqual({ state: 'sound', faults: [], cutShort: false });
    const moved = { ...layout!, placements: [layout!.placements[1]!, ...layout!.placements.slice(1)] };
    expect(await (await post('judge', { layout: moved })).json()).toMatchObject({ state: 'faulty', faults: [{ kind: 'overlap', blanks: [0, 1] }] });
    const { data: batch } = (await client.GET('/library/batch', { params: { query: { id: 'new widths' } } })) as { data: { cartons: { id: string; best: { answer: string; ups: number } }[] } };
    for (const { id, best } of batch.cartons) {
      const kept = await (await get(`library/answer?key=${best.answer}&name=${id}`)).json();
      expect(kept).toMatchObject({ ups: best.ups, layout: { format: 'blankwright-layout', designs: [{ id }] } });
      expect(kept.layout.placements).toHaveLength(best.ups);
    }
  });
});

describe('what goes wrong is said with code and remedy', () => {
  test.each([
    ['no JSON', 'read', '{', 400, 'json-not-valid', /body/],
    ['a field that is not known', 'read', { drawing: 'x', widht: 3 }, 400, 'field-not-valid', /widht.*misspelling/],
    ['a drawing without lines', 'nest', { drawing: '<svg xmlns="http://www.w3.org/2000/svg"/>', sheet: '520x360' }, 400, 'no-lines', /the field "roles"/],
    ['several blanks', 'nest', { drawing: drawingNamed('label-pair').toString('utf8'), sheet: '520x360' }, 400, 'which-blank', /the field "blank"/],
    ['a sheet of nonsense', 'nest', { drawing: rounded, sheet: 'large' }, 400, 'field-not-valid', /size/],
    ['a blank larger than the sheet', 'nest', { drawing: rounded, sheet: '60x60' }, 400, expect.any(String), /./],
    ['a file in a quote', 'quote', { job: { layout: '/etc/passwd', quantities: [1] } }, 400, 'no-files-here', /over HTTP/],
    ['a layout that is none', 'judge', { layout: { format: 'other' } }, 400, 'field-not-valid', /layout/],
    ['a job without a name', 'library/jobs', { content: {} }, 400, 'field-not-valid', /id/],
  ])('%s', { timeout: 60_000 }, async (_, path, body, status, code, message) => {
    const response = await post(path, body);
    const { issues } = await response.json();
    expect([response.status, issues[0].code]).toEqual([status, code]);
    expect(issues.map((issue: { message: string }) => issue.message).join(' ')).toMatch(message);
    expect(JSON.stringify(issues)).not.toContain('--');
  });

  test('what is not there, what is too much to read', async () => {
    expect((await get('library/entry?kind=carton&id=none')).status).toBe(404);
    expect((await get(`library/answer?key=${'0'.repeat(64)}`)).status).toBe(404);
    expect((await get('library/entries?page=0')).status).toBe(400);
    expect((await get('nothing')).status).toBe(404);
    expect((await get('nest')).status).toBe(404);
    const large = await post('read', { drawing: 'x'.repeat(13 * 2 ** 20) }).then(({ status }) => status);
    expect(large).toBe(413);
    expect(historyOf(library, 'carton', 'FH-101')).toHaveLength(2);
  });

  test('too much at once is sent away; what takes too long is ended, and the next is answered', { timeout: 90_000 }, async () => {
    const few = createQuestions({ waiting: 0, grace: 0 });
    const other = await serveDesk(join(folder, 'pages'), openFiles([]), { must: 0 }, few.answers);
    const long = { drawing: drawingNamed('tray').toString('utf8'), sheet: '1020x720', effort: 'thorough', seconds: 3 };
    const replies = await Promise.all(Array.from({ length: 8 }, () => post('nest', long, other)));
    const statuses = replies.map(({ status }) => status);
    expect(statuses.filter((status) => status === 503).length).toBeGreaterThanOrEqual(4);
    expect(replies.find(({ status }) => status === 503)!.headers.get('retry-after')).toBe('5');
    // The search ends itself when its time is up, or is ended with its thread.
    expect(statuses.filter((status) => status !== 503).every((status) => status === 200 || status === 504)).toBe(true);
    expect((await post('quote', { job: { ups: 1, sheet: '520x360', quantities: [1], grammage: 90 } }, other)).status).toBe(200);
    await other.close();
    await few.close();
    const cut = (await (await post('nest', { ...long, seconds: 2 })).json()) as { stopped: string };
    expect(cut.stopped).toBe('seconds');
  });

  test('only this machine, only under the word: other hosts and pages are refused', async () => {
    const { hostname, port, pathname } = new URL(server.url);
    const status = (path: string, headers: Record<string, string>) =>
      new Promise((resolve, reject) => {
        const sent = request({ hostname, port, path, method: 'POST', headers }, (response) => resolve(response.resume().statusCode));
        sent.on('error', reject);
        sent.end('{}');
      });
    expect(await status(`${pathname}api/library/jobs`, { Origin: 'http://example.org' })).toBe(403);
    expect(await status(`${pathname}api/quote`, { Host: 'example.org' })).toBe(403);
    expect(await status(`${pathname}api/quote`, { 'Sec-Fetch-Site': 'cross-site' })).toBe(403);
    expect(await status('/api/quote', {})).toBe(404);
  });
});
