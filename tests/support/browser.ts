import { createServer, type Server } from 'node:http';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { extname, join, normalize } from 'node:path';
import type { AddressInfo } from 'node:net';
import { chromium, type Browser } from 'playwright-core';

/** Debian's; other places by BLANKWRIGHT_CHROMIUM. */
const CHROMIUM = process.env['BLANKWRIGHT_CHROMIUM'] ?? '/usr/bin/chromium';

/** Without these the browser looks for a screen, a sandbox and its maker's servers. */
const FLAGS = ['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];

/** A browser for tests; undefined, said loudly, where none is installed; on the build server that is an error. */
export async function startBrowser(): Promise<Browser | undefined> {
  if (!existsSync(CHROMIUM)) {
    if (process.env['CI']) throw new Error(`${CHROMIUM} is needed for the tests of the page`);
    console.warn(`SKIPPED: no browser at ${CHROMIUM}, the page was not tried in one (set BLANKWRIGHT_CHROMIUM to yours)`);
    return undefined;
  }
  return chromium.launch({ executablePath: CHROMIUM, args: FLAGS });
}

export interface ServedFolder {
  readonly address: string;
  close(): void;
}

const TYPES: Readonly<Record<string, string>> = { '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css', '.wasm': 'application/wasm', '.svg': 'image/svg+xml', '.json': 'application/json' };

/** Serves the files of a folder on this machine for as long as a test needs them. */
export async function serveFolder(folder: string): Promise<ServedFolder> {
  const server: Server = createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname));
    if (path === '/favicon.ico') return response.writeHead(204).end();
    const file = join(folder, path);
    if (path.includes('..') || !existsSync(file)) return response.writeHead(404).end();
    return response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' }).end(readFileSync(file));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return { address: `http://127.0.0.1:${port}`, close: () => server.close() };
}

/** A folder that is gone when the test is. */
export function scratchFolder(): { readonly path: string; remove(): void } {
  const path = mkdtempSync(join(tmpdir(), 'blankwright-page-'));
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}
