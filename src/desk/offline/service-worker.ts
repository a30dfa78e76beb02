/**
 * Keeps the page's own files, so that the static build works without a network. Nothing of a job passes through here.
 * A page is served by one build from first to last: a new build is taken in whole, waits until no page holds the old one,
 * and is taken at the next load.
 */
/** SHA-256 of every file of this build, lower-case hexadecimal. */
declare const DESK_FILES: Readonly<Record<string, string>>;
declare const DESK_BUILD: string;

interface LifeEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface FetchEvent extends LifeEvent {
  readonly request: Request;
  respondWith(response: Promise<Response>): void;
}
interface Worker {
  readonly location: Location;
  readonly caches: CacheStorage;
  readonly clients: { claim(): Promise<void>; matchAll(options: { readonly type: 'window'; readonly includeUncontrolled: true }): Promise<readonly unknown[]> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: LifeEvent) => void): void;
  addEventListener(type: 'message', listener: (event: LifeEvent & { readonly ports: readonly MessagePort[] }) => void): void;
  addEventListener(type: 'fetch', listener: (event: FetchEvent) => void): void;
}

const worker = globalThis as unknown as Worker;
const CACHE = `blankwright-desk-${DESK_BUILD}`;
const base = new URL('./', worker.location.href);
const addresses = new Map([[base.href, DESK_FILES['index.html']!], ...Object.entries(DESK_FILES).map(([file, digest]) => [new URL(file, base).href, digest] as const)]);

worker.addEventListener('install', (event) => event.waitUntil(keepAll()));
worker.addEventListener('activate', (event) => event.waitUntil(forgetOthers()));
worker.addEventListener('message', (event) => event.waitUntil(takeOver(event.ports[0])));
worker.addEventListener('fetch', (event) => {
  const address = event.request.url.split(/[?#]/)[0]!;
  if (event.request.method === 'GET' && addresses.has(address)) event.respondWith(kept(address, event.request));
});

/** A server that is just being given new files hands out some of both builds: such a mixture is not taken in. */
async function keepAll(): Promise<void> {
  const files = await Promise.all([...addresses].map(async ([address, digest]) => {
    const response = await fetch(address, { cache: 'reload' });
    const content = await response.arrayBuffer();
    if (!response.ok || (await digestOf(content)) !== digest) throw new Error(`${address} is not of this build`);
    return [address, new Response(content, { headers: { 'Content-Type': response.headers.get('Content-Type') ?? '' } })] as const;
  }));
  const cache = await worker.caches.open(CACHE);
  for (const [address, response] of files) await cache.put(address, response);
}

async function digestOf(content: ArrayBuffer): Promise<string> {
  return Array.from(new Uint8Array(await crypto.subtle.digest('SHA-256', content)), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

async function forgetOthers(): Promise<void> {
  const names = await worker.caches.keys();
  await Promise.all(names.filter((name) => name.startsWith('blankwright-desk-') && name !== CACHE).map((name) => worker.caches.delete(name)));
  await worker.clients.claim();
}

/** Asked by a page that has just begun. While another page holds the build before this one, it says so and waits on. */
async function takeOver(answer: MessagePort | undefined): Promise<void> {
  const pages = await worker.clients.matchAll({ type: 'window', includeUncontrolled: true });
  if (pages.length > 1) answer?.postMessage('wait');
  else await worker.skipWaiting();
}

async function kept(address: string, request: Request): Promise<Response> {
  const cache = await worker.caches.open(CACHE);
  return (await cache.match(address)) ?? fetch(request);
}
