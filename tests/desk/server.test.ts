import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { connect, isIP } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openFiles } from '../../src/cli/desk-files.ts';
import { serveDesk, usualPort, type DeskServer } from '../../src/cli/desk-server.ts';

let folder: string;
let server: DeskServer;
const pages = () => join(folder, 'pages');
const work = () => join(folder, 'work');

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'desk-'));
  for (const name of ['pages', 'pages/parts', 'work', 'work/inner']) mkdirSync(join(folder, name));
  writeFileSync(join(pages(), 'index.html'), '<html data-served="no">');
  writeFileSync(join(pages(), 'parts', 'a.js'), 'export {};');
  writeFileSync(join(folder, 'secret.svg'), 'secret');
  writeFileSync(join(work(), 'carton.svg'), '<svg/>');
  symlinkSync(join(folder, 'secret.svg'), join(work(), 'link.svg'));
  server = await serveDesk(pages(), openFiles([work()]), { must: 0 });
});
afterEach(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

interface Asked {
  readonly method?: string;
  readonly headers?: Record<string, string>;
  readonly body?: string;
}

/** As typed, without the tidying that `fetch` does to paths and headers. */
function ask(path: string, { method = 'GET', headers = {}, body }: Asked = {}): Promise<{ status: number; text: string; headers: Record<string, unknown> }> {
  const { hostname, port, pathname } = new URL(server.url);
  return new Promise((resolve, reject) => {
    const sent = request({ hostname, port, path: path.startsWith('/') ? path : pathname + path, method, headers }, (response) => {
      let text = '';
      response.on('data', (chunk) => (text += String(chunk)));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, text, headers: response.headers }));
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

/** Whether anything listens there. */
function answersAt(host: string, port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect({ host, port, timeout: 2000 });
    const end = (answer: boolean) => {
      socket.destroy();
      resolve(answer);
    };
    socket.on('connect', () => end(true)).on('error', () => end(false)).on('timeout', () => end(false));
  });
}

test('hands out the page and says that a server stands behind it', async () => {
  const { status, text, headers } = await ask('');
  expect([status, text]).toEqual([200, '<html data-served="yes">']);
  // To the letter: whoever widens it changes this line as well.
  expect(headers['content-security-policy']).toBe("default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob:; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'");
  expect(headers).toMatchObject({ 'x-content-type-options': 'nosniff', 'referrer-policy': 'no-referrer', 'cross-origin-resource-policy': 'same-origin', 'cache-control': 'no-store' });
  expect(headers['access-control-allow-origin']).toBeUndefined();
  expect(await ask('parts/a.js')).toMatchObject({ status: 200, text: 'export {};' });
});

test('listens on this machine only, under a word that cannot be guessed', async () => {
  expect(new URL(server.url).hostname).toBe('127.0.0.1');
  expect(new URL(server.url).pathname).toMatch(/^\/[\w-]{24}\/$/);
  expect((await ask('/')).status).toBe(404);
  expect((await ask('/index.html')).status).toBe(404);
  const wrong = `/${'x'.repeat(24)}/`;
  for (const path of [wrong, `${wrong}api/files`, `/api/files`, `/${new URL(server.url).pathname}api/files`]) expect((await ask(path)).status, path).toBe(404);
  expect(isIP(new URL(server.url).hostname)).toBe(4);
  const { port } = new URL(server.url);
  const elsewhere = Object.values(networkInterfaces()).flat().filter((one) => one && !one.internal && !one.address.startsWith('fe80')).map((one) => one!.address);
  for (const address of [...elsewhere, '::1']) expect(await answersAt(address, Number(port)), address).toBe(false);
  const other = await serveDesk(pages(), openFiles([]), { must: 0 });
  expect(new URL(other.url).pathname).not.toBe(new URL(server.url).pathname);
  await other.close();
});

test.each([
  ['another host', { Host: 'example.org' }],
  ['a name that only points here', { Host: 'rebound.example:80' }],
  ['another origin', { Origin: 'http://example.org' }],
  ['a page of another site', { 'Sec-Fetch-Site': 'cross-site' }],
  ['a page of another port of this machine', { 'Sec-Fetch-Site': 'same-site' }],
  ['a page without an origin, such as a file', { Origin: 'null' }],
  ['our name at another port', { Host: '127.0.0.1:1' }],
])('refuses %s', async (_, headers) => {
  expect((await ask('', { headers })).status).toBe(403);
  expect((await ask('api/file?name=new.json', { method: 'PUT', headers, body: '{}' })).status).toBe(403);
});

test.each(['../secret.svg', '..%2fsecret.svg', '%2e%2e/secret.svg', 'parts/../../secret.svg', 'api/file?name=..%2Fsecret.svg', 'api/file?name=link.svg', 'api/file?name=inner', 'api/file?name=%2Fetc%2Fpasswd'])(
  'no way out of the folder: %s',
  async (path) => {
    expect((await ask(path)).status).toBe(404);
  },
);

test('lists and reads what was opened', async () => {
  expect(JSON.parse((await ask('api/files')).text)).toEqual({ folder: 'work', files: [{ name: 'carton.svg', bytes: 6 }] });
  expect(await ask('api/file?name=carton.svg')).toMatchObject({ status: 200, text: '<svg/>', headers: { 'content-type': 'application/octet-stream' } });
});

test('writes new files, and over old ones only for those who name what they replace', async () => {
  const put = (name: string, body: string, headers: Record<string, string> = {}) => ask(`api/file?name=${name}`, { method: 'PUT', body, headers });
  const first = await put('sheet.json', '{"a":1}');
  expect(first.status).toBe(204);
  expect((await put('sheet.json', '{"a":2}')).status).toBe(412);
  expect((await put('sheet.json', '{"a":2}', { 'If-Match': String(first.headers['etag']) })).status).toBe(204);
  expect(readFileSync(join(work(), 'sheet.json'), 'utf8')).toBe('{"a":2}');
  for (const name of ['..%2Fout.json', '.hidden.json', 'tool.exe', 'link.svg', 'a%2Fb.json', 'con%00.json']) expect((await put(name, 'x')).status).toBe(403);
  expect(readFileSync(join(folder, 'secret.svg'), 'utf8')).toBe('secret');
});

test('says which version stands where a file would be written, and nothing of what lies elsewhere', async () => {
  const { headers: { etag } } = await ask('api/file?name=report.html', { method: 'PUT', body: '<html>' });
  expect(await ask('api/file?name=report.html', { method: 'HEAD' })).toMatchObject({ status: 204, headers: { etag } });
  for (const name of ['none.html', 'link.svg', '..%2Fsecret.svg', '.hidden.json', 'inner']) expect((await ask(`api/file?name=${name}`, { method: 'HEAD' })).headers['etag']).toBeUndefined();
});

test('a link to a folder, or one that is put in place of a file, is not followed', async () => {
  symlinkSync(folder, join(work(), 'up.json'));
  expect((await ask('api/file?name=up.json')).status).toBe(404);
  expect((await ask('api/file?name=up.json%2Fsecret.svg')).status).toBe(404);
  expect((await ask('api/file?name=up.json', { method: 'PUT', body: '{}' })).status).toBe(403);
  await ask('api/file?name=sheet.json', { method: 'PUT', body: '{}' });
  rmSync(join(work(), 'sheet.json'));
  symlinkSync(join(folder, 'secret.svg'), join(work(), 'sheet.json'));
  expect((await ask('api/file?name=sheet.json')).status).toBe(404);
  expect((await ask('api/file?name=sheet.json', { method: 'PUT', body: '{}' })).status).toBe(403);
  expect(readFileSync(join(folder, 'secret.svg'), 'utf8')).toBe('secret');
});

test('an upload that is too large is refused, said or unsaid, and leaves nothing behind', async () => {
  const before = readdirSync(work());
  expect((await ask('api/file?name=big.json', { method: 'PUT', headers: { 'Content-Length': String(2 ** 40) } })).status).toBe(413);
  const endless = new Promise<number>((resolve) => {
    const { hostname, port, pathname } = new URL(server.url);
    const sent = request({ hostname, port, path: `${pathname}api/file?name=big.json`, method: 'PUT', headers: { 'Transfer-Encoding': 'chunked' } }, ({ statusCode = 0 }) => resolve(statusCode));
    // A server that hangs up in the middle has refused as well.
    sent.on('error', () => resolve(0));
    const chunk = Buffer.alloc(2 ** 20, 32);
    let left = 80;
    const more = (): void => void (left-- > 0 && !sent.destroyed ? sent.write(chunk, more) : sent.end());
    more();
  });
  expect([0, 413]).toContain(await endless);
  expect(readdirSync(work())).toEqual(before);
  expect((await ask('api/files')).status).toBe(200);
});

test('only what is meant is answered', async () => {
  for (const method of ['POST', 'DELETE', 'OPTIONS', 'TRACE', 'PATCH']) {
    expect((await ask('', { method })).status, method).toBe(405);
    expect((await ask('api/file?name=carton.svg', { method })).status, method).toBe(405);
  }
  expect(readFileSync(join(work(), 'carton.svg'), 'utf8')).toBe('<svg/>');
});

test('single files are read, never written', async () => {
  const single = await serveDesk(pages(), openFiles([join(work(), 'carton.svg')]), { must: 0 });
  const write = await fetch(`${single.url}api/file?name=carton.svg`, { method: 'PUT', body: 'x' });
  expect(write.status).toBe(403);
  expect(await (await fetch(`${single.url}api/file?name=carton.svg`)).text()).toBe('<svg/>');
  await single.close();
});

test('a port that is liked but taken gives way, one that must be had does not', async () => {
  const taken = Number(new URL(server.url).port);
  const other = await serveDesk(pages(), openFiles([]), { like: taken });
  expect(Number(new URL(other.url).port)).not.toBe(taken);
  await other.close();
  await expect(serveDesk(pages(), openFiles([]), { must: taken })).rejects.toThrow('port-taken');
  expect(usualPort('/home/anna')).toBe(usualPort('/home/anna'));
  expect(usualPort('/home/anna')).not.toBe(usualPort('/home/bert'));
});

test('the command prints the address and ends cleanly; a port that is taken is refused', async () => {
  const binary = join(import.meta.dirname, '..', '..', 'dist', 'cli', 'main.js');
  const running = spawn(process.execPath, [binary, 'open', join(work(), 'carton.svg')], { stdio: ['ignore', 'pipe', 'pipe'] });
  const said = await new Promise<string>((resolve) => running.stdout.once('data', (data) => resolve(String(data))));
  const url = /http:\S+/.exec(said)?.[0] ?? '';
  expect(await (await fetch(url)).text()).toContain('data-served="yes"');
  expect(await (await fetch(`${url}api/file?name=carton.svg`)).text()).toBe('<svg/>');
  const ended = new Promise((resolve) => running.once('exit', resolve));
  running.kill('SIGINT');
  expect(await ended).toBe(0);
  const { status, stderr } = spawnSync(process.execPath, [binary, 'open', '--port', new URL(server.url).port], { encoding: 'utf8' });
  expect([status, stderr]).toEqual([2, expect.stringMatching(/^error: --port \d+: the port is in use/)]);
});

test('what cannot be opened is named', () => {
  expect(() => openFiles([join(folder, 'none.svg')])).toThrow('file-not-found');
  expect(() => openFiles([work(), join(folder, 'secret.svg')])).toThrow('folder-opens-alone');
  expect(() => openFiles([join(pages(), 'index.html')])).toThrow('desk-opens-not');
});
