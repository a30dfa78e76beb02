import { createHash, randomBytes } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, sep } from 'node:path';
import { inputError } from '../base/issue.ts';
import { createDeskFiles, type DeskFiles, type OpenedFiles } from './desk-files.ts';
import { MAX_INPUT_BYTES } from './files.ts';
import { answerRoute, type Answers } from './serving/http.ts';

/** The desk served on this machine. */
export interface DeskServer {
  readonly url: string;
  close(): Promise<void>;
}

const LOOPBACK = '127.0.0.1';

/** Only the page's own scripts, styles and workers; WebAssembly for the solver; nothing inline, nothing from elsewhere. */
export const CONTENT_POLICY = [
  "default-src 'none'", "script-src 'self' 'wasm-unsafe-eval'", "style-src 'self'", "img-src 'self' blob:", "connect-src 'self'", "worker-src 'self'",
  "manifest-src 'self'", "base-uri 'none'", "form-action 'none'", "frame-ancestors 'none'",
].join('; ');

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.wasm': 'application/wasm',
};

/** Ports that no service is registered for, mostly. */
const [FIRST_PORT, PORTS] = [20_000, 12_000];

/**
 * A port of this person's own: a browser keeps jobs for each address apart, so that those of yesterday are found again only at
 * the same port. Another one where it is taken.
 */
export function usualPort(home: string): number {
  return FIRST_PORT + (createHash('sha256').update(home).digest().readUInt32BE() % PORTS);
}

/** A port that must be had, or one that would be liked; 0 is any. */
export type WantedPort = { readonly must: number } | { readonly like: number };

/**
 * Serves the page's files and the opened ones to this machine only. The address holds a random word that no other page can
 * guess; requests that name another host or come from another page are refused. Throws an InputError when a port that must be
 * had is taken.
 */
export async function serveDesk(pageFolder: string, opened: OpenedFiles, port: WantedPort, answers: Answers = {}): Promise<DeskServer> {
  const token = randomBytes(18).toString('base64url');
  const pages = pageFiles(pageFolder);
  const files = createDeskFiles(opened);
  const server = createServer();
  if ('must' in port) await listen(server, port.must);
  else await listen(server, port.like).catch(() => listen(server, 0));
  const { port: taken } = server.address() as AddressInfo;
  const hosts = new Set([`${LOOPBACK}:${taken}`, `localhost:${taken}`]);
  server.on('request', (request, response) => {
    respond(request, response, { hosts, base: `/${token}/`, pages, files, answers }).catch(() => refuse(response, 500));
  });
  return {
    url: `http://${LOOPBACK}:${taken}/${token}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function listen(server: Server, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => reject(error.code === 'EADDRINUSE' || error.code === 'EACCES' ? inputError('port-taken', { where: '--port', facts: { port } }) : error));
    server.listen({ host: LOOPBACK, port }, resolve);
  });
}

/** By path within the page, as it is asked for. */
function pageFiles(folder: string): ReadonlyMap<string, string> {
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) => statSync(join(folder, path)).isFile());
  const found = new Map(paths.map((path) => [path.split(sep).join('/'), join(folder, path)]));
  return found.set('', join(folder, 'index.html'));
}

interface Site {
  readonly hosts: ReadonlySet<string>;
  readonly base: string;
  readonly pages: ReadonlyMap<string, string>;
  readonly files: DeskFiles;
  /** What other programs and the library's pages ask. */
  readonly answers: Answers;
}

async function respond(request: IncomingMessage, response: ServerResponse, site: Site): Promise<void> {
  response.setHeader('Content-Security-Policy', CONTENT_POLICY);
  response.setHeader('X-Content-Type-Options', 'nosniff');
  response.setHeader('Referrer-Policy', 'no-referrer');
  response.setHeader('Cross-Origin-Resource-Policy', 'same-origin');
  response.setHeader('Cache-Control', 'no-store');
  if (!isOurs(request, site.hosts)) return refuse(response, 403);
  const { pathname, searchParams } = new URL(request.url ?? '/', `http://${LOOPBACK}`);
  if (!pathname.startsWith(site.base)) return refuse(response, 404);
  const path = pathname.slice(site.base.length);
  if (path === 'api/files' || path === 'api/file') return answerApi(request, response, path, searchParams.get('name') ?? '', site.files);
  if (path.startsWith('api/') && (await answerRoute(request, response, path.slice('api/'.length), searchParams, site.answers))) return;
  const file = site.pages.get(path);
  if (file === undefined) return refuse(response, 404);
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(response, 405);
  const content = readFileSync(file);
  // The page learns from its own first element that there is a server behind it, and a library.
  send(response, extname(file), path === '' || path === 'index.html' ? content.toString('utf8').replace('data-served="no"', `data-served="yes"${'library' in site.answers ? ' data-library="yes"' : ''}`) : content);
}

/** The host that was asked for is this one, and a page that asks is ours. A name that only points here is refused. */
function isOurs({ headers }: IncomingMessage, hosts: ReadonlySet<string>): boolean {
  const { host = '', origin } = headers;
  const site = headers['sec-fetch-site'];
  return hosts.has(host) && (origin === undefined || origin === `http://${host}`) && (site === undefined || site === 'same-origin' || site === 'none');
}

async function answerApi(request: IncomingMessage, response: ServerResponse, path: string, name: string, files: DeskFiles): Promise<void> {
  if (path === 'api/files' && request.method === 'GET') return send(response, '.json', JSON.stringify(files.list()));
  if (path === 'api/file' && request.method === 'HEAD') {
    // Whether a file stands where one would be written is a plain question: none has no version.
    const version = files.version(name);
    if (version !== undefined) response.setHeader('ETag', version);
    response.statusCode = 204;
    response.end();
    return;
  }
  if (path === 'api/file' && request.method === 'GET') {
    const found = files.read(name);
    if (!found) return refuse(response, 404);
    response.setHeader('ETag', found.version);
    return send(response, '', found.content);
  }
  if (path === 'api/file' && request.method === 'PUT') return writeFile(request, response, name, files);
  refuse(response, 405);
}

/** A file is only replaced by someone who names the version it replaces. */
async function writeFile(request: IncomingMessage, response: ServerResponse, name: string, files: DeskFiles): Promise<void> {
  const content = Number(request.headers['content-length'] ?? 0) > MAX_INPUT_BYTES ? undefined : await body(request);
  if (!content) return refuse(response, 413);
  const outcome = files.write(name, content, request.headers['if-match']);
  if (outcome.kind === 'refused') return refuse(response, 403);
  if (outcome.kind === 'changed') return refuse(response, 412);
  response.setHeader('ETag', outcome.version);
  response.statusCode = 204;
  response.end();
}

async function body(request: IncomingMessage): Promise<Buffer | undefined> {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of request) {
    size += (chunk as Buffer).length;
    if (size > MAX_INPUT_BYTES) return undefined;
    chunks.push(chunk as Buffer);
  }
  return Buffer.concat(chunks);
}

function send(response: ServerResponse, ending: string, content: string | Uint8Array): void {
  response.setHeader('Content-Type', TYPES[ending] ?? 'application/octet-stream');
  response.end(content);
}

function refuse(response: ServerResponse, status: number): void {
  if (!response.headersSent) response.statusCode = status;
  response.setHeader('Content-Type', 'text/plain');
  response.end(`${status}\n`);
}
