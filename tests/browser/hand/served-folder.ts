import { createServer, type Server } from 'node:http';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { extname, join, normalize } from 'node:path';
import type { AddressInfo } from 'node:net';

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
