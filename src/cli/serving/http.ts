import type { IncomingMessage, ServerResponse } from 'node:http';
import { InputError, inputError, mendedByField, type Issue } from '../../base/issue.ts';
import { readRecord } from '../../press/records.ts';
import { english } from '../../render/messages/english.ts';
import { openApi } from '../../wire/openapi.ts';
import { ROUTES, type Route } from '../../wire/routes.ts';

/** What answers a route: by its name. An answer of bytes goes out as it is. */
export type Answers = Readonly<Record<string, (ask: never, signal: AbortSignal) => unknown>>;

/** A body of a question; more is not kept, bytes. */
const MOST_BYTES = 12 * 2 ** 20;

/** Codes that are no fault of the question, and what HTTP calls them. */
const STATUS: Readonly<Record<string, number>> = { 'library-no-such': 404, 'answer-not-there': 404, 'body-too-large': 413, 'too-much-asked': 503, 'question-too-long': 504 };
/** A busy server is worth asking again then, seconds. */
const RETRY_AFTER = '5';

/** The document of the interface, as it is served. */
export const OPENAPI_PATH = 'openapi.json';

/** Answers what is asked below `api/`. False where there is nothing of this kind. */
export async function answerRoute(request: IncomingMessage, response: ServerResponse, path: string, query: URLSearchParams, answers: Answers): Promise<boolean> {
  if (path === OPENAPI_PATH) {
    if (request.method !== 'GET') return false;
    sendJson(response, 200, openApi());
    return true;
  }
  const route = ROUTES.find((one) => one.path === path && one.method.toUpperCase() === request.method);
  const answer = route && answers[route.name];
  if (!answer) return false;
  const gone = new AbortController();
  response.on('close', () => gone.abort());
  try {
    const reply = await answer((await questionOf(request, route, query)) as never, gone.signal);
    if (reply instanceof Uint8Array) sendBytes(response, reply);
    else sendJson(response, 200, reply);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const status = STATUS[error.issues[0]?.code ?? ''] ?? 400;
    if (status === 503) response.setHeader('Retry-After', RETRY_AFTER);
    sendJson(response, status, { issues: issuesReply(error.issues) });
  }
  return true;
}

/** Issues with their sentences, in terms of fields, and what whoever speaks another language needs to word them anew. */
export function issuesReply(issues: readonly Issue[]): object[] {
  return issues.map(({ code, severity, place, where, ...more }) => ({ code, severity, ...(place && { place }), ...(where !== undefined && { where }), ...(more.facts && { facts: more.facts }), message: english.sentence(mendedByField({ code, severity, where, ...more } as Issue)) }));
}

async function questionOf(request: IncomingMessage, route: Route, query: URLSearchParams): Promise<unknown> {
  if (route.method === 'get') return readRecord(route.ask, Object.fromEntries(query), 'address');
  const text = new TextDecoder().decode(await body(request));
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    throw inputError('json-not-valid', { where: 'body', facts: { reason: (error as Error).message } });
  }
  return readRecord(route.ask, json, 'body');
}

async function body(request: IncomingMessage): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of request) {
    size += (chunk as Buffer).length;
    // Whoever goes on sending hears the answer only at the end.
    if (size <= MOST_BYTES) chunks.push(chunk as Buffer);
  }
  if (size > MOST_BYTES) throw inputError('body-too-large', { where: 'body', facts: { megabytes: MOST_BYTES / 2 ** 20 } });
  return Buffer.concat(chunks);
}

function sendJson(response: ServerResponse, status: number, content: unknown): void {
  response.statusCode = status;
  response.setHeader('Content-Type', 'application/json');
  response.end(JSON.stringify(content));
}

function sendBytes(response: ServerResponse, content: Uint8Array): void {
  response.setHeader('Content-Type', 'application/octet-stream');
  response.end(content);
}
